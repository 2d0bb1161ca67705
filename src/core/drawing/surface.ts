import type { Pattern, Piece } from '../project/pattern.ts';
import { pens } from './pens.ts';
import type { ShapeRole } from './scene.ts';
import type { DrawingSetting } from './sheet.ts';

/** What the drawings of pieces need to know. A Pattern's own `edition`, `grid`, `materials` and `pieces` will do. */
export type PieceSetting = DrawingSetting & { materials?: Pattern['materials']; pieces?: Pattern['pieces'] };

/** The looks of cloths that are neither lining nor leather, in the order of a project's materials. */
const cloths = ['right side', 'second cloth', 'third cloth'] as const;

type Materials = Pattern['materials'];

const isPlainCloth = ({ material, lining }: Materials[string]): boolean =>
  material?.kind === 'cloth' && !lining && material.holes !== 'stay';

/**
 * What shows of a piece that lies right side up, by its material alone: each cloth of a project has its own look, in
 * drawings, layouts, templates and on paper. From the third cloth on all look alike.
 */
export function surfaceOf({ material }: Pick<Piece, 'material'>, materials: Materials = {}): ShapeRole {
  const role = materials[material];
  const kind = role?.material?.kind;
  if (kind === 'interfacing' || kind === 'batting') return kind;
  if (kind === 'by length' || kind === 'hardware') return 'tape';
  if (role?.lining) return 'lining';
  if (role?.material?.holes === 'stay') return 'leather';
  const before = Object.values(materials)
    .filter(isPlainCloth)
    .findIndex((one) => one === role);
  return cloths[Math.min(Math.max(before, 0), cloths.length - 1)]!;
}

/** What the other face of a surface looks like. Interfacing, batting and tape look the same on both sides. */
export function wrongSideOf(surface: ShapeRole): ShapeRole {
  if (surface === 'right side') return 'wrong side';
  const wrong = `${surface}, wrong side`;
  return wrong in pens ? (wrong as ShapeRole) : surface;
}

/** Whether a surface has no right and no wrong side that anybody minds. */
export const hasNoSides = (surface: ShapeRole): boolean => surface === 'interfacing' || surface === 'batting';

/** Surfaces whose motif shows which way is up. */
export const isDirectional = (surface: ShapeRole): boolean => (cloths as readonly ShapeRole[]).includes(surface);

/** The legend's words for the cloths of a project, by their own labels, where there are several to be told apart. */
export function clothWords(materials: Materials = {}): Partial<Record<ShapeRole, string>> {
  const plain = Object.entries(materials).filter(([, role]) => isPlainCloth(role));
  if (plain.length < 2) return {};
  return Object.fromEntries(
    plain.slice(0, cloths.length).flatMap(([name, { label }], i) => {
      const surface = surfaceOf({ material: name }, materials);
      const called = i === cloths.length - 1 && plain.length > cloths.length ? 'other cloths' : label;
      return [
        [surface, `${called}, right side`],
        [wrongSideOf(surface), `${called}, wrong side`],
      ];
    }),
  );
}
