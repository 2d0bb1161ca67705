/** Drawings of work in progress: what they show, held against readings of the cloth and sums by hand. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { drawExploded, drawLayerMap, drawStep, drawWorkSection, rectangle } from '../../../src/core/index.ts';
import {
  attach,
  boxCorner,
  flip,
  fold,
  edgesOn,
  fuse,
  gather,
  hem,
  join,
  lay,
  layerMap,
  layersAt,
  outlineNow,
  rotate,
  sewRound,
  size,
  thickest,
  topstitch,
  turn,
} from '../../../src/core/cloth/index.ts';
import { hemOpening } from '../../../src/core/cloth/hem.ts';
import { openingNamed } from '../../../src/core/cloth/openings.ts';
import { worksShown } from '../../../src/core/drawing/step.ts';
import { rowDistances } from '../../../src/core/drawing/row-distance.ts';
import { turnedBack } from '../../../src/core/drawing/turned-back.ts';
import { drawWork, lineAcross } from './draw-work.ts';
import { line as anyLine, piece, value } from '../cloth/works.ts';
import { runs } from '../../random.ts';
import { areaOf, boxOf, faults, lengthOf, pathNamed, paths, segments, textNamed, texts, unsaid } from './read.ts';
import { anyFoldStep, anySetting, anyStep, anyWork, materials, named } from './works.ts';
import type { Scene } from '../../../src/core/index.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

const metric = { edition: 'metric', materials } as const;
const sides = ['front', 'back'] as const;
const surfaces = new Set(['right side', 'wrong side', 'lining', 'lining, wrong side', 'interfacing']);

/** The surfaces of a drawing of one work, in mm² of cloth. */
const surfaceArea = (scene: Scene, of = 'work'): number =>
  paths(scene)
    .filter(({ name, role }) => surfaces.has(role) && name.startsWith(`${of} `))
    .reduce((sum, { path }) => sum + areaOf(path), 0) /
  scene.scale ** 2;

const outlineArea = (work: Work): number => outlineNow(work).reduce((sum, { area }) => sum + area, 0);

describe('drawings of any work', () => {
  it('can be read, in any room and edition', () => {
    fc.assert(
      fc.property(anyWork, anyLine, anySetting, (work, line, setting) => {
        for (const side of sides) expect(faults(drawWork(work, { ...setting, side }))).toEqual([]);
        expect(faults(drawExploded(work, setting))).toEqual([]);
        expect(faults(drawLayerMap(work, setting))).toEqual([]);
        expect(faults(drawWorkSection(work, line, setting))).toEqual([]);
      }),
      runs(250),
    );
  });

  it('say in words every length that they show', () => {
    fc.assert(
      fc.property(anyWork, anySetting, (work, setting) => {
        const { edition } = setting;
        const plain = { edition, materials };
        expect(unsaid(drawWork(work, plain), edition)).toEqual([]);
        expect(unsaid(drawLayerMap(work, plain), edition)).toEqual([]);
        expect(unsaid(drawWorkSection(work, lineAcross(outlineBox(work), 'level'), plain), edition)).toEqual([]);
      }),
      runs(150),
    );
  });
});

const outlineBox = (work: Work) => boxOf(work.plies.flatMap(({ outline }) => outline.map(({ from }) => from)));

describe('a work as it lies', () => {
  it('shows surfaces that do not overlap and together are its outline, from both sides', () => {
    fc.assert(
      fc.property(anyWork, anySetting, (work, setting) => {
        const all = outlineArea(work);
        for (const side of sides) {
          const shown = surfaceArea(drawWork(work, { ...setting, side }));
          expect(Math.abs(shown - all)).toBeLessThan(1e-3 * all + 0.5);
        }
      }),
      runs(150),
    );
  });

  it('tells the raw edges of a folded strip from its fold, with their lengths', () => {
    // 100 x 60, folded up by 20: the fold is 100 long; what is left raw and seen is 100 + 2 x 40 and the flap's 100,
    // its sides lying on the sides of the strip.
    const folded = value(
      fold(piece('strip', rectangle(100, 60)), { line: { at: { x: 0, y: 20 }, angle: 0 }, lands: 'over' }),
    );
    const scene = drawWork(folded, metric);
    expect(lengthOf(pathNamed(scene, 'work fold edge')) / scene.scale).toBeCloseTo(100, 6);
    expect(lengthOf(pathNamed(scene, 'work raw edge')) / scene.scale).toBeCloseTo(280, 6);
    expect(areaOf(pathNamed(scene, 'work wrong side')) / scene.scale ** 2).toBeCloseTo(2000, 6);
    // From the back only the wrong side is seen, 100 x 40, and the flap's edge is hidden.
    const back = drawWork(folded, { ...metric, side: 'back' });
    expect(areaOf(pathNamed(back, 'work wrong side')) / back.scale ** 2).toBeCloseTo(4000, 6);
    expect(lengthOf(pathNamed(back, 'work hidden')) / back.scale).toBeCloseTo(100, 6);
  });

  it('lets the motif run as the cloth lies', () => {
    const cloth = piece('cover', rectangle(80, 50));
    const turnOf = (work: Work, side: 'front' | 'back' = 'front') =>
      paths(drawWork(work, { ...metric, side })).find(
        ({ role, name }) => role === 'right side' && name.startsWith('work'),
      )?.turn ?? 0;
    expect(turnOf(cloth)).toBe(0);
    // Counter-clockwise on the table by 90 degrees is clockwise by 270.
    expect(turnOf(value(rotate(cloth, 90)))).toBe(270);
    expect(turnOf(value(rotate(cloth, 180)))).toBe(180);
    // Turned over like a page, and looked at from the back, it stands upright; like a pancake, on its head.
    expect(turnOf(value(flip(cloth)), 'back')).toBe(0);
    expect(turnOf(value(flip(cloth, 'level')), 'back')).toBe(180);
  });

  it('shows interfacing on the wrong side alone', () => {
    const stiff = value(fuse(piece('cover', rectangle(80, 50)), piece('stay', rectangle(68, 38), 'stay')));
    const names = (side: 'front' | 'back') => paths(drawWork(stiff, { ...metric, side })).map(({ name }) => name);
    expect(names('front')).not.toContain('work interfacing');
    expect(names('back')).toContain('work interfacing');
    const back = drawWork(stiff, { ...metric, side: 'back' });
    expect(areaOf(pathNamed(back, 'work interfacing')) / back.scale ** 2).toBeCloseTo(68 * 38, 6);
  });

  it('reads as sentences', () => {
    const hemmed = value(hem(piece('cloth', rectangle(100, 60)), { edges: ['bottom'], turn: 5, then: 10 }));
    expect(drawWork(hemmed, metric).text).toEqual([
      'Cloth.',
      'Seen from the front: cloth (right side).',
      'It lies 100 millimetres wide and 45 millimetres high.',
      'A row along a hem, 100 millimetres long, through at most 3 layers.',
    ]);
  });
});

describe('a step', () => {
  it('can be read, whatever is done, before and after together and at every moment of a play', () => {
    fc.assert(
      fc.property(fc.oneof(anyStep, anyFoldStep), anySetting, (step, setting) => {
        expect(faults(drawStep(step, setting))).toEqual([]);
        for (const at of [0, 0.2, 0.5, 0.9, 1]) expect(faults(drawStep(step, { ...setting, at }))).toEqual([]);
      }),
      runs(250),
    );
  });

  it('holds the sheet still while it is played', () => {
    fc.assert(
      fc.property(fc.oneof(anyStep, anyFoldStep), anySetting, (step, setting) => {
        const frames = [0, 0.1, 0.4, 0.5, 0.7, 1].map((at) => drawStep(step, { ...setting, at }));
        expect(new Set(frames.map(({ height }) => height.toFixed(6))).size).toBe(1);
        expect(new Set(frames.map(({ scale }) => scale.toFixed(9))).size).toBe(1);
      }),
      runs(150),
    );
  });

  it('says in words the lengths that it shows', () => {
    fc.assert(
      fc.property(anyStep, anySetting, (step, { edition }) => {
        expect(unsaid(drawStep(step, { edition, materials }), edition)).toEqual([]);
      }),
      runs(100),
    );
  });

  it('shows the whole of each work that it shows: those before and after, the seam as it was sewn, or one alone', () => {
    fc.assert(
      fc.property(anyStep, anySetting, (step, setting) => {
        const scene = drawStep(step, setting);
        const shown = worksShown(step, setting);
        for (const { name, work } of shown) {
          const all = outlineArea(work);
          expect(Math.abs(surfaceArea(scene, name) - all)).toBeLessThan(1e-3 * all + 0.5);
        }
        const names = shown.map(({ name }) => name).join(' ');
        const before = Object.keys(step.before).map((_, i) => `before ${i + 1}`);
        expect([[...before, 'after'].join(' '), 'sewn after', 'after', 'before 1']).toContain(names);
        if (shown.length === 1) expect(before).toHaveLength(1);
      }),
      runs(100),
    );
  });

  it('is one picture where it differs from before by what is sewn or set alone, and the work before is bare', () => {
    const cover = piece('cover', rectangle(100, 60));
    const sewn = value(topstitch(cover, { edge: 'top', inside: 3 }));
    const scene = drawStep(named('Topstitch the cover', 'topstitch', { cover }, sewn), metric);
    const names = paths(scene).map(({ name }) => name);
    expect(names.filter((name) => name.startsWith('before'))).toEqual([]);
    expect(names).toContain('after stitch now');
    expect(texts(scene).filter(({ name }) => name.startsWith('caption'))).toEqual([]);
  });

  it('folds back a corner of what was laid on the rest, so that its other face and what lies below are seen', () => {
    const [front, back] = [piece('front', rectangle(100, 60)), piece('back', rectangle(100, 60), 'lining')];
    const round = value(sewRound(front, back, { allowance: 6, open: ['top'] }));
    const scene = drawStep(named('Sew them round', 'sew round', { front, back }, round), metric);
    const area = (name: string) => areaOf(pathNamed(scene, name)) / scene.scale ** 2;
    // The corner takes 0.3 of the shorter side along either edge; its own face and what it lay on are seen beside it.
    const corner = (0.3 * 60) ** 2 / 2;
    expect(area('after lining, wrong side')).toBeCloseTo(6000 - 2 * corner, 3);
    expect(area('after lining')).toBeCloseTo(corner, 3);
    expect(area('after right side')).toBeCloseTo(corner, 3);
    // The row ends at the corner, as if it were still to be sewn there, and nothing else of it is left out.
    const rows = segments(pathNamed(scene, 'after stitch now'));
    const long = rows.reduce((sum, [a, b]) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0) / scene.scale;
    expect(long).toBeCloseTo(88 + 2 * 54 - (18 - 6), 3);
    expect(surfaceArea(scene, 'before 1')).toBeCloseTo(6000, 3);
  });

  it('folds back another corner where hardware sits, and none where all have some or nothing lies below', () => {
    const [panel, pocket] = [piece('panel', rectangle(100, 60)), piece('pocket', rectangle(80, 50), 'lining')];
    const laid = value(lay(panel, pocket));
    const upper = new Set(laid.plies.slice(1).map(({ id }) => id));
    const set = (work: Work, x: number, y: number) => value(attach(work, { name: 'snap', at: { x, y } }));
    const tip = (work: Work) => {
      const folded = turnedBack(work, upper, 'front');
      return folded === work ? undefined : boxOf(folded.plies.at(-1)!.outline.map(({ from }) => from));
    };
    // The pocket lies 10 mm inside the panel's left and right and 5 mm inside its top and bottom.
    expect(tip(laid)).toMatchObject({ x: 75, y: 40 });
    const one = set(laid, 85, 50);
    expect(tip(one)).toMatchObject({ x: 10, y: 40 });
    const all = set(set(set(one, 15, 50), 85, 10), 15, 10);
    expect(tip(all)).toBeUndefined();
    expect(turnedBack(laid, new Set(laid.plies.map(({ id }) => id)), 'front')).toBe(laid);
    // Seen from the back the panel lies on the pocket, which does not reach under its corners.
    const panelAlone = new Set([laid.plies[0]!.id]);
    expect(turnedBack(laid, panelAlone, 'back')).toBe(laid);
  });

  /** The heights of the level lines of a path above the lower edge of a work's surface, in mm of cloth. */
  function heightsOf(scene: Scene, name: string, surface: string): number[] {
    const { y, height } = boxOf(segments(pathNamed(scene, surface)).flat());
    return segments(pathNamed(scene, name))
      .map(([a]) => Math.round(((y + height - a.y) / scene.scale) * 1000) / 1000)
      .sort((a, b) => a - b);
  }

  it('draws the folds of a double hem where they will be: at 5 and at 5 + 10 from the raw edge', () => {
    const cloth = piece('cloth', rectangle(100, 60));
    const after = value(hem(cloth, { edges: ['bottom'], turn: 5, then: 10 }));
    const scene = drawStep(named('Hem the cloth', 'hem', { cloth }, after), metric);
    // A hem is turned to the wrong side and is drawn from there, where both folds are valleys.
    expect(textNamed(scene, 'line 1.1')).toBe('Seen from the back.');
    expect(heightsOf(scene, 'doing valley now', 'before 1 wrong side')).toEqual([5, 15]);
    expect(scene.text).toContain('Fold lines, as seen from the back: 2 valley.');
  });

  it('draws a seam as it was sewn, right sides together, an allowance inside the edges, and then opened', () => {
    const [a, b] = [piece('panel', rectangle(90, 40)), piece('facing', rectangle(90, 70), 'lining')];
    const layers = [
      { work: a, edge: 'top' },
      { work: b, edge: 'top' },
    ];
    const after = value(join(layers, { allowance: 6, press: 'open' }));
    const scene = drawStep(named('Join them', 'join', { panel: a, facing: b }, after), metric);
    const box = (name: string) => boxOf(segments(pathNamed(scene, name)).flat());
    const facing = box('sewn lining, wrong side');
    expect((box('sewn stitch now').y - facing.y) / scene.scale).toBeCloseTo(6, 6);
    expect(facing.height / scene.scale).toBeCloseTo(70, 6);
    expect(textNamed(scene, 'sewn row distance 1')).toContain('6');
    expect(texts(scene).find(({ name }) => name === 'caption 1.1')?.text).toBe('Sewn: panel and facing');
    // What is opened has nothing red: it would read as topstitching.
    expect(paths(scene).filter(({ name, now }) => name.startsWith('after') && now)).toEqual([]);
    // 40 + 70 - 2 x 6.
    expect(textNamed(scene, 'height 1')).toContain('98');
    expect(scene.text).toContain('Right sides together, seam allowance 6 millimetres.');
    expect(
      texts(scene)
        .map(({ text }) => text)
        .join(' '),
    ).toContain('Right sides together, seam allowance');
  });

  it('tells of the seam of its own step, not of those before it', () => {
    const half = (name: string) => {
      const [outside, lining] = [piece(name, rectangle(100, 60)), piece(`${name} lining`, rectangle(100, 60))];
      const layers = [
        { work: outside, edge: 'top' },
        { work: lining, edge: 'bottom' },
      ];
      return value(join(layers, { allowance: 4, press: 'open' }));
    };
    const [front, back] = [half('front'), half('back')];
    const round = value(sewRound(front, back, { allowance: 10, open: ['top'] }));
    const telling = (scene: Scene) => scene.text.filter((line) => line.includes('seam allowance'));
    expect(telling(drawStep(named('Sew them round', 'sew round', { front, back }, round), metric))).toEqual([
      'Right sides together, seam allowance 10 millimetres.',
    ]);
    const laid = value(lay(front, back));
    expect(telling(drawStep(named('Lay them', 'lay', { back, front }, laid), metric))).toEqual([]);
  });

  it('shows where corners are boxed and how large the bag then stands', () => {
    const [front, back] = [piece('front', rectangle(120, 100)), piece('back', rectangle(120, 100))];
    const bag = value(sewRound(front, back, { allowance: 6, open: ['top'] }));
    const corner = (work: Work, at: 'bottom left' | 'bottom right') =>
      value(boxCorner(work, { corner: at, square: 20, allowance: 6, leaving: 6 }));
    const after = corner(corner(bag, 'bottom left'), 'bottom right');
    const scene = drawStep(named('Box the corners', 'box corner', { bag }, after), metric);
    expect(faults(scene)).toEqual([]);
    expect(scene.text).toContain('Cloth is cut away along the marked lines.');
    // A square of 20 gives a depth of twice that. Between the seam lines 120 - 2 * (6 + 20) are left of the width and, the
    // top being open, 100 - (6 + 20) of the height: the allowances stand out beside it, and are no part of its size.
    expect(scene.text.at(-1)).toBe(
      'Standing, it is 68 millimetres wide, 74 millimetres high and 40 millimetres deep, from seam to seam.',
    );
    // Two corners, each cut along two sides on both layers, which lie on each other.
    expect(segments(pathNamed(scene, 'doing cut now'))).toHaveLength(4);
    // One of them opened: the row runs across, twice as long as the square, that far from its tip.
    const row = boxOf(segments(pathNamed(scene, 'corner row')).flat());
    const edges = boxOf(segments(pathNamed(scene, 'corner edges')).flat());
    expect(row.width / scene.scale).toBeCloseTo(40, 3);
    expect((row.y - edges.y) / scene.scale).toBeCloseTo(20, 3);
    // On the flat work the row would be sewn as it lies, through both walls.
    expect(paths(scene).some(({ name }) => name === 'doing stitch now' || name === 'after stitch now')).toBe(false);
  });

  it('marks hardware where it is set', () => {
    const cover = piece('cover', rectangle(100, 60));
    const after = value(attach(cover, { name: 'snap', at: { x: 50, y: 20 } }));
    const scene = drawStep(named('Set the snap on the cover', 'attach', { cover }, after), metric);
    const [ring, cloth] = ['hardware set', 'after right side'].map((name) =>
      boxOf(segments(pathNamed(scene, name)).flat()),
    );
    expect((ring!.x + ring!.width / 2 - cloth!.x) / scene.scale).toBeCloseTo(50, 1);
    expect((cloth!.y + cloth!.height - ring!.y - ring!.height / 2) / scene.scale).toBeCloseTo(20, 1);
    expect(scene.text).toContain('Set here: snap.');
  });

  it('foreshortens the cloth that folds, from its own side over the fold line', () => {
    const cloth = piece('cloth', rectangle(100, 60));
    const after = value(fold(cloth, { line: { at: { x: 0, y: 20 }, angle: 0 }, lands: 'over' }));
    const step = named('Fold the cloth', 'fold', { cloth }, after);
    const at = (share: number) => drawStep(step, { ...metric, at: share });
    // 20 mm of cloth at 60 degrees: half of it is seen, at first below the fold, later above it with its other face.
    const early = at(1 / 3);
    expect(surfaceArea(early, 'before 1')).toBeCloseTo(100 * (40 + 10), 3);
    const late = at(2 / 3);
    expect(areaOf(pathNamed(late, 'after wrong side')) / late.scale ** 2).toBeCloseTo(100 * 10, 3);
    expect(surfaceArea(late, 'after')).toBeCloseTo(100 * 40, 3);
    expect(surfaceArea(at(0), 'before 1')).toBeCloseTo(6000, 3);
    expect(areaOf(pathNamed(at(1), 'after wrong side')) / at(1).scale ** 2).toBeCloseTo(2000, 3);
  });
});

describe('a stack taken apart', () => {
  it('names each layer of a double hem with its face, from the bottom', () => {
    const hemmed = value(hem(piece('cloth', rectangle(100, 60)), { edges: ['bottom'], turn: 5, then: 10 }));
    expect(drawExploded(hemmed, metric).text).toEqual([
      'Cloth, taken apart: 3 layers, from the bottom to the top.',
      'Layer 1: cloth, wrong side up.',
      'Layer 2: cloth, right side up.',
      'Layer 3: cloth, right side up.',
    ]);
  });

  it('has as many layers as lie on each other at the thickest place', () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        const most = Math.max(...layerMap(work).map(({ plies }) => plies.length));
        expect(drawExploded(work, metric).text.length - 1).toBeGreaterThanOrEqual(Math.min(most, 12));
      }),
      runs(60),
    );
  });
});

describe('a layer map', () => {
  it('covers the work, and each number is the number of layers there', () => {
    fc.assert(
      fc.property(anyWork, anySetting, (work, setting) => {
        const scene = drawLayerMap(work, setting);
        const shown = paths(scene)
          .filter(({ name, role }) => name.startsWith('layers ') && role.startsWith('layers '))
          .reduce((sum, { path }) => sum + areaOf(path), 0);
        const all = outlineArea(work);
        expect(Math.abs(shown / scene.scale ** 2 - all)).toBeLessThan(1e-3 * all + 0.5);
        const rims = boxOf(segments(pathNamed(scene, 'layers leader')).flat());
        const cloth = outlineBox(work);
        for (const { text, x, y, size } of texts(scene).filter(({ name }) => name.startsWith('region'))) {
          const middle = y - 0.36 * size;
          const at = {
            x: cloth.x + (x - rims.x) / scene.scale,
            y: cloth.y + cloth.height - (middle - rims.y) / scene.scale,
          };
          expect(layersAt(work, at)).toHaveLength(Number(text));
        }
      }),
      runs(150),
    );
  });

  it('marks the thickest place and says how thick it is', () => {
    const hemmed = value(hem(piece('cloth', rectangle(100, 60)), { edges: ['bottom'], turn: 10, then: 10 }));
    const scene = drawLayerMap(hemmed, metric);
    // Three layers of 0.4 mm.
    expect(textNamed(scene, 'thickest')).toMatch(/^1\.2\s?mm$/u);
    expect(scene.text).toContain('The thickest place has 3 layers, 1.2 millimetres.');
    const other = drawLayerMap(hemmed, { ...metric, thickness: () => 1 });
    expect(other.text).toContain('The thickest place has 3 layers, 3 millimetres.');
    expect(thickest(layerMap(hemmed), () => 0.4)!.thickness).toBeCloseTo(1.2, 9);
  });
});

describe('a work cut through', () => {
  it('is as long as the cut, with as many layers as the cut goes through, drawn so many times as thick', () => {
    const hemmed = value(hem(piece('cloth', rectangle(100, 60)), { edges: ['bottom'], turn: 10, then: 10 }));
    const { height } = size(hemmed);
    const scene = drawWorkSection(hemmed, lineAcross(outlineBox(hemmed), 'upright'), metric);
    expect(height).toBeCloseTo(40, 9);
    expect(scene.text[1]).toBe('The cut is 40 millimetres long.');
    expect(scene.text[3]).toBe('At its thickest 3 layers lie on each other: 1.2 millimetres, pressed flat.');
    const factor = Number(/(\d+)/.exec(textNamed(scene, 'note 1.1'))![1]);
    expect(scene.text[2]).toBe(`Layers are drawn ${factor} times as thick as they are.`);
    const cloth = boxOf(segments(pathNamed(scene, 'section layer')).flat());
    expect(cloth.height / scene.scale).toBeCloseTo(1.2 * factor, 3);
  });
});

describe('rows that are hard to see', () => {
  it('is drawn once where it runs over itself on both walls', () => {
    const [front, back] = [piece('front', rectangle(120, 90)), piece('back', rectangle(120, 90))];
    const bag = value(turn(value(sewRound(front, back, { allowance: 6, open: ['top'] }))));
    const hemmed = value(hemOpening(bag, value(openingNamed(bag)), { turn: 10 }));
    const scene = drawStep(named('Hem the bag', 'hem', { bag }, hemmed), metric);
    // 108 mm of the wall in front; that behind lies under it.
    const long = segments(pathNamed(scene, 'after stitch now')).reduce(
      (sum, [a, b]) => sum + Math.hypot(b.x - a.x, b.y - a.y),
      0,
    );
    expect(long / scene.scale).toBeCloseTo(108, 1);
  });

  it('shows gathers as ripples, from the gathered edge into the cloth below', () => {
    const skirt = piece('skirt', rectangle(200, 120));
    const top = value(edgesOn(skirt, ['top']))[0]!;
    const gathered = value(gather(skirt, { edge: top, to: 100, depth: 20 }));
    const edges = (work: Work) => segments(pathNamed(drawWork(work, metric), 'work raw edge')).length;
    expect(edges(gathered) - edges(skirt)).toBeGreaterThan(10);
    expect(faults(drawWork(gathered, metric))).toEqual([]);
  });
});

describe('how far a row lies from its edge', () => {
  const rows = (work: Work) =>
    rowDistances(work, new Set(work.stitches.map(({ id }) => id))).map(
      ({ distance }) => Math.round(distance * 1e3) / 1e3,
    );
  const cloth = piece('cloth', rectangle(100, 60));

  it('is what it was sewn at, from the nearest edge that runs along it, each once', () => {
    expect(rows(value(topstitch(cloth, { edge: 'top', inside: 3 })))).toEqual([3]);
    const both = value(topstitch(value(topstitch(cloth, { edge: 'left', inside: 3 })), { edge: 'top', inside: 8 }));
    expect(rows(both)).toEqual([8, 3]);
    // Of a pocket on a panel, that of the pocket.
    const pocket = value(lay(cloth, piece('pocket', rectangle(40, 30))));
    expect(rows(value(topstitch(pocket, { line: { at: { x: 33, y: 0 }, angle: 90 } })))).toEqual([3]);
  });

  it('is not told of a row far from any edge, across all of them, or by hand', () => {
    const wide = piece('cloth', rectangle(300, 300));
    expect(rows(value(topstitch(wide, { line: { at: { x: 150, y: 0 }, angle: 90 } })))).toEqual([]);
    expect(rows(value(topstitch(wide, { line: { at: { x: 0, y: 0 }, angle: 45 } })))).toEqual([]);
  });

  it('stands on the drawing beside the row, away from the edge, and clear of every line', () => {
    const sewn = value(topstitch(cloth, { edge: 'top', inside: 6 }));
    const scene = drawStep(named('Topstitch the cloth', 'topstitch', { cloth }, sewn), metric);
    expect(textNamed(scene, 'row distance 1')).toContain('6');
    expect(faults(scene)).toEqual([]);
    const row = boxOf(segments(pathNamed(scene, 'after stitch now')).flat());
    expect(boxOf(segments(pathNamed(scene, 'row distance 1 plate')).flat()).y).toBeGreaterThan(row.y);
    expect(scene.text).toContain('Sewn 6 millimetres from the edge.');
  });
});
