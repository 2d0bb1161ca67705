/** Whether the work measures what the file says, at a step and when it is finished. */
import { type Diagnostic, type Place, closest, quote, SAME, plainName } from '../../measure/index.ts';
import { plansOf } from './plan.ts';
import { sayIn } from './say.ts';
import { size } from '../../cloth/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Ledger } from '../step.ts';

export function checkSizes(pattern: Pattern, { steps, results, finished }: Ledger): Diagnostic[] {
  const findings: Diagnostic[] = [];
  for (const { nowMeasures, size: made, place, makes } of steps) {
    for (const side of ['width', 'height'] as const) {
      const said = nowMeasures?.[side];
      if (said === undefined) continue;
      const where: Place = [...place, 'now', side];
      findings.push(...differs(pattern, where, makes, side, made[side], said, 'this step says', 'now-measures'));
    }
  }
  const promised = pattern.finished;
  if (!promised || !pattern.making) return findings;
  if (finished === undefined) return [...findings, ...notMade(pattern, promised.of)];
  const made = size(results[finished]!);
  for (const side of ['width', 'height'] as const) {
    const where: Place = ['finished', side];
    findings.push(
      ...differs(pattern, where, finished, side, made[side], promised[side], 'the file promises', 'finished-size'),
    );
  }
  return findings;
}

function differs(
  pattern: Pattern,
  place: Place,
  of: string,
  side: 'width' | 'height',
  made: number,
  said: number,
  who: string,
  code: string,
): Diagnostic[] {
  const off = made - said;
  if (Math.abs(off) <= SAME) return [];
  const say = sayIn(pattern);
  const [wide, more] = [side === 'width' ? 'wide' : 'high', off > 0 ? 'more' : 'less'];
  const message = `The steps make ${quote(of)} ${say(made)} ${wide}; ${who} ${say(said)}. That is ${say(Math.abs(off))} ${more}.`;
  return [{ severity: 'error', place, code, message, fix: likeliest(pattern, off, side), amount: Math.abs(off) }];
}

/** A difference of a few seam allowances tells where to look. */
function likeliest({ making }: Pattern, off: number, side: 'width' | 'height'): string {
  const seams = making?.seam ? Math.abs(off) / making.seam : 0;
  const whole = Math.round(seams);
  if (whole >= 1 && whole <= 4 && Math.abs(seams - whole) * making!.seam! <= SAME) {
    const count = whole === 1 ? 'one seam allowance' : `${['', '', 'two', 'three', 'four'][whole]!} seam allowances`;
    return `That is ${count}: count the seams across the ${side} again.`;
  }
  return 'Check the sizes of the pieces, or state what the steps make.';
}

/** No step makes what is to be measured; one that could not be done has its own finding. */
function notMade(pattern: Pattern, of: string): Diagnostic[] {
  const { steps } = plansOf(pattern);
  const makers = steps.filter((step) => plainName(step.makes) === plainName(of));
  if (makers.some((step) => step.off === undefined)) return [];
  const [maker] = makers;
  const where = { place: ['finished', 'of'], start: 0, end: of.length };
  if (maker) {
    const message = `No step makes ${quote(of)} now: step ${maker.n} is left out with ${quote(maker.off!)} as it is.`;
    return [{ severity: 'error', ...where, code: 'option-breaks-step', message }];
  }
  const meant = closest(of, [...steps.map((step) => step.makes), ...Object.keys(pattern.pieces)]);
  const message = `No step makes ${quote(of)}.`;
  const fix = meant === undefined ? `Write “makes: ${of}” at the last step.` : `Do you mean ${quote(meant)}?`;
  return [{ severity: 'error', ...where, code: 'not-made', message, fix }];
}
