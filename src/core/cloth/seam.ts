import { alongLine } from '../geometry/index.ts';
import { sewn } from './stitch.ts';
import { asOneStep, foldInHand } from './group.ts';
import { direction, plus, times } from '../geometry/point.ts';
import { fail, ok } from '../measure/index.ts';
import { identity, followedBy } from '../geometry/transform.ts';
import { findEdge, lineInside, nameOf, reversedEdge } from './edge.ts';
import { layersAt } from './layers.ts';
import { movedWork } from './move.ts';
import { beginsAt, endsAt, offsets, ON, stretches } from './ring.ts';
import { movedEdge } from './sides.ts';
import { onto, overturning } from './place.ts';
import { SAME } from '../measure/index.ts';
import { stackUp, withPlies } from './combine.ts';
import type { Along } from './place.ts';
import type { ClothFault } from './fault.ts';
import type { StepRecord, MetEdge, Ply, Sewn, StitchKind, Work } from './work.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { EdgeReference, WorkEdge } from './edge.ts';

/** One layer of a seam, from the table upward. */
export type SeamLayer = {
  readonly work: Work;
  /** The edge to sew, by name or as it was found in this work. */
  readonly edge: EdgeReference;
  /** When it differs from the seam's own, in mm. */
  readonly allowance?: number;
  /** The first lies as it is; the others are turned over onto it, unless this says otherwise. */
  readonly face?: 'up' | 'down';
  /** Opened after sewing: its body is turned over the stitch line, over or under the seam. */
  readonly opens?: 'over' | 'under';
};

export type Seam = {
  /** From the raw edges to the stitches, in mm. */
  readonly allowance: number;
  /**
   * What happens after sewing: the last layer is opened and the allowances pressed open (each under its own body), to
   * the second body (as they fall) or to the first; or nothing is opened. `to second` if left out. Layers that say
   * themselves how they open leave only the pressing to this.
   */
  readonly press?: 'open' | 'to first' | 'to second' | 'unopened';
  readonly along?: Along;
  readonly kind?: StitchKind;
};

/**
 * Sews two or more works together edge to edge and opens them. The stitch lines meet; the first work stays where it
 * lies. Two bodies of widths a and b with allowance s come to a + b - 2 s.
 *
 * Faults: those of finding the edges; `not-finite`; `too-deep` when the allowance takes a whole layer; `misses` when
 * the edges do not overlap; `edge-inside` when a layer that opens reaches beyond its edge elsewhere; those of folding.
 *
 * @example
 * join([{ work: panel, edge: 'top' }, { work: facing, edge: 'top' }], { allowance: 6, press: 'open' })
 */
export function join(layers: readonly SeamLayer[], seam: Seam): Sewn {
  const { press = 'to second', along = 'middle', kind = 'seam' } = seam;
  if (layers.length < 2) return fail({ code: 'no-plies', message: 'A seam needs two layers or more.' });
  const placed = placeLayers(layers, seam, along);
  if (!placed.ok) return placed;
  const { works, line, met } = placed.value;
  const { work: stack, of } = stackUp(works);

  const way = commonStretch(stack, of, line);
  if (!way) return fail({ code: 'misses', message: 'The edges of the seam do not lie on one another.' });
  const together = facesTogether(works, way);
  const stitched = sewn(stack, kind, way);
  const stitch = stitched.stitches.at(-1)!;
  const held = withPlies(stitched, (ply) => heldBeyond(ply, line, way, stitch.id));

  const says = layers.some((layer) => layer.opens !== undefined);
  const opening = layers.map(({ opens }, i): Opening => {
    const last = !says && press !== 'unopened' && i === layers.length - 1;
    return { hand: of[i]!, moved: new Set(), opens: last ? 'over' : opens, allowance: met[i]!.allowance };
  });
  const opened = open(held, opening, line);
  if (!opened.ok) return opened;
  const flat = pressed(...opened.value, press, line);
  if (!flat.ok) return flat;
  const { plies, stitches, marks } = held;
  const sewnAs = { plies, stitches, marks, top: of.at(-1)! };
  const note: StepRecord = { did: 'join', stitches: [stitch.id], met, sewnAs, ...(together && { together }) };
  return ok(asOneStep(stack.done, flat.value, note));
}

/** Every layer where it is sewn, the stitch line, and the edges that meet. */
function placeLayers(
  layers: readonly SeamLayer[],
  seam: Seam,
  along: Along,
): Result<{ works: Work[]; line: Line; met: MetEdge[] }, ClothFault> {
  const works: Work[] = [];
  const met: MetEdge[] = [];
  let first: { edge: WorkEdge; allowance: number } | undefined;
  for (const [i, layer] of layers.entries()) {
    const allowance = layer.allowance ?? seam.allowance;
    if (!Number.isFinite(allowance) || allowance < 0) {
      return fail({ code: 'not-finite', message: 'The seam allowance is not a length.', edge: nameOf(layer.edge) });
    }
    const found = findEdge(layer.work, layer.edge);
    if (!found.ok) return found;
    const { name, pieces } = found.value;
    const deep = deepest(layer.work, found.value.line);
    if (deep <= allowance + ON) {
      const message = `The allowance takes all of ${pieces.join(' and ')} at its edge ${name}.`;
      return fail({ code: 'too-deep', message, edge: name, amount: allowance - deep });
    }
    const over = (layer.face ?? (i === 0 ? 'up' : 'down')) === 'down' ? overturning(layer.work) : identity;
    const edge = movedEdge(found.value, over);
    first ??= { edge, allowance };
    const transform = i === 0 ? over : followedBy(over, onto(first.edge, edge, first.allowance - allowance, along));
    const there = movedWork(layer.work, transform);
    works.push(there);
    const line = lineInside(first.edge, first.allowance);
    const at = stretchOf(there.plies, line);
    const length = at ? at.to - at.from : 0;
    met.push({ edge: name, piece: pieces.join(' and '), length, allowance });
  }
  return ok({ works, line: lineInside(first!.edge, first!.allowance), met });
}

const deepest = (work: Work, line: Line): number =>
  Math.max(...work.plies.flatMap((ply) => offsets(ply.outline, line)));

/** From where to where plies lie on a line, as distances along it. */
export function stretchOf(plies: readonly Ply[], line: Line): { from: number; to: number } | undefined {
  const ends = plies.flatMap((ply) => stretches(ply.outline, line.at, plus(line.at, direction(line.angle))).flat());
  return ends.length > 0 ? { from: Math.min(...ends), to: Math.max(...ends) } : undefined;
}

/** The part of the stitch line on which every layer lies. */
function commonStretch(work: Work, of: readonly ReadonlySet<number>[], line: Line): [Point, Point] | undefined {
  let [from, to] = [-Infinity, Infinity];
  for (const ids of of) {
    const at = stretchOf(
      work.plies.filter((ply) => ids.has(ply.id)),
      line,
    );
    if (!at) return undefined;
    [from, to] = [Math.max(from, at.from), Math.min(to, at.to)];
  }
  if (!(to - from > ON)) return undefined;
  const way = direction(line.angle);
  return [plus(line.at, times(way, from)), plus(line.at, times(way, to))];
}

/** Raw edges beyond the stitches, at most `depth` mm, are held by them from now on, where the row goes. */
export function heldBeyond(
  ply: Ply,
  line: Line,
  [from, to]: readonly [Point, Point],
  stitch: number,
  depth = Infinity,
): Ply {
  if (endsAt(ply.outline, line) || beginsAt(ply.outline, line)) return ply;
  const off = offsets(ply.outline, line);
  const [start, end] = [alongLine(line, from), alongLine(line, to)];
  const n = ply.outline.length;
  const outline = ply.outline.flatMap((edge, i) => {
    const k = (i + 1) % n;
    const isBeside = Math.max(off[i]!, off[k]!) > -ON || Math.min(off[i]!, off[k]!) < -depth - SAME;
    if (isBeside || edge.held !== undefined) return edge;
    const next = ply.outline[k]!;
    // An edge longer than the row stays free where the row does not go.
    const [a, b] = [alongLine(line, edge.from), alongLine(line, next.from)];
    const at = (t: number) => plus(edge.from, times({ x: next.from.x - edge.from.x, y: next.from.y - edge.from.y }, t));
    const cuts = [start, end].map((stop) => (stop - a) / (b - a)).filter((t) => t > 1e-9 && t < 1 - 1e-9);
    const stops = [0, ...cuts.sort((p, q) => p - q), 1];
    return stops.slice(1).map((stop, k) => {
      const middle = a + ((b - a) * (stops[k]! + stop)) / 2;
      const part = { ...edge, from: k === 0 ? edge.from : at(stops[k]!) };
      return middle > start - ON && middle < end + ON ? { ...part, held: stitch } : part;
    });
  });
  return { ...ply, outline };
}

/** Which faces of the first two layers touch at the middle of the row. */
export function facesTogether(works: readonly Work[], [from, to]: readonly [Point, Point]): StepRecord['together'] {
  const at = times(plus(from, to), 0.5);
  const [below, above] = [layersAt(works[0]!, at).at(-1), layersAt(works[1]!, at)[0]];
  if (!below || !above) return undefined;
  if (below.face === above.face) return 'right side to wrong side';
  return below.face === 'right' ? 'right sides together' : 'wrong sides together';
}

/** A layer of the seam after sewing: its plies, those of them that were turned over the line, and how it opens. */
type Opening = {
  readonly hand: ReadonlySet<number>;
  readonly moved: ReadonlySet<number>;
  readonly opens: 'over' | 'under' | undefined;
  readonly allowance: number;
};

/** Opens the layers that open: first those that open under, from below, then those that open over, from the top. */
function open(work: Work, layers: readonly Opening[], line: Line): Result<[Work, Opening[]], ClothFault> {
  const opened = [...layers];
  const numbers = layers.map((_, i) => i);
  const under = numbers.filter((i) => layers[i]!.opens === 'under');
  const over = numbers.filter((i) => layers[i]!.opens === 'over').reverse();
  let now = work;
  for (const i of [...under, ...over]) {
    const layer = layers[i]!;
    const deep = reachesBeyond(now, layer, line);
    if (deep) return fail(deep);
    const how = { line: reversedEdge(line), lands: layer.opens!, name: 'seam' };
    const folded = foldInHand({ work: now, hand: layer.hand }, how);
    if (!folded.ok) return folded;
    now = folded.value.work;
    opened[i] = { ...layer, hand: folded.value.hand, moved: folded.value.moved };
  }
  return ok([now, opened]);
}

/** Only the allowance may lie beyond the stitch line of a layer that is turned there. */
function reachesBeyond(work: Work, { hand, allowance }: Opening, line: Line): ClothFault | undefined {
  for (const ply of work.plies) {
    if (!hand.has(ply.id)) continue;
    const beyond = -Math.min(...offsets(ply.outline, line)) - allowance;
    if (beyond <= ON) continue;
    const message = `${ply.piece} reaches beyond the edge that is sewn. The seam does not open flat.`;
    return { code: 'edge-inside', message, piece: ply.piece, amount: beyond };
  }
  return undefined;
}

/** Puts the allowances where pressing puts them. As they fall, they lie on the far side of the line. */
function pressed(work: Work, layers: readonly Opening[], press: Seam['press'], line: Line): Sewn {
  if (press !== 'open' && press !== 'to first') return ok(work);
  const hand = new Set<number>();
  for (const layer of layers) {
    if (layer.opens !== undefined && press === 'open') continue;
    const deep = layer.opens === undefined ? reachesBeyond(work, layer, line) : undefined;
    if (deep) return fail(deep);
    for (const id of layer.hand) if (!layer.moved.has(id)) hand.add(id);
  }
  const folded = foldInHand({ work, hand }, { line, lands: 'under', name: 'seam' });
  return folded.ok ? ok(folded.value.work) : folded;
}
