/** Drawings are to scale: what is measured on the sheet, over the scale, is what was drawn. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { drawPiece, drawPleatedFront, drawPleatSection, drawStrip, rectangle } from '../../../src/core/index.ts';
import { runs } from '../../random.ts';
import { anyEdition, anyPiece, anyStrip, anyWidth, fivePockets, heldIn, pieceOf, stripOf } from './pieces.ts';
import { boxOf, pathNamed, paths, segments, stops, textNamed, texts } from './read.ts';

const anySetting = fc.record({ edition: anyEdition, fit: fc.record({ width: anyWidth }) });

describe('a piece', () => {
  it('has its cut line and its stitch line at one scale, the stitch line inside by the allowances', () => {
    fc.assert(
      fc.property(anyPiece, anySetting, (piece, setting) => {
        const scene = drawPiece(piece, setting);
        const cut = boxOf(segments(pathNamed(scene, 'cut line')).flat());
        expect(cut.width / scene.scale).toBeCloseTo(piece.size.width, 6);
        expect(cut.height / scene.scale).toBeCloseTo(piece.size.height, 6);
        const stitch = paths(scene).find(({ name }) => name === 'stitch line');
        if (!stitch) return;
        const sewn = boxOf(segments(stitch.path).flat());
        const { left = 0, top = 0 } = piece.allowance;
        expect((sewn.x - cut.x) / scene.scale).toBeCloseTo(left, 6);
        expect((sewn.y - cut.y) / scene.scale).toBeCloseTo(top, 6);
        expect(sewn.width / scene.scale).toBeCloseTo(piece.sewn.width, 6);
      }),
      runs(300),
    );
  });

  it('has its fold lines where they belong', () => {
    fc.assert(
      fc.property(anyPiece, anySetting, (piece, setting) => {
        const scene = drawPiece(piece, setting);
        const cut = boxOf(segments(pathNamed(scene, 'cut line')).flat());
        for (const kind of ['valley', 'mountain'] as const) {
          const wanted = piece.folds.filter((fold) => fold.kind === kind);
          if (wanted.length === 0) continue;
          const drawn = segments(pathNamed(scene, `${kind} folds`));
          wanted.forEach(({ edge, at }, i) => {
            const [from] = drawn[i]!;
            const far = {
              left: from.x - cut.x,
              right: cut.x + cut.width - from.x,
              top: from.y - cut.y,
              bottom: cut.y + cut.height - from.y,
            }[edge];
            expect(far / scene.scale).toBeCloseTo(at, 6);
          });
        }
      }),
      runs(200),
    );
  });

  it('writes its sizes in the edition, each chain adding up to the cut size', () => {
    // By hand: 111 + 2 × 6 = 123 across; 163 + 6 + 10 = 179 up.
    const piece = pieceOf(rectangle(111, 163), { bottom: 6, right: 6, top: 10, left: 6 });
    const scene = drawPiece(piece, { edition: 'metric' });
    expect(textNamed(scene, 'cut width 1')).toBe('123\u202fmm');
    expect(['width 1', 'width 2', 'width 3'].map((name) => textNamed(scene, name))).toEqual([
      '6\u202fmm',
      '111\u202fmm',
      '6\u202fmm',
    ]);
    expect(textNamed(scene, 'cut height 1')).toBe('179\u202fmm');
    expect(['height 1', 'height 2', 'height 3'].map((name) => textNamed(scene, name))).toEqual([
      '6\u202fmm',
      '163\u202fmm',
      '10\u202fmm',
    ]);
    const inches = pieceOf(rectangle(4.5 * 25.4, 6.375 * 25.4), { bottom: 6.35, right: 6.35, top: 6.35, left: 6.35 });
    expect(textNamed(drawPiece(inches, { edition: 'inch' }), 'cut height 1')).toBe('6⅞\u202fin');
  });

  it('leaves the stitch line out where there is no allowance', () => {
    const scene = drawPiece(pieceOf(rectangle(111, 163), {}), { edition: 'metric' });
    expect(paths(scene).map(({ name }) => name)).not.toContain('stitch line');
    expect(texts(scene).map(({ name }) => name)).not.toContain('width 1');
  });

  it('points the grain along the height, across, or at 45 degrees', () => {
    const way = (grain: 'lengthwise' | 'crosswise' | 'bias') => {
      const scene = drawPiece(pieceOf(rectangle(80, 80), {}, { grain }), { edition: 'metric' });
      const [[from, to]] = segments(pathNamed(scene, 'grain')) as [
        [{ x: number; y: number }, { x: number; y: number }],
      ];
      return (Math.atan2(from.y - to.y, to.x - from.x) * 180) / Math.PI;
    };
    expect(Math.abs(way('lengthwise'))).toBeCloseTo(90, 9);
    expect(way('crosswise')).toBeCloseTo(0, 9);
    expect(way('bias')).toBeCloseTo(45, 9);
    const free = drawPiece(pieceOf(rectangle(80, 80), {}, { grain: 'any' }), { edition: 'metric' });
    expect(paths(free).map(({ role }) => role)).not.toContain('grain');
  });

  it('is covered with the motif of its material', () => {
    const surface = (material: string, kind?: 'interfacing' | 'cloth', lining?: true) => {
      const materials = kind && {
        [material]: {
          role: material,
          label: material,
          use: material,
          ...(lining && { lining }),
          material: { name: material, label: material, kind, nap: 'none' as const },
        },
      };
      const piece = pieceOf(rectangle(80, 80), {}, { material });
      return paths(drawPiece(piece, { edition: 'metric', ...(materials && { materials }) }))[0]!.role;
    };
    expect(surface('outer')).toBe('right side');
    // Not by its name: a cloth that is called lining may be the outside of something.
    expect(surface('lining', 'cloth')).toBe('right side');
    expect(surface('lawn', 'cloth', true)).toBe('lining');
    expect(surface('stiff', 'interfacing')).toBe('interfacing');
  });
});

describe('the scale bar', () => {
  it('measures what it says', () => {
    fc.assert(
      fc.property(anyPiece, anySetting, (piece, setting) => {
        const scene = drawPiece(piece, setting);
        const drawn = boxOf(stops(pathNamed(scene, 'scale bar'))).width / scene.scale;
        const [number = '', unit] = textNamed(scene, 'scale bar text').split('\u202f');
        const fractions: Record<string, number> = { '½': 0.5, '¼': 0.25, '⅛': 0.125 };
        const said = (fractions[number] ?? Number(number)) * (unit === 'in' ? 25.4 : 1);
        expect(drawn).toBeCloseTo(said, 6);
        expect(drawn * scene.scale).toBeLessThanOrEqual(0.36 * scene.width + 1e-9);
      }),
      runs(300),
    );
  });
});

describe('a strip', () => {
  it('has its fold lines at the distances of the plan', () => {
    const strip = fivePockets();
    const scene = drawStrip(strip, { edition: 'metric' });
    const cut = boxOf(segments(pathNamed(scene, 'cut line')).flat());
    const heights = (name: string) =>
      segments(pathNamed(scene, name)).map(([{ y }]) => Math.round((cut.y + cut.height - y) / scene.scale));
    // By hand: up to 86, down 70, up 90, and so on.
    expect(heights('mountain folds')).toEqual([86, 246, 406, 566, 726]);
    expect(heights('valley folds')).toEqual([156, 316, 476, 636, 796]);
    expect(textNamed(scene, 'fold 1')).toBe('86\u202fmm');
    expect(textNamed(scene, 'fold 10')).toBe('796\u202fmm');
    expect(['stretch 1', 'stretch 2', 'stretch 3'].map((name) => textNamed(scene, name))).toEqual([
      '86\u202fmm',
      '70\u202fmm',
      '90\u202fmm',
    ]);
  });

  it('sets each label beside the line it speaks of, as long as there is room', () => {
    const scene = drawStrip(fivePockets(), { edition: 'metric' });
    const cut = boxOf(segments(pathNamed(scene, 'cut line')).flat());
    const labels = texts(scene).filter(({ name }) => /^fold \d+$/.test(name));
    expect(labels).toHaveLength(10);
    for (const { y, size, text } of labels) {
      // Figures stand 0.73 of the type size high, so that their middle is about 0.36 above the baseline.
      const height = (cut.y + cut.height - (y - 0.36 * size)) / scene.scale;
      expect(height).toBeCloseTo(parseInt(text), 3);
    }
  });

  it('counts from the top edge where the plan is marked from there', () => {
    const wish = { pockets: 5, depth: 70, step: 20, lift: 10, head: 30, allowance: { bottom: 6, top: 6 } };
    const scene = drawStrip(stripOf(117, { ...wish, from: 'top' }), { edition: 'metric' });
    // By hand: the strip is 896 long, so that what is 86 from the bottom is 810 from the top.
    expect(textNamed(scene, 'fold 1')).toBe('810\u202fmm');
    expect(textNamed(scene, 'line 1.1')).toBe('Right side up. Fold lines from the top edge.');
    expect(scene.text[1]).toContain('810 millimetres from the top edge, 86 millimetres from the bottom edge');
  });

  it('marks the fold that was made last', () => {
    const scene = drawStrip(fivePockets(), { edition: 'metric', folds: 3 });
    const marked = scene.shapes.filter(({ now }) => now).map(({ name }) => name);
    expect(marked).toEqual(['fold now', 'fold 3 number', 'fold 3', 'legend now']);
  });
});

describe('a folded strip from the front', () => {
  it('shows the pockets at their heights, and steps that add up to the panel', () => {
    const scene = drawPleatedFront(fivePockets(), { edition: 'metric' });
    const raw = boxOf(stops(pathNamed(scene, 'raw edges')));
    // By hand: 6 + 10 + 70 + 4 × 20 + 30 = 196 high; tops at 86, 106, 126, 146 and 166.
    expect(raw.height / scene.scale).toBeCloseTo(196, 6);
    expect(raw.width / scene.scale).toBeCloseTo(129, 6);
    const tops = segments(pathNamed(scene, 'folded edges')).map(([{ y }]) =>
      Math.round((raw.y + raw.height - y) / scene.scale),
    );
    expect(tops).toEqual([86, 106, 126, 146, 166]);
    const steps = texts(scene).filter(({ name }) => name.startsWith('step '));
    expect(steps.map(({ text }) => parseInt(text))).toEqual([30, 20, 20, 20, 20, 80, 6]);
  });

  it('shows of a card what stands out of its pocket, before the pockets behind', () => {
    // By hand: pocket 2 has its bottom at 36 and its top at 106, so that a card 85 high stands out to 121.
    const scene = drawPleatedFront(fivePockets(), { edition: 'metric', held: heldIn(2, 54, 85) });
    const raw = boxOf(stops(pathNamed(scene, 'raw edges')));
    const card = boxOf(stops(pathNamed(scene, 'held')));
    const height = (y: number) => (raw.y + raw.height - y) / scene.scale;
    expect(card.width / scene.scale).toBeCloseTo(54, 6);
    expect(height(card.y + card.height)).toBeCloseTo(106, 6);
    expect(height(card.y)).toBeCloseTo(121, 6);
    // Pocket 3's top edge, at 126, is hidden by a card of 100 only: it is drawn on both sides of it.
    const tall = drawPleatedFront(fivePockets(), { edition: 'metric', held: heldIn(2, 54, 100) });
    expect(segments(pathNamed(scene, 'folded edges'))).toHaveLength(5);
    expect(segments(pathNamed(tall, 'folded edges'))).toHaveLength(6);
  });

  it('makes room above the panel for what stands out of it', () => {
    const scene = drawPleatedFront(fivePockets(), { edition: 'metric', held: heldIn(5, 54, 200) });
    const raw = boxOf(stops(pathNamed(scene, 'raw edges')));
    const card = boxOf(stops(pathNamed(scene, 'held')));
    // Bottom of pocket 5 at 96, the card's top at 296: 100 above the panel's own top.
    expect((raw.y - card.y) / scene.scale).toBeCloseTo(100, 6);
  });

  it('is all right side when it is finished', () => {
    fc.assert(
      fc.property(anyStrip, anySetting, (strip, setting) => {
        const roles = paths(drawPleatedFront(strip, setting)).map(({ role }) => role);
        expect(roles).not.toContain('wrong side');
        expect(roles).not.toContain('trimmed');
      }),
      runs(100),
    );
  });
});

describe('a section', () => {
  it('meets as many layers at every height as the plan says', () => {
    fc.assert(
      fc.property(anyStrip, anySetting, (strip, setting) => {
        const scene = drawPleatSection(strip, setting);
        const face = segments(pathNamed(scene, 'face'));
        const cloth = boxOf(segments(pathNamed(scene, 'cloth')).flat());
        const { pleats } = strip;
        const levels = [...new Set(pleats.runs.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
        levels.slice(1).forEach((high, i) => {
          const height = (levels[i]! + high) / 2;
          // Close to a fold the round of the turn is met before or after it.
          const clear = Math.min(...pleats.folds.map((fold) => Math.abs(fold.height - height)));
          const y = cloth.y + cloth.height - height * scene.scale;
          const turn = Math.max(...pleats.pockets.map(({ depth }) => depth)) / 4;
          if (clear <= turn) return;
          const met = face.filter(([a, b]) => a.y > y !== b.y > y).length;
          expect(met).toBe(pleats.layersAt(height));
        });
      }),
      runs(200),
    );
  });

  it('says how many times too thick its layers are, and draws them so', () => {
    const scene = drawPleatSection(fivePockets(), { edition: 'metric', thickness: 0.4 });
    const factor = Number(/× (\d+)/.exec(textNamed(scene, 'note 1.1'))?.[1]);
    // The strip begins with a straight run, so that its first corner and its last are a layer apart.
    const cloth = stops(pathNamed(scene, 'cloth'));
    const drawn = Math.abs(cloth[0]!.x - cloth.at(-1)!.x) / scene.scale;
    expect(drawn).toBeCloseTo(0.4 * factor, 6);
    expect(factor).toBeGreaterThan(1);
  });
});
