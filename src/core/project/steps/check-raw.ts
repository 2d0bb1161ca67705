/** Raw edges that fray in the wash: those that neither a finish nor a lining, a hem or a binding keeps. */
import { exposedEdges } from '../../cloth/exposed.ts';
import { distance } from '../../geometry/point.ts';
import { listed } from '../../measure/index.ts';
import { materialIn } from './thickness.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Ledger } from '../step.ts';
import type { Pattern } from '../pattern.ts';
import type { PlyEdge } from '../../cloth/index.ts';

/** Less than this, in mm, and less than this share of an edge is not worth a word: the end of a hem in an allowance. */
const SHORT = 10;
const SHARE = 1 / 4;

/**
 * Of a project whose work will be washed: the raw edges of cloth that frays, where water and wear get at them; those that
 * a seam holds at the step that sewed it.
 */
export function checkRaw(pattern: Pattern, { steps, results }: Ledger): Diagnostic[] {
  if (pattern.origin.file.washed !== true) return [];
  const lengths = new Map<string, { piece: string; edge: PlyEdge; length: number; whole: number }>();
  const made = new Set(steps.map(({ makes }) => makes));
  for (const [name, work] of Object.entries(results)) {
    if (!made.has(name)) continue;
    const exposed = new Map(exposedEdges(work).map(({ edge, length }) => [edge, length]));
    for (const ply of work.plies) {
      const material = materialIn(pattern, ply);
      if (material?.frays === false || (material !== undefined && material.kind !== 'cloth')) continue;
      for (const [i, edge] of ply.outline.entries()) {
        // Where a corner was clipped nothing can be finished; where gathers begin the cloth goes on.
        if (edge.fold !== undefined || edge.name === 'clip' || edge.name === 'gathers') continue;
        const key = JSON.stringify([ply.piece, edge.name, edge.held === undefined]);
        const { length = 0, whole = 0 } = lengths.get(key) ?? {};
        const all = distance(edge.from, ply.outline[(i + 1) % ply.outline.length]!.from);
        const raw = edge.finish === undefined ? (exposed.get(edge) ?? 0) : 0;
        lengths.set(key, { piece: ply.piece, edge, length: length + raw, whole: whole + all });
      }
    }
  }
  const isFree = ({ edge }: { edge: PlyEdge }) => edge.held === undefined;
  const raw = [...lengths.values()]
    .filter(({ length, whole }) => length >= SHORT && length >= SHARE * whole)
    .toSorted((a, b) => Number(isFree(a)) - Number(isFree(b)));
  const sewnBy = ({ piece, edge }: (typeof raw)[number]) =>
    edge.held === undefined
      ? undefined
      : steps.find(({ after }) =>
          after.plies.some(
            (ply) =>
              ply.piece === piece && ply.outline.some(({ name, held }) => name === edge.name && held !== undefined),
          ),
        );
  return [...Map.groupBy(raw, sewnBy)].map(([step, edges]): Diagnostic => {
    const names = edges.map(({ piece, edge }) => `${piece} ${edge.name}`).toSorted();
    const isOne = names.length === 1;
    const what = isOne ? `The ${names[0]!}` : listed(names.map((name) => `the ${name}`)).replace(/^t/u, 'T');
    return {
      severity: 'warning',
      place: step?.place ?? ['washed'],
      code: 'raw-inside',
      message: `${what} ${isOne ? 'stays' : 'stay'} raw, and ${isOne ? 'frays' : 'fray'} in the wash.`,
      fix: step
        ? `Finish the edges before they are sewn, or their allowances right after: finish: ${step.makes}, at: seams, with: zigzag. Or line or bind them.`
        : `Hem, bind or finish ${isOne ? 'it' : 'them'}.`,
    };
  });
}
