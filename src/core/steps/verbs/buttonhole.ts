import { buttonhole as sewHole } from '../../cloth/buttonhole.ts';
import { choice, length, material, optional, point, text, whole, work } from '../fields.ts';
import { fail, ok, quote, SAME } from '../../measure/index.ts';
import { measuredFrom, placeFields, placeMeasured, placeOn, saysWhere } from '../places.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import type { ClothFault } from '../../cloth/index.ts';
import type { Result } from '../../measure/index.ts';
import type { StepContext } from '../verb.ts';

export const buttonhole = verb({
  name: 'buttonhole',
  fields: {
    buttonhole: work(
      'Sews a buttonhole and cuts it open: { buttonhole: flap, for: button, from bottom: 3/4 }, or of a length of its own.',
    ),
    for: optional(
      material(
        'the button, a role under materials: the slit is as long as the button is across and thick, which the material says.',
      ),
    ),
    length: optional(length('of the slit. Left out, the button’s diameter and its thickness.')),
    at: optional(
      point(
        'the middle of the slit, from the left and from the bottom edge. Left out with meets, where it meets the button.',
      ),
    ),
    ...placeFields,
    runs: optional(choice(['across', 'up'], 'which way the slit runs; across if left out.')),
    through: optional(whole('how many layers from the top it goes through; all if left out.')),
    meets: optional(text('the id of the step that set the button: when the work is folded shut, both must meet.')),
  },
  handling: 9,
  foot: 'buttonhole',
  title: ({ buttonhole: cloth, ...step }) => `Sew a buttonhole in ${the(cloth)}${measuredFrom(step)}`,
  measured: (step) => placeMeasured(step, 'Its middle lies'),
  tools: () => ['machine', 'ruler', 'pen', 'scissors'],
  apply: ({ length, for: button, runs = 'across', through, ...step }, { buttonhole: cloth }, setting) => {
    const slit = slitOf(length, button, setting);
    if (!slit.ok) return slit;
    if (!saysWhere(step))
      return fail({
        code: 'off-the-work',
        message: 'Where the buttonhole lies is not said.',
        fix: 'Write “from top: 1”, “at: [2, 1]” or “meets”.',
      });
    const at = placeOn(cloth, step);
    if (!at.ok) return at;
    return sewHole(cloth, { at: at.value, length: slit.value, runs, ...(through !== undefined && { through }) });
  },
});

/**
 * The length of the slit: what the step says, or the diameter of the button and its thickness (About.com Sewing, 1999; F.
 * Bustad from a tailoring book, 2010). Faults: `no-size`; `other-material`; `too-small` where the button does not go through.
 */
function slitOf(
  length: number | undefined,
  button: string | undefined,
  { kindOf, hardwareOf }: StepContext,
): Result<number, ClothFault> {
  if (button === undefined) {
    if (length !== undefined) return ok(length);
    const message = 'How long the buttonhole is, is not said.';
    return fail({ code: 'no-size', message, fix: 'Name the button, “for: button”, or say “length: 3/4”.' });
  }
  const what = hardwareOf(button);
  if (kindOf(button) !== undefined && what?.hardware !== 'button') {
    const message = `${quote(button)} is no button.`;
    return fail({
      code: 'other-material',
      message,
      field: 'for',
      fix: 'In materials.yaml a button says “hardware: button”.',
    });
  }
  const { across, thickness } = what ?? {};
  if (across === undefined || thickness === undefined) {
    if (length !== undefined) return ok(length);
    const message = `How large ${quote(button)} is, is not known.`;
    const fix = 'Give it “across” and “thickness” in materials.yaml, or say “length”.';
    return fail({ code: 'no-size', message, field: 'for', fix });
  }
  const needed = across + thickness;
  if (length === undefined) return ok(needed);
  if (length >= needed - SAME) return ok(length);
  const message = `${quote(button)} does not go through: it needs its diameter and its thickness.`;
  return fail({ code: 'too-small', message, field: 'length', amount: needed - length, fix: 'Leave “length” out.' });
}
