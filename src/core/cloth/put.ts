/** One open work in another: put in, sewn round both openings, turned through a gap, and pushed in. */
import { pipingWaits } from './piping.ts';
import { asOneStep } from './group.ts';
import { liesOn, reversedEdge } from './edge.ts';
import { between, minus, plus, times, unit } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { allOpenings, asEdge, bodyOf, inwardFrom, openingsOf, roundIn, withEdgeInside } from './openings.ts';
import { facesTogether, heldBeyond } from './seam.ts';
import { fold } from './fold.ts';
import { layersAt } from './layers.ts';
import { leftOf, lineThrough, sides } from '../geometry/index.ts';
import { looseBetween } from './sew-round.ts';
import { movedMark, movedPly, movedStitch, movedWork } from './move.ts';
import { middleOfWork, onto } from './place.ts';
import { pressedOutward, turn } from './turn.ts';
import { putTogether, takenApart } from './layers-apart.ts';
import type { Sewing } from './layers-apart.ts';
import { reflection, rotation } from '../geometry/transform.ts';
import { sewn as sewnRow } from './stitch.ts';
import { stackUp, withPlies } from './combine.ts';
import { wasLaidAs } from './work.ts';
import { isOwnCloth, wallByWall, wallsOf } from './walls.ts';
import type { ClothFault } from './fault.ts';
import type { Result } from '../measure/index.ts';
import type { LaidWork, MetEdge, Ply, Sewn, SewnRound, Stitch, Work } from './work.ts';
import type { Line } from '../geometry/index.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Opening } from './openings.ts';

/** How one open work is put into another. */
export type PutInto = {
  readonly opening: Opening;
  /** The opening of what is put in. */
  readonly own: Opening;
  /** Which sides touch. */
  readonly together: 'right' | 'wrong';
  /** What later steps call what is put in. */
  readonly called: Pick<LaidWork, 'work' | 'nth'>;
};

/**
 * Puts an open work into another, opening at opening.
 *
 * Faults: `faces` when other sides touch than are said; `too-wide` when it does not go in; those of folding.
 *
 * @example
 * putInto(bag, lining, { opening: openingsOf(bag)[0], own: openingsOf(lining)[0], together: 'right', called })
 */
export function putInto(work: Work, other: Work, { opening, own, together, called }: PutInto): Sewn {
  const [outside, inside] = [touching(work, opening, 'inside'), touching(other, own, 'outside')];
  if (outside !== together || inside !== together) {
    const message = `As they lie, the ${outside} side inside the one touches the ${inside} side outside the other.`;
    return fail({
      code: 'faces',
      message,
      field: 'together',
      fix: fixForFaces(outside, inside, together, called.work),
    });
  }
  const wide = own.round - opening.round;
  if (wide > SAME) {
    const message = 'What is put in is … round its opening, and what it is put into is … round: it does not go in.';
    const fix = 'Cut it smaller, or sew it with wider allowances.';
    return fail({ code: 'too-wide', message, lengths: [own.round, opening.round], amount: wide, fix });
  }
  // What is open at its other end has no bottom to stand on.
  const isTube = [work, other].some((one) => openingsOf(one).length > 1);
  const deep = isTube ? 0 : depth(other, own) - depth(work, opening);
  if (deep > SAME) {
    const message = 'What is put in is … deep, and what it is put into is … deep: it would lie in folds at the bottom.';
    const fix = 'Cut it shorter, or sew it with wider allowances.';
    const lengths = [depth(other, own), depth(work, opening)];
    return fail({ code: 'too-wide', message, lengths, amount: deep, fix });
  }
  // Allowances that stand out beside its seams lie on its walls as it goes in.
  const flat = roundIn(other, own.row).turned ? ok(other) : pressedOutward(other, own.row);
  if (!flat.ok) return flat;
  const transform = onto(asEdge(opening), asEdge(own), 0, 'middle');
  const there = movedWork(flat.value, transform);
  const tagged: Work = {
    ...withPlies(there, (ply) => ({ ...ply, laid: [...(ply.laid ?? []), { ...called, transform }] })),
    stitches: there.stitches.map((one) =>
      one.id === own.row && one.round ? { ...one, round: { ...one.round, put: called } } : one,
    ),
  };
  const { work: both, of } = stackUp([work, tagged]);
  const isPut = ({ id }: Ply) => of[1]!.has(id);
  const container = both.plies.filter((ply) => !isPut(ply));
  const at = container.findIndex(({ id }) => id === roundIn(work, opening.row).over);
  const plies = [...container.slice(0, at), ...both.plies.filter(isPut), ...container.slice(at)];
  return ok(asOneStep(both.done, { ...both, plies }, { did: 'put' }));
}

type Faces = 'right' | 'wrong';

/** Which side of the lower wall looks inside, or outside, beside the middle of an opening. */
function touching(work: Work, { row, line, from, to }: Opening, where: 'inside' | 'outside'): Faces {
  const at = plus(times(plus(from, to), 0.5), times(inwardFrom(line), 2 * SAME));
  const { lower } = wallsOf(work, row);
  const there = layersAt({ ...work, plies: lower }, at).filter(isOwnCloth(work, row));
  const ply = bodyOf(there);
  return (ply?.face === 'right') === (where === 'inside') ? 'right' : 'wrong';
}

function fixForFaces(outside: Faces, inside: Faces, together: Faces, put: string): string {
  const turned = together === 'right' ? 'wrong side out' : 'right side out';
  const other = together === 'right' ? 'right side out' : 'wrong side out';
  if (outside !== together && inside !== together) return `Put them the other way round, the outer one into “${put}”.`;
  return outside === together
    ? `Turn “${put}” first, so that it lies ${other} as it goes in.`
    : `What “${put}” goes into lies ${turned} for that: turn it, or leave it unturned.`;
}

/** How deep a work is behind an opening, from seam to seam, in mm; as deep as its boxed corners leave it. */
function depth(work: Work, { line, row }: Opening): number {
  const reach = Math.max(...roundIn(work, row).ring.map(({ from }) => leftOf(line, from)));
  const squares = work.marks.flatMap(({ kind, square = 0 }) => (kind === 'box' ? square : []));
  return reach - Math.max(0, ...squares);
}

/** The two openings, the inner one first, where one work lies in another; undefined if none lie on one another. */
export function openingsTogether(work: Work, at: Opening): readonly [Opening, Opening] | undefined {
  const [inner, outer] = allOpenings(work).filter((one) => liesOn(at.line, one));
  return inner && outer && [inner, outer];
}

/**
 * Sews two openings together all round, one in the other, wall by wall.
 *
 * Faults: `opening` where no second work lies inside; `shapes-differ` where they are not equally long round; `not-finite`.
 *
 * @example
 * joinOpenings(putInto(bag, lining, how).value, openingsOf(bag)[0], 12) // => nothing is open but the gap of the lining
 */
export function joinOpenings(work: Work, at: Opening, allowance: number): Sewn {
  const both = openingsTogether(work, at);
  if (!both) {
    const message = 'Nothing lies inside the opening that could be sewn to it.';
    return fail({ code: 'opening', message, fix: 'Put the other work in first.' });
  }
  const waits = pipingWaits(work);
  if (waits) return fail(waits);
  const [inner, outer] = both;
  if (!Number.isFinite(allowance) || allowance <= 0) {
    return fail({ code: 'not-finite', message: 'The seam allowance is not a length.' });
  }
  const off = Math.abs(inner.round - outer.round);
  if (off > SAME) {
    const message = 'The two openings are not equally long round: … and ….';
    const fix = 'Cut them so that they come to the same between their seams.';
    return fail({ code: 'shapes-differ', message, lengths: [outer.round, inner.round], amount: off, fix });
  }
  const ring = withEdgeInside(roundIn(work, inner.row).ring, inner.edge, allowance);
  const { from, to } = sides(ring)[inner.edge]!;
  const line = lineThrough(from, to);
  const out = times(unit(minus(to, from)), 4 * allowance);
  const walls = wallsOf(work, inner.row);
  // A strap that hangs at the opening is caught there, and comes out when the work is turned.
  const open = ring.map((_, i) => (i === inner.edge ? allowance : 0));
  const isPut = isPutIn(work, inner.row);
  const caught = looseBetween(withoutPut(work, inner.row), { ring, allowances: open });
  const sewn = wallByWall(work, walls, (wall) => {
    const row = sewnRow(wall, 'seam', [from, to]);
    const { id } = row.stitches.at(-1)!;
    return ok(withPlies(row, (ply) => heldBeyond(ply, line, [minus(from, out), plus(to, out)], id, allowance)));
  });
  if (!sewn.ok) return sewn;
  const [row] = sewn.value.rows;
  const isOutside = { ...work, plies: walls.lower.filter((ply) => !isPut(ply)) };
  const isInside = { ...work, plies: walls.lower.filter(isPut) };
  const together = facesTogether([isOutside, isInside], [from, to]);
  const met = metAt(work, walls.lower, inner, outer, allowance);
  const done = { did: 'join openings', stitches: sewn.value.rows, met, ...(together && { together }) };
  // With their wrong sides together nothing is turned: the work is as open as before, its edges raw.
  if (together === 'wrong sides together') return ok({ ...sewn.value.work, done: [...work.done, done] });
  const shut = [inner, outer].reduce(
    (now, { row: its, edge }) => withEdge(now, its, edge, allowance, allowance),
    sewn.value.work,
  );
  const stitches = shut.stitches.map((one): Stitch =>
    one.id === row ? { ...one, joins: { outer: outer.row, inner: inner.row, caught } } : one,
  );
  return ok({ ...sewn.value.work, stitches, done: [...work.done, done] });
}

/** The two edges that a seam round openings met, each with its piece. */
function metAt(work: Work, wall: readonly Ply[], inner: Opening, outer: Opening, allowance: number): MetEdge[] {
  const isPut = isPutIn(work, inner.row);
  const there = layersAt({ ...work, plies: wall }, between(inner.from, inner.to, 0.5)).filter(
    isOwnCloth(work, inner.row),
  );
  return [outer, inner].map(({ name, round }, i) => {
    const piece = there.find((ply) => isPut(ply) === (i === 1))?.piece ?? '';
    return { edge: name, piece, length: round, allowance };
  });
}

/** Whether a ply belongs to what was put in, by the row that this was sewn with. */
function isPutIn(work: Work, row: number): (ply: Ply) => boolean {
  const { put } = roundIn(work, row);
  return (ply) => put !== undefined && wasLaidAs(ply, put);
}

/** A work in which what was put in counts as its own cloth, and only what was laid on as laid. */
function withoutPut(work: Work, row: number): Work {
  const { put } = roundIn(work, row);
  return withPlies(work, ({ laid, ...ply }) => {
    const left = laid?.filter((one) => one.work !== put?.work || one.nth !== put.nth) ?? [];
    return left.length > 0 ? { ...ply, laid: left } : ply;
  });
}

/** The row round two openings, until what was inside is pushed in. */
const joinOf = ({ stitches }: Work): Stitch | undefined => stitches.findLast(({ joins }) => joins !== undefined);

/** Whether a work is sewn round two openings, one in the other. */
export const hasJoin = (work: Work): boolean => joinOf(work) !== undefined;

/** Whether a work is sewn round two openings, and is to be turned through a gap. */
export const isJoined = (work: Work): boolean => {
  const join = joinOf(work);
  return join !== undefined && !join.joins!.turned;
};

/** Why the two works are not known any more where they lie: they were folded since they were sewn together. */
function foldedSince({ stitches }: Work, { joins }: Stitch): ClothFault | undefined {
  const isKnown = [joins!.outer, joins!.inner].every(
    (row) => stitches.find(({ id }) => id === row)?.round !== undefined,
  );
  if (isKnown) return undefined;
  const message = 'The work was folded since it was sewn together round its opening.';
  return { code: 'held', message, fix: 'Fold it only when it is turned and its lining is pushed in.' };
}

/** The seam round the openings, with the work outside on its left. */
function seamLine(work: Work, join: Stitch): Line {
  const [run] = join.runs;
  const side = sides(roundIn(work, join.joins!.outer).ring).find(({ from, to }) =>
    liesOn(lineThrough(from, to), run!),
  )!;
  return lineThrough(side.from, side.to);
}

/**
 * Turns a work that is sewn round the openings of two right side out, through the gap of one of them. What lay outside is
 * turned; what lay inside comes to lie beyond the seam, both as one tube. What was caught in the seam comes out.
 *
 * Faults: `no-gap`; those of turning a pair.
 */
export function turnThrough(work: Work): Sewn {
  const join = joinOf(work)!;
  const { outer, inner, caught: loose } = join.joins!;
  const creased = foldedSince(work, join);
  if (creased) return fail(creased);
  const gap = [inner, outer].find((row) => roundIn(work, row).gap && !roundIn(work, row).gap!.closed);
  if (gap === undefined) {
    if (openingsOf(work).length === 0) {
      const message = 'There is no gap to turn the work through: both works are sewn shut.';
      return fail({ code: 'no-gap', message });
    }
  }
  const line = seamLine(work, join);
  const over = reflection(line);
  const isInside = isPutIn(work, inner);
  const isLoose = ({ id }: Ply) => loose.includes(id);
  const parts = [
    work.plies.filter((ply) => !isLoose(ply) && !isInside(ply)),
    work.plies.filter((ply) => !isLoose(ply) && isInside(ply)),
    work.plies.filter(isLoose),
  ];
  const [ofOuter, ofInner, ofLoose, rest] = takenApart(withoutLoose(work, loose), parts);
  const held = heldTogether(rest!, join.id);
  if (held) return fail(held);
  const turned = turnedAndFolded({ ...ofOuter!, plies: parts[0]!, done: work.done }, outer, line);
  if (!turned.ok) return turned;
  const there = movedWork({ ...ofInner!, plies: parts[1]!, done: [] }, over);
  const at = work.plies.findIndex(({ id }) => id === roundIn(work, inner).over);
  // What hangs loose comes out over the seam.
  const [below, above] = [true, false].map((isLow) =>
    parts[2]!
      .filter((ply) => work.plies.indexOf(ply) < at === isLow)
      .map((ply) => movedPly(ply, over))
      .reverse(),
  );
  const { lower, inside, upper } = wallsOf(turned.value, outer);
  const plies = [...lower, ...above!, ...there.plies, ...below!, ...inside, ...upper];
  const hanging = { stitches: ofLoose!.stitches.map((one) => movedStitch(one, over)), marks: ofLoose!.marks };
  // Basting that held a strap in place comes out.
  const seams = rest!.stitches.filter(({ id }) => id === join.id);
  const { stitches, marks } = putTogether([turned.value, there, hanging, { stitches: seams, marks: [] }]);
  const level = new Map(plies.map(({ id }, i) => [id, i]));
  const all = stitches
    .map((one): Stitch => {
      if (one.id !== join.id) return one;
      const runs = one.runs.map((run) => ({
        ...run,
        plies: run.plies.toSorted((a, b) => (level.get(a) ?? 0) - (level.get(b) ?? 0)),
      }));
      return { ...one, runs, joins: { ...one.joins!, turned: true } };
    })
    .toSorted((a, b) => a.id - b.id);
  return ok(asOneStep(work.done, { plies, stitches: all, marks, done: [] }, { did: 'turn' }));
}

/** The work outside, turned; the allowance along its opening is folded in after its other edges, with their rows. */
function turnedAndFolded(work: Work, row: number, line: Line): Sewn {
  const { ring, allowances } = roundIn(work, row);
  const nth = sides(ring).findIndex((side) => liesOn(line, side));
  const width = allowances[nth]!;
  const turned = turn(withEdge(work, row, nth, -width, 0), true, row);
  if (!turned.ok) return turned;
  const folded = wallByWall(turned.value, wallsOf(turned.value, row), (wall, which) =>
    fold(wall, { line, lands: which === 'lower' ? 'over' : 'under', name: 'seam' }),
  );
  if (!folded.ok) return folded;
  const { work: after, walls } = folded.value;
  return ok(withOver(withEdge(after, row, nth, width, width), row, walls.upper[0]!.id));
}

/** An edge of the ring of a row, moved in by so many mm, and with another allowance. */
const withEdge = (work: Work, row: number, nth: number, by: number, width: number): Work =>
  withRound(work, row, (round) => ({
    ...round,
    ring: withEdgeInside(round.ring, nth, by),
    allowances: round.allowances.with(nth, width),
  }));

const withOver = (work: Work, row: number, over: number): Work => withRound(work, row, (round) => ({ ...round, over }));

const withRound = (work: Work, row: number, change: (round: SewnRound) => SewnRound): Work => ({
  ...work,
  stitches: work.stitches.map((one) => (one.id === row && one.round ? { ...one, round: change(one.round) } : one)),
});

/** Why the two works cannot come apart: something beside the seam round their openings goes through both. */
function heldTogether({ stitches, marks }: Sewing, join: number): ClothFault | undefined {
  const row = stitches.find(({ id, kind }) => id !== join && kind !== 'baste' && kind !== 'gather');
  const fix = 'Sew and box each of the two by itself, before one is put into the other.';
  if (row) {
    const message = `A row of ${row.kind} stitches goes through both works, so that neither can be turned out of the other.`;
    return { code: 'sewn-down', message, fix };
  }
  const [mark] = marks;
  return mark && { code: 'sewn-down', message: `${mark.name} goes through both works and holds them together.`, fix };
}

/** The upper wall of each begins with its own cloth, and not with what hangs loose before it. */
const withoutLoose = (work: Work, loose: readonly number[]): Work => ({
  ...work,
  stitches: work.stitches.map((one) => {
    if (!one.round) return one;
    const at = work.plies.findIndex(({ id }) => id === one.round!.over);
    const own = at < 0 ? undefined : work.plies.slice(at).find(({ id }) => !loose.includes(id));
    return own ? { ...one, round: { ...one.round, over: own.id } } : one;
  }),
});

/**
 * Pushes one of the two works, sewn together round their openings and turned, into the other: its walls fold along the seam,
 * inside. The opening is there again, its edge that seam.
 *
 * Faults: `not-sewn-round` where there is no such seam, or it is not turned yet; those of folding.
 *
 * @param goes tells which one by its plies and by what it was called when it was put in; the one that was put in, or the other
 * @example
 * pushIn(turnThrough(joined).value, () => 'inner') // => a bag with its lining inside
 */
export function pushIn(
  work: Work,
  goes: (put: string, inner: readonly Ply[], outer: readonly Ply[]) => Result<'inner' | 'outer', ClothFault>,
): Sewn {
  const join = joinOf(work);
  if (!join?.joins?.turned) {
    const message = join
      ? 'It is to be turned right side out first.'
      : 'No lining is sewn to the opening of this work.';
    const fix = join ? 'Turn it through the gap, and then push in.' : 'Put it in and join both openings first.';
    return fail({ code: 'not-sewn-round', message, fix });
  }
  const { inner, outer, caught } = join.joins;
  const creased = foldedSince(work, join);
  if (creased) return fail(creased);
  const isPut = isPutIn(work, inner);
  const own = work.plies.filter(({ id }) => !caught.includes(id));
  const which = goes(
    roundIn(work, inner).put?.work ?? '',
    own.filter(isPut),
    own.filter((ply) => !isPut(ply)),
  );
  if (!which.ok) return which;
  const pushed = which.value === 'inner' ? inner : outer;
  const seam = seamLine(work, join);
  const line = pushed === inner ? seam : reversedEdge(seam);
  const walls = wallsOf(work, inner);
  const folded = wallByWall(work, walls, (wall, level) => {
    const how = { line, lands: level === 'lower' ? 'over' : 'under', name: 'seam' } as const;
    const goesIn = wall.plies.filter((ply) => (pushed === inner ? isPut(ply) : !caught.includes(ply.id)));
    const after = fold(wall, { ...how, plies: new Set(goesIn.map(({ id }) => id)) });
    return after.ok && pushed === outer ? ok(straightened(after.value, caught, reflection(line), isPut, level)) : after;
  });
  if (!folded.ok) return folded;
  const { work: after, walls: now } = folded.value;
  const stitches = after.stitches.map((one): Stitch => {
    if (one.id === join.id) return { ...one, joins: undefined };
    if (one.id !== pushed) return one;
    const { round } = movedStitch({ ...one, runs: [] }, reflection(line));
    const allowances = round!.allowances.map((width, i) => {
      return liesOn(line, sides(round!.ring)[i]!) ? 0 : width;
    });
    return { ...one, round: { ...round!, allowances, over: now.upper[0]!.id } };
  });
  const there = { ...after, stitches };
  return ok(asOneStep(work.done, pushed === inner ? there : turnedRound(there), { did: 'push in' }));
}

/** The opening lies again on the side where it lay before. */
const turnedRound = (work: Work): Work => movedWork(work, rotation(180, middleOfWork(work)));

/**
 * What was caught in the seam goes on straight: its ends go in with the allowances between which they are sewn, and the rest
 * stands out beyond the opening.
 */
function straightened(
  wall: Work,
  caught: readonly number[],
  over: Transform,
  isPut: (ply: Ply) => boolean,
  level: 'lower' | 'upper',
): Work {
  const isCaught = (id: number) => caught.includes(id);
  const strap = wall.plies
    .filter(({ id }) => isCaught(id))
    .map((ply) => movedPly(ply, over))
    .reverse();
  const others = wall.plies.filter(({ id }) => !isCaught(id));
  const at = level === 'lower' ? others.findLastIndex(isPut) + 1 : others.findIndex(isPut);
  const isOfStrap = ({ plies }: { readonly plies: readonly number[] }) => plies.length > 0 && plies.every(isCaught);
  return {
    ...wall,
    plies: [...others.slice(0, at), ...strap, ...others.slice(at)],
    stitches: wall.stitches.map((one) => (one.runs.every(isOfStrap) ? movedStitch(one, over) : one)),
    marks: wall.marks.map((mark) => (isOfStrap(mark) ? movedMark(mark, over) : mark)),
  };
}
