/** Cutting work apart into several alike. */
import { lineThrough } from '../geometry/index.ts';
import { areaOf, ON } from './ring.ts';
import { isAlike } from './alike.ts';
import { asOneStep } from './group.ts';
import { boxOf } from './size.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { findEdge } from './edge.ts';
import { join } from './seam.ts';
import { trim } from './trim.ts';
import type { Seam } from './seam.ts';
import type { Sewn, StepRecord, Work } from './work.ts';

/** More slices than anybody cuts from one work. */
const MOST = 500;

/**
 * Cuts a work across into slices of one width, from the left, through all layers. Gives one of them; how many there are
 * stands in the book of its steps. What is left over is cut away.
 *
 * Faults: `not-finite`; `too-deep` where none comes out of it, `too-many` where not so many do; `shapes-differ` where they would not be alike.
 *
 * @example
 * cutApart(stripSet, { every: 60 }).value.done.at(-1).apart.many // => 10, of a strip set of 620 mm
 */
export function cutApart(work: Work, { every, into }: { every: number; into?: number }): Sewn {
  if (!(every > SAME))
    return fail({ code: 'not-finite', message: 'Slices of no width cannot be cut.', field: 'every' });
  const { x, y, width, height } = boxOf(work.plies);
  // Many slices each a hair too narrow would be cloth that is not there.
  const most = Math.floor((width + ON) / every);
  const many = into ?? most;
  if (most === 0) {
    return fail({
      code: 'too-deep',
      message: 'It is only … wide.',
      lengths: [width],
      field: 'every',
      amount: every - width,
    });
  }
  if (many > most) {
    const message = `Only ${most} so wide come out of it.`;
    const fix = `Write “into: ${most}”, or cut narrower slices.`;
    return fail({ code: 'too-many', message, field: 'into', amount: many * every - width, fix });
  }
  if (many > MOST) {
    const message = `${many} slices would come out of it, and nobody cuts more than ${MOST}.`;
    return fail({ code: 'too-many', message, field: 'every', fix: 'Make “every” larger, or say “into”.' });
  }
  const slices: Work[] = [];
  for (let k = 0; k < many; k++) {
    const [left, right] = [x + k * every, x + (k + 1) * every];
    const bounds = [
      ...(k === 0 ? [] : [{ at: { x: left, y }, angle: 270 }]),
      ...(right > x + width - SAME ? [] : [{ at: { x: right, y }, angle: 90 }]),
    ];
    let slice = work;
    for (const line of bounds) {
      const cut = trim(slice, { line });
      if (!cut.ok) return cut;
      slice = cut.value;
    }
    slices.push(slice);
  }
  const [first, ...others] = slices;
  const odd = others.findIndex((slice, i) => !isAlike(first!, slice, x, x + (i + 1) * every));
  if (odd >= 0) {
    return fail({
      code: 'shapes-differ',
      message: `The slices would not be alike: number ${odd + 2} differs from the first.`,
    });
  }
  const cutAway = (clothOf(work) - many * clothOf(first!)) / many;
  const cuts = Array.from({ length: many }, (_, k) => x + (k + 1) * every)
    .filter((at) => at < x + width - SAME)
    .map((at) => ({ from: { x: at, y }, to: { x: at, y: y + height } }));
  return ok(asOneStep(shared([work], many), first!, { did: 'cut apart', cutAway, apart: { many, cuts } }));
}

/**
 * Two squares, right sides together, sewn so far from a diagonal on both sides of it and cut apart on it: gives one of the
 * two squares of two triangles each that come of them, opened. Of squares of side a sewn at s it is a - s √2 wide.
 *
 * Faults: `shapes-differ` for what is no square, or squares of two sizes; those of joining.
 *
 * @example
 * size(triangles(light, dark, { allowance: 6 }).value) // => 91.5 and its dog ears, of squares of 100 mm
 */
export function triangles(light: Work, dark: Work, seam: Seam): Sewn {
  const boxes = [light, dark].map(({ plies }) => boxOf(plies));
  const [a, b] = [boxes[0]!, boxes[1]!];
  const sizes = [a.width, a.height, b.width, b.height];
  const isFull = [light, dark].every(
    (work, i) =>
      Math.abs(
        work.plies.reduce((most, { outline }) => Math.max(most, areaOf(outline)), 0) -
          boxes[i]!.width * boxes[i]!.height,
      ) <
      SAME * a.width,
  );
  if (!isFull || sizes.some((size) => Math.abs(size - a.width) > SAME)) {
    return fail({ code: 'shapes-differ', message: 'Pairs of triangles are made of two squares of one size.' });
  }
  const from = { x: a.x, y: a.y };
  const to = { x: a.x + a.width, y: a.y + a.height };
  const below = trim(light, { line: lineThrough(from, to) });
  // Turned over onto the first, its other half lies on the half that is kept.
  const above = trim(dark, { line: lineThrough({ x: b.x, y: b.y + b.height }, { x: b.x + b.width, y: b.y }) });
  if (!below.ok) return below;
  if (!above.ok) return above;
  const edges = [below.value, above.value].map((work) => findEdge(work, 'cut'));
  const [first, second] = [edges[0]!, edges[1]!];
  if (!first.ok) return first;
  if (!second.ok) return second;
  const sewn = join(
    [
      { work: below.value, edge: first.value },
      { work: above.value, edge: second.value },
    ],
    seam,
  );
  if (!sewn.ok) return sewn;
  const { stitches, met, together } = sewn.value.done.at(-1)!;
  const record: StepRecord = {
    did: 'triangles',
    ...(stitches && { stitches }),
    ...(met && { met }),
    ...(together && { together }),
    apart: { many: 2, cuts: [{ from, to }], twice: true },
  };
  return ok(asOneStep(shared([light, dark], 2), sewn.value, record));
}

/** The books of works that are cut apart: what was cut away before is shared among the parts. */
const shared = (works: readonly Work[], many: number): StepRecord[] =>
  works.flatMap(({ done }) =>
    done.map(({ undo: _, cutAway, apart: __, ...rest }) => ({
      ...rest,
      ...(cutAway !== undefined && { cutAway: cutAway / many }),
    })),
  );

const clothOf = ({ plies }: Work): number =>
  plies.reduce((sum, { outline, fullness }) => sum + areaOf(outline) * fullness, 0);
