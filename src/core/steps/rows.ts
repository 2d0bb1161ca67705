/** Rows of stitches along edges, for the verbs that sew them. */
import { edgeOn, edgesOn } from '../cloth/sides.ts';
import { fail, ok, plainName, quote, SAME } from '../measure/index.ts';
import { length, optional, whole, yes } from './fields.ts';
import { curveInside, lengthOf, partOf, pathRound, runsBack } from '../cloth/curve.ts';
import { atOpening, openingAsked, rowInside, sewsShut, sewsShutAlong } from '../cloth/openings.ts';
import { pathsInside } from '../cloth/paths-inside.ts';
import { noted } from '../cloth/work.ts';
import { sewn } from '../cloth/stitch.ts';
import type { ClothFault, Sewn, StitchKind, Work } from '../cloth/index.ts';
import type { Measured } from './verb.ts';
import type { Opening } from '../cloth/openings.ts';
import type { Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { RowSide } from '../cloth/paths-inside.ts';

export const sewShut = optional(yes('it is meant to sew the opening there shut.'));

/** How far from the edge an edgestitch runs when the step does not say, in mm. Common practice, no source. */
export const CLOSE = { inch: 25.4 / 16, metric: 2 };

/** The fields of a verb that sews a row along edges. */
export const rowFields = {
  by: optional(length('how far in from the edge the row is sewn. Left out, what is usual for the verb.')),
  begins: optional(
    length(
      'of a row along one edge: from the left or lower end of the row to where it begins. At its end if left out.',
    ),
  ),
  ends: optional(length('of a row along one edge: how far before the right or upper end of the row it ends.')),
  through: optional(whole('how many layers from the top it goes through; all that lie there if left out.')),
  'back and forth': optional(
    length('how long it is sewn back and forth at both ends, where it is pulled at: the mouth of a pocket, a strap.'),
  ),
} as const;

/** What a step says of its row beside the edges. */
export type RowSaid = {
  readonly by?: number;
  readonly begins?: number;
  readonly ends?: number;
  readonly through?: number;
  readonly 'back and forth'?: number;
  readonly 'sew shut'?: boolean;
};

/** The distances of a row in sentences. */
export const rowMeasured = ({ begins, ends, 'back and forth': back }: RowSaid): Measured[] => [
  ...(begins === undefined ? [] : [{ says: 'It begins … from the left or lower end.', length: begins }]),
  ...(ends === undefined ? [] : [{ says: 'It ends … before the right or upper end.', length: ends }]),
  ...(back === undefined ? [] : [{ says: 'Sew … back and forth at both ends.', length: back }]),
];

/** ` through the 2 upper layers`; nothing where it goes through all. */
export const throughLayers = ({ through }: RowSaid): string =>
  through === undefined ? '' : through === 1 ? ' through the upper layer' : ` through the ${through} upper layers`;

/** The edges that rows run along, and whole ways of those that go all round an outline. */
type Ways = { readonly edges: readonly RowSide[]; readonly rings: readonly (readonly Point[])[] };

/**
 * Rows along the edges that a step names, so many mm inside them: along straight ones, turning at corners, along a curve, or
 * all round an `outline`.
 *
 * Faults: those of finding the edges; `opening` where that sews one shut and is not meant to; `one-edge` where it begins or
 * ends inside several; `too-deep` where nothing is left between both ends, or of a row between two others; `too-many` layers;
 * `misses`.
 */
export function rowsAlong(
  work: Work,
  asked: readonly string[],
  kind: StitchKind,
  usual: number,
  said: RowSaid = {},
): Sewn {
  const by = said.by ?? usual;
  const opening = openingAsked(work, asked);
  if (opening) return opening.ok ? rowRound(work, opening.value, kind, by, said) : opening;
  const found = waysOf(work, asked, by);
  if (!found.ok) return found;
  const { edges, rings } = found.value;
  const straight = edges.flatMap((edge) => ('way' in edge ? [] : [edge]));
  const curved = edges.flatMap((edge) => ('way' in edge ? [edge.way] : []));
  // Basting holds for now, and is taken out; through one layer nothing is sewn to anything.
  const closed =
    kind === 'baste' || said['sew shut'] || said.through === 1
      ? undefined
      : (sewsShut(work, straight) ?? sewsShutAlong(work, [...curved, ...rings], by));
  if (closed) return fail(closed);
  const ways = pathsInside(work, edges, by);
  if (!ways.ok) return said.by === undefined ? ways : fail({ ...ways.fault, field: 'by' });
  const all = [...ways.value, ...rings];
  const parts = partsOf(all, said);
  if (!parts.ok) return parts;
  const back = said['back and forth'];
  const short = back === undefined ? undefined : parts.value.find((way) => lengthOf(way) < 2 * back - SAME);
  if (short) {
    const message = 'The row is shorter than what is sewn back and forth at its ends.';
    return fail({ code: 'too-deep', message, field: 'back and forth', amount: 2 * back! - lengthOf(short) });
  }
  const more = back === undefined ? {} : { secured: 2 * back };
  const after = parts.value.reduce((now, way) => sewn(now, kind, way, more), work);
  const stitches = after.stitches.slice(work.stitches.length);
  if (stitches.some(({ runs }) => runs.length === 0)) {
    const message = 'The row of stitches misses the cloth.';
    if (said.by === undefined) return fail({ code: 'misses', message });
    return fail({ code: 'misses', message, field: 'by', fix: `Make “by” ${by <= SAME ? 'larger' : 'smaller'}.` });
  }
  const did = { did: kind, stitches: stitches.map(({ id }) => id) };
  const { through } = said;
  if (through === undefined) return ok(noted(after, did));
  const most = Math.max(...stitches.flatMap(({ runs }) => runs.map(({ plies }) => plies.length)));
  if (through > most) {
    const message = `Only ${most === 1 ? 'one layer lies' : `${most} layers lie`} along this row.`;
    return fail({
      code: 'too-many',
      message,
      field: 'through',
      fix: 'Leave “through” out, and the row goes through all.',
    });
  }
  const upper = stitches.map((row) => ({
    ...row,
    runs: row.runs.map((run) => ({ ...run, plies: run.plies.slice(-through) })),
  }));
  return ok(noted({ ...after, stitches: [...work.stitches, ...upper] }, did));
}

/** A row all round an opening, through one wall at a time. */
function rowRound(work: Work, opening: Opening, kind: StitchKind, by: number, said: RowSaid): Sewn {
  const field = (['begins', 'ends', 'through', 'back and forth'] as const).find((name) => said[name] !== undefined);
  if (field) {
    const message = `A row round an opening has no ends, and goes through the whole of each wall: ${quote(field)} says nothing there.`;
    return fail({ code: 'one-edge', message, field, fix: `Leave ${quote(field)} out.` });
  }
  const way = rowInside(work, opening, by);
  const after = atOpening(work, opening, (wall) => ok(sewn(wall, kind, way)), { did: kind });
  if (!after.ok || after.value.stitches.slice(work.stitches.length).every(({ runs }) => runs.length > 0)) return after;
  return fail({ code: 'misses', message: 'The row of stitches misses the cloth.', field: 'by' });
}

/** The edges that a step names, and the ways round the outlines that it names. */
function waysOf(work: Work, asked: readonly string[], by: number): Result<Ways, ClothFault> {
  const edges: RowSide[] = [];
  const rings: (readonly Point[])[] = [];
  for (const one of asked) {
    const round = pathRound(work, one, by);
    if (round) {
      if (!round.ok) return round;
      rings.push(round.value);
      continue;
    }
    const straight = edgesOn(work, [one]);
    if (straight.ok) {
      edges.push(...straight.value);
      continue;
    }
    if (straight.fault.code !== 'not-straight') return straight;
    const { own } = straight.fault;
    if (own !== undefined && own !== plainName(one))
      return fail({ ...straight.fault, fix: `Name the edge that lies there: ${quote(own)}.` });
    const curve = curveInside(work, one, by);
    if (!curve.ok) return curve;
    edges.push(curve.value);
  }
  if (asked.length > 0) return ok({ edges, rings });
  const none = edgeOn(work, '');
  return none.ok ? ok({ edges, rings }) : none;
}

/** Rows from where they begin to where they end. */
function partsOf(
  ways: readonly (readonly Point[])[],
  { begins = 0, ends = 0 }: RowSaid,
): Result<readonly (readonly Point[])[], ClothFault> {
  if (begins === 0 && ends === 0) return ok(ways);
  const field = begins > 0 ? 'begins' : 'ends';
  const [way, ...others] = ways;
  const isRing = way !== undefined && Math.hypot(way[0]!.x - way.at(-1)!.x, way[0]!.y - way.at(-1)!.y) < SAME;
  if (!way || others.length > 0 || isRing) {
    const message = `At which of its ends the row ${field} so far in is not clear: it is ${isRing ? 'a ring' : 'more than one row'}.`;
    return fail({ code: 'one-edge', message, field });
  }
  const part = runsBack(way) ? partOf(way, ends, begins) : partOf(way, begins, ends);
  if (part) return ok([part]);
  const message = 'The row is … long: so far in from its ends nothing is left of it.';
  return fail({
    code: 'too-deep',
    message,
    lengths: [lengthOf(way)],
    field,
    amount: begins + ends - lengthOf(way),
    fix: `Make ${quote(field)} shorter.`,
  });
}
