/** Works to draw: any that folding makes, with rows of stitches, and steps of each kind. */
import fc from 'fast-check';
import { baste, fold, fuse, hem, join, lay, pleat, sewRound, topstitch, turn } from '../../../src/core/cloth/index.ts';
import { rectangle } from '../../../src/core/index.ts';
import { foldedWork, line, piece, value, wholeFold } from '../cloth/works.ts';
import { anyEdition, anyGrid, anyWidth } from './pieces.ts';
import type { Sewn, Work } from '../../../src/core/cloth/index.ts';
import type { Pattern, StepDrawn, WorkSetting } from '../../../src/core/index.ts';

const role = (name: string, kind: 'cloth' | 'interfacing', thickness: number): Pattern['materials'][string] => ({
  role: name,
  label: name,
  use: name,
  material: { name, label: name, kind, nap: 'none', thickness },
});

/** What the works here are made of. */
export const materials: Pattern['materials'] = {
  linen: role('linen', 'cloth', 0.4),
  lining: { ...role('lining', 'cloth', 0.2), lining: true },
  stay: role('stay', 'interfacing', 0.3),
};

export const anySetting: fc.Arbitrary<WorkSetting> = fc
  .record({ edition: anyEdition, grid: anyGrid, width: anyWidth })
  .map(({ width, ...rest }) => ({ ...rest, materials, fit: { width } }));

const sewnIf = (work: Work, how: (work: Work) => Sewn): Work => {
  const sewn = how(work);
  return sewn.ok ? sewn.value : work;
};

/** Cloth folded up to four times, perhaps with interfacing, and with rows along any lines. */
export const anyWork: fc.Arbitrary<Work> = fc
  .record({ work: foldedWork(4), rows: fc.array(line, { maxLength: 2 }), stay: fc.boolean() })
  .map(({ work, rows, stay }) => {
    const stiff = stay ? sewnIf(work, (cloth) => fuse(cloth, piece('stay', rectangle(15, 15), 'stay'))) : work;
    return rows.reduce((now, one, i) => sewnIf(now, (it) => (i === 0 ? topstitch : baste)(it, { line: one })), stiff);
  });

const named = (title: string, verb: StepDrawn['verb'], before: Record<string, Work>, after: Work): StepDrawn => {
  const old = new Set(Object.values(before).length === 1 ? Object.values(before)[0]!.stitches.map(({ id }) => id) : []);
  const stitches = after.stitches.filter(({ id }) => !old.has(id));
  return { title, verb, before, after, makes: 'result', takes: Object.keys(before), stitches };
};

/** One fold of any work. */
export const anyFoldStep: fc.Arbitrary<StepDrawn> = fc
  .tuple(foldedWork(2), wholeFold)
  .map(([work, how]) => ({ work, folded: fold(work, how) }))
  .filter(({ folded }) => folded.ok)
  .map(({ work, folded }) => named('Fold the cloth', 'fold', { cloth: work }, value(folded)));

const mm = (min: number, max: number) => fc.integer({ min, max });

/** A step of each kind on rectangles of any size. */
export const anyStep: fc.Arbitrary<StepDrawn> = fc
  .record({
    width: mm(60, 600),
    height: mm(60, 600),
    other: mm(60, 600),
    seam: mm(3, 15),
    press: fc.constantFrom('open' as const, 'to first' as const, 'to second' as const),
    kind: fc.constantFrom('fuse', 'pleat', 'hem', 'join', 'lay', 'baste', 'sew round', 'turn', 'mitre'),
  })
  .map(({ width, height, other, seam, press, kind }) => {
    const cloth = piece('cover', rectangle(width, height));
    const second = piece('back of the cover', rectangle(width, other), 'lining');
    const pair = () => {
      const lining = piece('lining', rectangle(width, height), 'lining');
      return { lining, sewn: value(sewRound(cloth, lining, { allowance: seam, gap: { edge: 'bottom', length: 20 } })) };
    };
    switch (kind) {
      case 'fuse': {
        const stay = piece('cover interfacing', rectangle(width - 12, height - 12), 'stay');
        return named('Fuse the cover interfacing to the cover', 'fuse', { stay, cloth }, value(fuse(cloth, stay)));
      }
      case 'pleat': {
        const folds = [
          { at: height / 3, kind: 'mountain' as const },
          { at: height / 2, kind: 'valley' as const },
        ];
        return named('Fold the pleats', 'pleat', { cover: cloth }, value(pleat(cloth, { from: 'bottom', folds })));
      }
      case 'hem':
        return named(
          'Hem the cover',
          'hem',
          { cover: cloth },
          value(hem(cloth, { edges: ['bottom'], turn: 6, then: seam })),
        );
      case 'mitre': {
        const edges = ['bottom', 'right', 'top', 'left'];
        const after = value(hem(cloth, { edges, turn: 5, then: seam, corners: 'mitred' }));
        return named('Hem the cover all round', 'hem', { cover: cloth }, after);
      }
      case 'join': {
        const layers = [
          { work: cloth, edge: 'top' },
          { work: second, edge: 'top' },
        ];
        const after = value(join(layers, { allowance: seam, press }));
        return named('Join the cover and its back', 'join', { cover: cloth, back: second }, after);
      }
      case 'lay':
        return named('Lay the back on the cover', 'lay', { back: second, cover: cloth }, value(lay(cloth, second)));
      case 'baste':
        return named('Baste the cover', 'baste', { cover: cloth }, value(baste(cloth, { edge: 'left', inside: seam })));
      case 'sew round': {
        const { lining, sewn } = pair();
        return named('Sew the cover and the lining together', 'sew round', { cover: cloth, lining }, sewn);
      }
      default:
        return named('Turn the cover right side out', 'turn', { cover: pair().sewn }, value(turn(pair().sewn)));
    }
  });

export { named };
