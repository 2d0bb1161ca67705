import { all, atEdges, the } from '../words.ts';
import { choice, edges, length, optional, work } from '../fields.ts';
import { edgeOn, isSide } from '../../cloth/sides.ts';
import { lay as layOn } from '../../cloth/lay.ts';
import { bothEndsUp } from '../../cloth/both-ends.ts';
import { fail, listed, ok, plainName, quote, SAME } from '../../measure/index.ts';
import { leftOf } from '../../geometry/index.ts';
import { rotate } from '../../cloth/index.ts';
import { verb } from '../verb.ts';
import type { ClothFault, Sewn, Work } from '../../cloth/index.ts';
import type { Distances } from '../../cloth/lay.ts';
import type { WorkEdge } from '../../cloth/edge.ts';

const fromSide = (side: string) =>
  optional(length(`from the ${side} of the work below to the ${side} of what is laid on it, as both lie.`));
const besideMiddle = (side: string) =>
  optional(length(`from the middle of the work below to the nearer side of what is laid ${side} of it.`));

const placing = {
  'from left': fromSide('left'),
  'from right': fromSide('right'),
  'from top': fromSide('top'),
  'from bottom': fromSide('bottom'),
  'left of middle': besideMiddle('left'),
  'right of middle': besideMiddle('right'),
} as const;

type Placing = Partial<Record<keyof typeof placing | 'both ends', number>>;

const ACROSS: readonly (keyof typeof placing)[] = ['from left', 'from right', 'left of middle', 'right of middle'];
const UP: readonly (keyof typeof placing)[] = ['from top', 'from bottom'];

export const lay = verb({
  name: 'lay',
  fields: {
    lay: work(
      'Lays a work on another with edges aligned, { lay: flap, on: cover, at: top }, or at measured distances: ' +
        '{ lay: pocket, on: lining, from top: 3, from left: 2 }. Middle on middle where nothing else is said.',
    ),
    on: work('the work it is laid on.'),
    at: optional(
      edges('the edge of the work below, and the other’s own if that is another: [bottom, top].', { most: 2 }),
    ),
    beyond: optional(length('how far it reaches out beyond the edge that at names.')),
    overlap: optional(length('how far it overlaps the edge that at names, where it lies beyond that edge otherwise.')),
    ...placing,
    'both ends': optional(
      length(
        'lays both ends of a strap at the edge that at names, each so far from the side next to it. The strap hangs free ' +
          'between them.',
      ),
    ),
    turned: optional(
      choice(['left', 'right', 'round'], 'a quarter turn to the left or right, or half a turn, before it is laid.'),
    ),
    face: optional(
      choice(['up', 'down'], 'down turns the work over, so that right side lies on right side. Up if left out.'),
    ),
  },
  keeps: 'on',
  laysFirst: true,
  handling: 1,
  title: ({ lay: above, on, at, overlap, face, turned, 'both ends': ends, ...step }) => {
    const from = [...UP, ...ACROSS].flatMap((name) =>
      step[name] === undefined ? [] : [name.endsWith('middle') ? 'the middle' : name.replace('from', 'the')],
    );
    const measured = from.length === 0 ? '' : `, measured from ${listed([...new Set(from)])}`;
    const over = overlap === undefined ? sideBySide(at) : `, overlapping ${all((at ?? []).slice(0, 1))}`;
    const what = ends === undefined ? the(above) : `both ends of ${the(above)}`;
    const way =
      turned === undefined ? '' : turned === 'round' ? ', turned by a half' : `, turned by a quarter to the ${turned}`;
    return `Lay ${what} on ${the(on)}${over}${measured}${way}${face === 'down' ? ', right sides together' : ''}`;
  },
  measured: ({ at = [], beyond, overlap, 'both ends': ends, ...step }) => [
    ...(ends === undefined ? [] : [{ says: 'Each end lies … from the side next to it.', length: ends }]),
    ...(beyond === undefined ? [] : [{ says: `It reaches … beyond ${the(at[0] ?? '')}.`, length: beyond }]),
    ...(overlap === undefined ? [] : [{ says: `It overlaps ${the(at[0] ?? '')} by ….`, length: overlap }]),
    ...[...UP, ...ACROSS].flatMap((name) => {
      const [length, side] = [step[name], name.split(' ').at(-1)!];
      if (length === undefined) return [];
      const says = name.endsWith('middle')
        ? `Its nearer side lies … ${name.replace('of', 'of the')}.`
        : `Its ${side} lies … from the ${side}.`;
      return [{ says, length }];
    }),
  ],
  tools: (step) =>
    [...UP, ...ACROSS, 'both ends' as const].some((name) => step[name] !== undefined) ? ['pins', 'ruler'] : ['pins'],
  apply: ({ lay: name, at = [], face = 'up', beyond, overlap, ...step }, { lay: flat, on }, { nthOf }) => {
    const bent = step['both ends'] === undefined ? ok(flat) : strapAt(on, flat, at, step['both ends']);
    if (!bent.ok) return bent;
    const lies = step['both ends'] === undefined ? undefined : endsLieOtherwise({ overlap, turned: step.turned });
    if (lies) return fail(lies);
    const turnedTo = step.turned && rotate(bent.value, { left: 90, right: -90, round: 180 }[step.turned]);
    if (turnedTo && !turnedTo.ok) return turnedTo;
    const above = turnedTo?.value ?? bent.value;
    const called = { work: name, nth: nthOf(name) };
    const wrong = saidTwice(at[0], { ...step, beyond, overlap }) ?? ofNoEdge(at[0], { beyond, overlap });
    if (wrong) return fail(wrong);
    const from = Object.fromEntries(
      [...ACROSS, ...UP].flatMap((one) => (step[one] === undefined ? [] : [[one.replace('from ', ''), step[one]]])),
    ) as Distances;
    if (at.length === 0) return layOn(on, above, { from, face, called });
    const ownEdge = step['both ends'] === undefined ? (at[1] ?? at[0]!) : 'top';
    const [below, own] = [edgeOn(on, at[0]!), edgeOn(above, ownEdge)];
    if (!below.ok) return below;
    if (!own.ok) return own;
    const deep = depthBehind(above, own.value);
    if (overlap !== undefined && overlap > Math.min(deep, depthBehind(on, below.value)) + SAME) {
      const message = 'It would overlap more than there is.';
      return fail({ code: 'off-the-work', message, field: 'overlap', fix: 'Make “overlap” smaller.' });
    }
    if (overlap !== undefined && overlap <= SAME) {
      const message = 'It would not overlap: the two would only touch.';
      return fail({ code: 'off-the-work', message, field: 'overlap', fix: 'Make “overlap” larger.' });
    }
    if ((beyond ?? 0) >= deep - SAME) {
      const message = 'It would lie beyond the work altogether.';
      return fail({ code: 'off-the-work', message, field: 'beyond', fix: 'Make “beyond” smaller.' });
    }
    const inside = overlap === undefined ? -(beyond ?? 0) : overlap - deep;
    return layOn(on, above, { edges: [below.value, own.value], inside, from, face, called });
  },
});

/** What says of a strap whose ends lie at the edge that they lie somewhere else. */
function endsLieOtherwise(said: { overlap: number | undefined; turned: string | undefined }): ClothFault | undefined {
  const field = (['overlap', 'turned'] as const).find((name) => said[name] !== undefined);
  if (field === undefined) return undefined;
  const message = `“both ends” lays the ends at the edge, and ${quote(field)} would lay them elsewhere.`;
  return { code: 'two-places', message, field };
}

/** A strap with both its ends up, so far apart that each lies so far from the side next to it. */
function strapAt(on: Work, strap: Work, at: readonly string[], by: number): Sewn {
  const [edge, own] = at;
  if (edge === undefined) {
    return fail({ code: 'no-edge', message: 'At which edge both ends lie is not said.', field: 'both ends' });
  }
  if (own !== undefined) {
    const message = 'Both its ends lie at the edge: “at” names that edge alone.';
    return fail({ code: 'too-many-edges', message, edge: own, fix: `Write ${quote(`at: ${edge}`)}.` });
  }
  const below = edgeOn(on, edge);
  return below.ok ? bothEndsUp(strap, below.value.length - 2 * by) : below;
}

/** ` at the top`, or `, its bottom at the top`. */
const sideBySide = (at: readonly string[] = []): string =>
  at[0] === undefined || at[1] === undefined || at[0] === at[1]
    ? atEdges(at.slice(0, 1))
    : `, its ${at[1]} at ${the(at[0])}`;

/** How far a work reaches behind one of its edges, in mm. */
const depthBehind = ({ plies }: Work, { line }: WorkEdge): number =>
  Math.max(...plies.flatMap(({ outline }) => outline.map(({ from }) => leftOf(line, from))));

type Over = { readonly beyond: number | undefined; readonly overlap: number | undefined };

/** What reaches beyond an edge that is not named. */
function ofNoEdge(edge: string | undefined, over: Over): ClothFault | undefined {
  const field = (['beyond', 'overlap'] as const).find((name) => over[name] !== undefined);
  if (field === undefined || edge !== undefined) return undefined;
  return { code: 'no-edge', message: `Of which edge ${quote(field)} speaks is not said.`, field };
}

/** Two fields that both say where it lies the same way. An edge says it across itself. */
function saidTwice(edge: string | undefined, step: Placing & Over): ClothFault | undefined {
  if (step.beyond !== undefined && step.overlap !== undefined) {
    const message = '“beyond” and “overlap” both say where it lies.';
    return { code: 'two-places', message, field: 'overlap' };
  }
  const along = [...UP, ...ACROSS].find((name) => step[name] !== undefined);
  if (step['both ends'] !== undefined && along !== undefined) {
    const message = `“both ends” and ${quote(along)} both say where it lies.`;
    return { code: 'two-places', message, field: along };
  }
  for (const [way, sides] of [
    [ACROSS, ['left', 'right']],
    [UP, ['top', 'bottom']],
  ] as const) {
    const said = way.filter((name) => step[name] !== undefined);
    const [first, second] = said;
    if (first !== undefined && second !== undefined)
      return {
        code: 'two-places',
        message: `${quote(first)} and ${quote(second)} both say where it lies.`,
        field: second,
      };
    if (first === undefined || edge === undefined) continue;
    const name = plainName(edge).split(' ').at(-1)!;
    if (!isSide(name) || (sides as readonly string[]).includes(name)) {
      const message = `${quote(`at: ${edge}`)} and ${quote(first)} both say where it lies.`;
      return { code: 'two-places', message, field: first };
    }
  }
  return undefined;
}
