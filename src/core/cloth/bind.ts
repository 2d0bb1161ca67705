import { acrossWork, sewn } from './stitch.ts';
import { asOneStep, foldInHand } from './group.ts';
import { distance } from '../geometry/point.ts';
import { fail, ok } from '../measure/index.ts';
import { findEdge, lineInside } from './edge.ts';
import { join } from './seam.ts';
import { offsets, ON } from './ring.ts';
import { withPlies } from './combine.ts';
import type { EdgeReference } from './edge.ts';
import type { InHand } from './group.ts';
import type { Sewn, Work } from './work.ts';

export type Bind = {
  readonly edge: EdgeReference;
  /** Finished width, in mm. The strip is four times as wide (Singer AU, Make bias binding), at least more than three. */
  readonly width: number;
  /** The edge of the strip that is sewn on first; its longest edge if left out. */
  readonly stripEdge?: string;
  /** How far inside the binding's inner fold the last row runs, in mm; 1.5 is common practice, no source. */
  readonly inside?: number;
};

/**
 * Binds an edge with a strip: sewn to the edge right sides together at the finished width, opened, folded round the raw
 * edge with its own raw edge turned in, and sewn down. The work keeps its size.
 *
 * Faults: those of joining; `too-deep` when the strip is too narrow to turn in or so wide that it shows raw.
 *
 * @example
 * bind(mat, strip, { edge: 'top', width: 10 }) // a strip 40 mm wide
 */
export function bind(work: Work, strip: Work, { edge: asked, width, stripEdge, inside = 1.5 }: Bind): Sewn {
  const edge = findEdge(work, asked);
  if (!edge.ok) return edge;
  const { name } = edge.value;
  if (!Number.isFinite(width + inside) || width <= 0) {
    return fail({ code: 'not-finite', message: 'The finished width of the binding is not a length.', edge: name });
  }
  const own = stripEdge ?? longestEdge(strip);
  const first = findEdge(strip, own);
  if (!first.ok) return first;
  const across = Math.max(...strip.plies.flatMap((ply) => offsets(ply.outline, first.value.line)));
  const turn = across - 3 * width;
  if (turn <= ON || turn > 2 * width) {
    const message = `A binding ${turn <= ON ? 'has nothing to turn in' : 'reaches too far'}: its strip should be four times its width.`;
    return fail({ code: 'too-deep', message, edge: name, amount: across - 4 * width });
  }
  const joined = join(
    [
      { work, edge: edge.value },
      { work: strip, edge: own },
    ],
    { allowance: width, press: 'to second' },
  );
  if (!joined.ok) return joined;

  const old = new Set(work.plies.map(({ id }) => id));
  let now: InHand = {
    work: joined.value,
    hand: new Set(joined.value.plies.flatMap(({ id }) => (old.has(id) ? [] : [id]))),
  };
  // Outward from the raw edge: the last of the strip is turned in, then the strip is folded round the edge.
  for (const out of [width, 0]) {
    const folded = foldInHand(now, { line: lineInside(edge.value, -out), lands: 'under', name });
    if (!folded.ok) return folded;
    now = folded.value;
  }
  const rowed = sewn(now.work, 'edgestitch', acrossWork(now.work, lineInside(edge.value, width - inside)));
  const row = rowed.stitches.at(-1)!;
  const held = withPlies(rowed, (ply) => {
    if (!now.hand.has(ply.id)) return ply;
    const raw = (i: number) => ply.outline[i]!.fold === undefined && ply.outline[i]!.held === undefined;
    return {
      ...ply,
      outline: ply.outline.map((one, i) => (raw(i) && isFar(one.name, own) ? { ...one, held: row.id } : one)),
    };
  });
  const seam = joined.value.stitches.at(-1)!.id;
  const met = joined.value.done.at(-1)!.met;
  return ok(
    asOneStep(joined.value.done.slice(0, -1), held, { did: 'bind', stitches: [seam, row.id], ...(met && { met }) }),
  );
}

/** The strip's far edge is turned in; of a strip of four edges it is the one across from the edge sewn on. */
const across: Record<string, string> = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' };
const isFar = (name: string, own: string): boolean => name === across[own];

function longestEdge(strip: Work): string {
  const edges = strip.plies.flatMap(({ outline }) =>
    outline.map((edge, i) => ({
      name: edge.name,
      length: distance(edge.from, outline[(i + 1) % outline.length]!.from),
    })),
  );
  return edges.reduce((best, edge) => (edge.length > best.length ? edge : best), { name: '', length: 0 }).name;
}
