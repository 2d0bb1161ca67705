import { atEdges, the } from '../words.ts';
import { direction, distance } from '../../geometry/point.ts';
import { edges, length, optional, size as sizeField, work } from '../fields.ts';
import { fail, ok, plainName, quote, SAME } from '../../measure/index.ts';
import { leftOf, lineThrough } from '../../geometry/index.ts';
import { linesMeet } from '../../geometry/arc.ts';
import { edgesOn, edgeUnderPoints } from '../../cloth/sides.ts';
import { applyEach } from '../../cloth/group.ts';
import { trim as cutOff } from '../../cloth/trim.ts';
import { verb } from '../verb.ts';
import type { ClothFault, Sewn, Work } from '../../cloth/index.ts';
import type { Line, Point } from '../../geometry/index.ts';
import type { PlyOutline } from '../../cloth/work.ts';
import type { Result } from '../../measure/index.ts';
import type { WorkEdge } from '../../cloth/edge.ts';

export const trim = verb({
  name: 'trim',
  fields: {
    trim: work('Cuts a work to a size, or so much off a side: all that lies there, or the allowances outside a seam.'),
    at: optional(edges()),
    by: optional(
      length('how much is trimmed off. Left out, the points of turned-in allowances that stick up beyond the side.'),
    ),
    height: optional(
      length('how high it is then, where the top or the bottom is trimmed: { trim: unit, at: top, height: 3 }.'),
    ),
    width: optional(length('how wide it is then, where the left or the right is trimmed.')),
    leaving: optional(
      length(
        'how much is left beyond the seam along that side, or beyond the point where two seams cross next to it: an ' +
          'allowance on the sides that at names.',
      ),
    ),
    size: optional(
      sizeField(
        'the size to cut to, in the middle of the work; on a unit with a slanting seam the ruler lies on that seam.',
      ),
    ),
  },
  cuts: true,
  handling: 1,
  title: ({ trim: cloth, at, size }) => `Trim ${the(cloth)}${size ? ' to size' : atEdges(at)}`,
  measured: ({ height, width, leaving }) => [
    ...(height === undefined ? [] : [{ says: 'It is … high then.', length: height }]),
    ...(width === undefined ? [] : [{ says: 'It is … wide then.', length: width }]),
    ...(leaving === undefined ? [] : [{ says: 'Leave … beyond the seam.', length: leaving }]),
  ],
  tools: () => ['cutter', 'mat', 'ruler'],
  apply: ({ at = [], by, size, ...to }, { trim: cloth }) => {
    const ways = (['size', 'by', 'height', 'width', 'leaving'] as const).filter(
      (name) => ({ size, by, ...to })[name] !== undefined,
    );
    if (ways.length > 1) {
      const message = `${quote(ways[0]!)} and ${quote(ways[1]!)} both say how much is trimmed.`;
      return fail({ code: 'two-places', message, field: ways[1]! });
    }
    if (size) return cutOff(cloth, { size });
    const way = ways.find((name) => name === 'height' || name === 'width' || name === 'leaving');
    if (way) return trimTo(cloth, at, way, to[way]!);
    if (by === undefined) {
      const under = at.flatMap((edge) => edgeUnderPoints(cloth, edge) ?? []);
      if (under.length > 0 && under.length === at.length) {
        return applyEach(cloth, under, (now, beyond) => cutOff(now, { beyond }));
      }
    }
    const found = edgesOn(cloth, at);
    if (!found.ok) return found;
    if (by === undefined) {
      const level = at.every((side) => acrossWay.height.includes(plainName(side)));
      const fix = `Write “by: 1/4 in” for what comes off, ${quote(level ? 'height' : 'width')} for what is left, or “leaving” for an allowance.`;
      return fail({ code: 'misses', message: 'How much is trimmed is not said.', fix });
    }
    return applyEach(cloth, found.value, (now, edge) => cutOff(now, { edge, by }));
  },
});

const acrossWay: Readonly<Record<'height' | 'width', readonly string[]>> = {
  height: ['top', 'bottom'],
  width: ['left', 'right'],
};

/** Trims sides until the work is so high or wide, or until so much is left beyond the seam next to each. */
function trimTo(cloth: Work, at: readonly string[], way: 'height' | 'width' | 'leaving', to: number): Sewn {
  if (at.length === 0) {
    const fix = way === 'leaving' ? 'Name the side: “at: top”.' : `Name the side: “at: ${acrossWay[way][0]}”.`;
    return fail({ code: 'no-edge', message: 'Which side is trimmed is not said.', fix });
  }
  if (way !== 'leaving') {
    const sides = acrossWay[way];
    const odd = at.find((side) => !sides.includes(plainName(side)));
    if (odd !== undefined) {
      const message = `To trim the ${odd} does not change the ${way}.`;
      return fail({
        code: 'two-places',
        message,
        field: way,
        fix: `Name ${quote(sides[0]!)} or ${quote(sides[1]!)}, or trim to another measure.`,
      });
    }
    if (at.length > 1) {
      const message = `How much is trimmed off each side does not follow from the ${way}.`;
      return fail({ code: 'one-edge', message, fix: 'Trim one of them to it, or both with “by”.' });
    }
  }
  const found = edgesOn(cloth, at);
  if (!found.ok) return found;
  const slants = ({ from, to: end }: WorkEdge) => Math.abs(way === 'height' ? from.y - end.y : from.x - end.x) > SAME;
  const askew = way === 'leaving' ? undefined : found.value.find(slants);
  if (askew) {
    const message = `The ${askew.name} slants: trimmed along it, the work has no one ${way}.`;
    return fail({ code: 'not-straight', message, field: way, fix: 'Say with “by” how much comes off.' });
  }
  const done = applyEach(cloth, found.value, (now, edge) => {
    const off = way === 'leaving' ? seamBeside(now, edge) : ok(reach(now, edge));
    if (!off.ok) return off;
    const by = off.value - to;
    if (by > SAME) return cutOff(now, { edge, by });
    // On sides that are as they should be already nothing is cut, where others are.
    if (by > -SAME && at.length > 1) return ok(now);
    const message =
      way === 'leaving'
        ? `No more than that lies beyond the seam at the ${edge.name}: nothing would be cut off.`
        : `It is no ${way === 'height' ? 'higher' : 'wider'} than that: nothing would be cut off.`;
    return fail({ code: 'misses', message, field: way, amount: -by, fix: 'Trim to less, or leave this step out.' });
  });
  if (!done.ok || done.value !== cloth) return done;
  const message = 'All of these sides are so already: nothing would be cut off.';
  return fail({ code: 'misses', message, field: way, fix: 'Leave this step out.' });
}

/** How far a work reaches behind an edge, in mm. */
const reach = ({ plies }: Work, { line }: WorkEdge): number =>
  Math.max(...plies.flatMap(({ outline }) => outline.map(({ from }) => leftOf(line, from))));

/**
 * How far in from an edge the nearest seam along it lies, or the nearest point where two seams cross that slant toward it.
 * Faults: `misses` where there is neither.
 */
function seamBeside({ plies, stitches }: Work, edge: WorkEdge): Result<number, ClothFault> {
  const way = direction(edge.line.angle);
  const rows = stitches.flatMap(({ kind, runs }) =>
    kind === 'seam' ? runs.filter(({ from, to }) => distance(from, to) > SAME) : [],
  );
  const slant = (from: Point, to: Point) => {
    const on = direction(lineThrough(from, to).angle);
    return Math.abs(way.x * on.y - way.y * on.x);
  };
  const along = rows.filter(({ from, to }) => slant(from, to) < 1e-3 && leftOf(edge.line, from) > SAME);
  const slanting = rows.filter(({ from, to }) => slant(from, to) > 0.02 && slant(from, to) < 1 - 1e-3);
  const crossings = slanting.flatMap((a, i) =>
    slanting.slice(i + 1).flatMap((b) => {
      const [p, q] = [lineThrough(a.from, a.to), lineThrough(b.from, b.to)];
      const meet = linesMeet(p.at, direction(p.angle), q.at, direction(q.angle));
      return meet && isOn(meet, a) && isOn(meet, b) ? [leftOf(edge.line, meet)] : [];
    }),
  );
  const offs = along.map(({ from }) => leftOf(edge.line, from));
  const inside = [...offs, ...crossings].filter((off) => off > SAME);
  const nearest = Math.min(...inside);
  // A seam that was pressed has the cloth of a work beyond it, and no allowance that reaches to the edge.
  const inner = along.some(
    (run) =>
      Math.abs(leftOf(edge.line, run.from) - nearest) < SAME &&
      plies.some(({ id, outline }) => run.plies.includes(id) && foldsAt(outline, lineThrough(run.from, run.to))),
  );
  if (inner) {
    const message = `The seam next to the ${edge.name} lies inside the work: what lies beyond it is no allowance.`;
    return fail({
      code: 'misses',
      message,
      field: 'leaving',
      fix: 'Say how much is trimmed off, “by”, or how large it is then.',
    });
  }
  if (inside.length > 0) return ok(nearest);
  const message = `No seam lies along the ${edge.name}, and none cross next to it.`;
  return fail({ code: 'misses', message, field: 'leaving', fix: 'Say how much is trimmed off: “by”.' });
}

/** Whether a ply is folded along a line. */
const foldsAt = (outline: PlyOutline, line: Line): boolean =>
  outline.some(({ from, fold }, i) => {
    const to = outline[(i + 1) % outline.length]!.from;
    return fold !== undefined && Math.abs(leftOf(line, from)) < SAME && Math.abs(leftOf(line, to)) < SAME;
  });

const isOn = (p: Point, { from, to }: { from: Point; to: Point }): boolean =>
  distance(from, p) + distance(p, to) - distance(from, to) < SAME;
