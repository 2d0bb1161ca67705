import { attach as setOn } from '../../cloth/attach.ts';
import { boxOf } from '../../cloth/size.ts';
import { fail, quote } from '../../measure/index.ts';
import { material, optional, point, text, whole, work } from '../fields.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const attach = verb({
  name: 'attach',
  fields: {
    attach: material('Sets hardware, a role under materials: { attach: snap, to: flap, at: [2, 1] }.'),
    to: work('the work it goes to.'),
    at: optional(point('from the left and from the bottom edge. Left out with meets, where it meets the other half.')),
    meets: optional(text('the id of the step that set the other half: when the work is folded shut, both must meet.')),
    through: optional(whole('how many layers from the top it goes through; all if left out.')),
  },
  setsHardware: true,
  handling: 4,
  title: ({ attach: hardware, to }) => `Set ${the(hardware)} on ${the(to)}`,
  tools: () => ['setting tool', 'ruler', 'awl'],
  cautions: ({ attach: role }, material) => {
    const kind = material(role)?.hardware;
    // What nobody has named may be a magnet.
    if (kind === undefined) return ['snap', 'magnet'];
    return kind === 'magnet' ? ['magnet'] : ['snap'];
  },
  apply: ({ attach: name, at, through }, { to }, { kindOf }) => {
    const kind = kindOf(name);
    if (kind !== undefined && kind !== 'hardware') {
      return fail({ code: 'other-material', message: `${quote(name)} is ${kind}, and only hardware is set.` });
    }
    if (!at) return fail({ code: 'off-the-work', message: `Say where the ${name} is set: at: [2, 1], or meets.` });
    const { x, y } = boxOf(to.plies);
    return setOn(to, { name, at: { x: x + at.x, y: y + at.y }, ...(through !== undefined && { through }) });
  },
});
