import { choice, optional, text, work } from '../fields.ts';
import { openingNamed } from '../../cloth/openings.ts';
import { putInto } from '../../cloth/put.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const put = verb({
  name: 'put',
  fields: {
    put: work(
      'Puts an open work into another, opening at opening: { put: lining, into: bag, together: right sides }. For right ' +
        'sides together the outer one is wrong side out, and the inner one right side out.',
    ),
    into: work('the work that it is put into.'),
    together: choice(['right sides', 'wrong sides'], 'which sides touch.'),
    at: optional(text('the opening it is put into, where there are several: top opening.')),
    own: optional(text('its own opening that lies there, where it has several.')),
  },
  keeps: 'into',
  laysFirst: true,
  handling: 3,
  title: ({ put: inner, into, together }) => `Put ${the(inner)} into ${the(into)}, ${together} together`,
  tools: () => ['pins'],
  apply: ({ put: name, together, at, own: ownName }, { put: inner, into }, { nthOf }) => {
    const [opening, own] = [openingNamed(into, at), openingNamed(inner, ownName)];
    if (!opening.ok) return opening;
    if (!own.ok) return own;
    return putInto(into, inner, {
      opening: opening.value,
      own: own.value,
      together: together === 'right sides' ? 'right' : 'wrong',
      called: { work: name, nth: nthOf(name) },
    });
  },
});
