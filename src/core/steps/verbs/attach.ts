import { attach as setOn } from '../../cloth/attach.ts';
import { fail, quote } from '../../measure/index.ts';
import { material, optional, point, text, whole, work } from '../fields.ts';
import { measuredFrom, placeFields, placeMeasured, placeOn, saysWhere } from '../places.ts';
import { settings } from '../tools.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import type { MaterialOf } from '../verb.ts';

/** How the hardware of a role is set; undefined of a zip, which is sewn in, and of what is no hardware. */
const settingOf = (role: string, material?: MaterialOf) => {
  const kind = material?.(role)?.hardware ?? 'other';
  return settings[kind === 'zip' ? 'other' : kind];
};

export const attach = verb({
  name: 'attach',
  fields: {
    attach: material(
      'Sets hardware, a role under materials, as its kind is set: { attach: snap, to: flap, from top: 1 }. A snap or an eyelet ' +
        'is set, a button is sewn on, a ring, a slider or a hook is slipped onto a strap.',
    ),
    to: work('the work it goes to.'),
    at: optional(point('from the left and from the bottom edge. Left out with meets, where it meets the other half.')),
    ...placeFields,
    meets: optional(
      text(
        'the id of the step that set the other half: on this work, which is folded shut later, or on another that comes to ' +
          'lie face to face with it. Both must meet.',
      ),
    ),
    through: optional(whole('how many layers from the top it goes through; all if left out.')),
  },
  setsHardware: true,
  handling: 4,
  title: ({ attach: name, to, ...step }, material) => {
    const { verb, onto } = settingOf(name, material);
    return `${verb} ${the(name)} ${onto} ${the(to)}${measuredFrom(step)}`;
  },
  measured: (step) => placeMeasured(step, 'Its middle lies'),
  tools: ({ attach: name }, material) => settingOf(name, material).tools,
  cautions: ({ attach: name }, material) => settingOf(name, material).cautions,
  apply: ({ attach: name, through, ...step }, { to }, { kindOf, hardwareOf }) => {
    const kind = kindOf(name);
    if (kind !== undefined && kind !== 'hardware') {
      return fail({ code: 'other-material', message: `${quote(name)} is ${kind}, and only hardware is set.` });
    }
    const what = hardwareOf(name)?.hardware;
    if (what === 'zip') {
      const fix = 'Make a piece of it under pieces, and join it, or lay it and sew along it.';
      return fail({ code: 'other-material', message: `${quote(name)} is a zip, which is sewn in.`, fix });
    }
    // A ring has its place in the middle of the strap that it is slipped onto, where nothing is said.
    const slides = what !== undefined && settings[what].slides;
    if (!saysWhere(step) && !slides) {
      return fail({
        code: 'off-the-work',
        message: `Where the ${name} is set is not said.`,
        fix: 'Write “from top: 1”, “at: [2, 1]” or “meets”.',
      });
    }
    const at = placeOn(to, step);
    if (!at.ok) return at;
    return setOn(to, {
      name,
      at: at.value,
      ...(what !== undefined && { what }),
      ...(slides && { slides }),
      ...(through !== undefined && { through }),
    });
  },
});
