/** What to do about a stack of layers. Common practice, no source; the machine's manual goes first. */
import { weightOf } from '../../../src/core/index.ts';

export type AdviceStack = {
  /** Of all layers together, mm. */
  thickness: number;
  /** Layers of interfacing among them. */
  fused: number;
  /** Whether a row is sewn through it in this step. */
  isSewn: boolean;
  /** The thickest stack that goes under the presser foot, mm. */
  lifts: number;
};

/**
 * What helps, the weightiest first, a sentence or two each.
 *
 * @example
 * adviceOn({ thickness: 0.6, fused: 0, isSewn: true, lifts: 5 }) // => ['An ordinary seam: nothing needs doing.']
 */
export function adviceOn({ thickness, fused, isSewn, lifts }: AdviceStack): string[] {
  const weight = weightOf(thickness);
  if (!isSewn) {
    const bulky = weight === 'heavy' || weight === 'very heavy';
    return [
      bulky
        ? 'No row of this step goes through here. Keep later rows away from it if you can.'
        : 'No row of this step goes through here: nothing needs doing.',
    ];
  }
  const advice: string[] = [];
  if (thickness > lifts + 1e-9)
    advice.push(
      'It does not go under the presser foot. Grade or clip the layers, or stop the row before it and start again behind it.',
    );
  else if (thickness > 0.7 * lifts)
    advice.push(
      'It only just goes under the presser foot. Lift the foot as high as it goes, and turn the wheel by hand.',
    );
  if (fused >= 2)
    advice.push('Keep interfacing out of the allowances: cut it back to the stitch line before you fuse it.');
  if (weight === 'heavy' || weight === 'very heavy') {
    advice.push(
      'Sew slowly, with a longer stitch. Lay a folded scrap behind the foot, so that it stands level as it climbs.',
    );
    advice.push('A walking foot moves the upper layers along with the lower ones, so that they do not creep.');
    advice.push('Press the layers hard before you sew. Grade the allowances after it.');
  } else if (weight === 'light')
    advice.push('Thin cloth puckers. Use a fine needle, and hold both threads as you begin.');
  if (advice.length === 0) advice.push('An ordinary seam: nothing needs doing.');
  return advice;
}
