import { atEdges, the } from '../words.ts';
import { choice, edges, optional, work } from '../fields.ts';
import { edgeOn } from '../../cloth/sides.ts';
import { lay as layOn } from '../../cloth/lay.ts';
import { verb } from '../verb.ts';

export const lay = verb({
  name: 'lay',
  fields: {
    lay: work('Lays a work on another with edges aligned: { lay: flap, on: cover, at: top }.'),
    on: work('the work it is laid on.'),
    at: optional(edges('the edge of the work below, and the other’s own if that is another: [bottom, top].')),
    face: optional(
      choice(['up', 'down'], 'down turns the work over, so that right side lies on right side. Up if left out.'),
    ),
  },
  keeps: 'on',
  laysFirst: true,
  handling: 1,
  title: ({ lay: above, on, at, face }) =>
    `Lay ${the(above)} on ${the(on)}${atEdges(at)}${face === 'down' ? ', right sides together' : ''}`,
  tools: () => ['pins'],
  apply: ({ lay: name, at = [], face = 'up' }, { lay: above, on }, { nthOf }) => {
    const called = { work: name, nth: nthOf(name) };
    if (at.length === 0) return layOn(on, above, { face, called });
    const [below, own] = [edgeOn(on, at[0]!), edgeOn(above, at[1] ?? at[0]!)];
    if (!below.ok) return below;
    if (!own.ok) return own;
    return layOn(on, above, { edges: [below.value, own.value], face, called });
  },
});
