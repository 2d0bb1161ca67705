import { buttonhole as sewHole } from '../../cloth/buttonhole.ts';
import { boxOf } from '../../cloth/size.ts';
import { choice, length, optional, point, text, whole, work } from '../fields.ts';
import { fail } from '../../measure/index.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const buttonhole = verb({
  name: 'buttonhole',
  fields: {
    buttonhole: work('Sews a buttonhole and cuts it open: { buttonhole: flap, at: [2, 1], length: 3/4 }.'),
    length: length('of the slit: the button’s diameter and its thickness.'),
    at: optional(
      point(
        'the middle of the slit, from the left and from the bottom edge. Left out with meets, where it meets the button.',
      ),
    ),
    runs: optional(choice(['across', 'up'], 'which way the slit runs; across if left out.')),
    through: optional(whole('how many layers from the top it goes through; all if left out.')),
    meets: optional(text('the id of the step that set the button: when the work is folded shut, both must meet.')),
  },
  handling: 9,
  title: ({ buttonhole: cloth }) => `Sew a buttonhole in ${the(cloth)}`,
  tools: () => ['machine', 'ruler', 'pen', 'scissors'],
  apply: ({ at, length, runs = 'across', through }, { buttonhole: cloth }) => {
    if (!at) return fail({ code: 'off-the-work', message: 'Say where the buttonhole is: at: [2, 1], or meets.' });
    const { x, y } = boxOf(cloth.plies);
    const there = { x: x + at.x, y: y + at.y };
    return sewHole(cloth, { at: there, length, runs, ...(through !== undefined && { through }) });
  },
});
