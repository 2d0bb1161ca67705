/** The rows and marks of a work whose layers are taken apart and put together again. */
import type { Mark, Ply, Run, Stitch } from './work.ts';

/** Rows and marks by themselves. */
export type Sewing = { readonly stitches: readonly Stitch[]; readonly marks: readonly Mark[] };

/**
 * The rows and marks of each layer, and last those of none of them alone. A row that has runs in several layers is
 * parted.
 */
export function takenApart({ stitches, marks }: Sewing, layers: readonly (readonly Ply[])[]): Sewing[] {
  const layerOf = new Map<number, number>();
  for (const [i, plies] of layers.entries()) for (const { id } of plies) layerOf.set(id, i);
  const rest = layers.length;
  const place = (plies: readonly number[]): number => {
    const first = layerOf.get(plies[0] ?? -1) ?? rest;
    return plies.every((id) => layerOf.get(id) === first) ? first : rest;
  };
  const apart = Array.from({ length: rest + 1 }, () => ({ stitches: [] as Stitch[], marks: [] as Mark[] }));
  for (const stitch of stitches) {
    const parted = new Map<number, Run[]>(stitch.runs.length === 0 ? [[rest, []]] : []);
    for (const run of stitch.runs) {
      const layer = place(run.plies);
      const known = parted.get(layer);
      if (known) known.push(run);
      else parted.set(layer, [run]);
    }
    for (const [layer, runs] of parted) apart[layer]!.stitches.push({ ...stitch, runs });
  }
  for (const mark of marks) apart[place(mark.plies)]!.marks.push(mark);
  return apart;
}

/** Rows and marks of several layers in one; a row that was parted is one row again. */
export function putTogether(all: readonly Sewing[]): Sewing {
  const rows = new Map<number, Stitch>();
  for (const stitch of all.flatMap(({ stitches }) => stitches)) {
    const known = rows.get(stitch.id);
    const joined = known && { ...known, runs: [...known.runs, ...stitch.runs], round: known.round && stitch.round };
    rows.set(stitch.id, joined ?? stitch);
  }
  return { stitches: [...rows.values()], marks: all.flatMap(({ marks }) => marks) };
}
