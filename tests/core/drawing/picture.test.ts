import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { drawMade, drawStep, makeUp, rectangle, resolveProject } from '../../../src/core/index.ts';
import { boxCorner, sewRound, size, topstitch, turn } from '../../../src/core/cloth/index.ts';
import { heightWithMouth } from '../../../src/core/drawing/mouth.ts';
import { hemOpening } from '../../../src/core/cloth/hem.ts';
import { openingNamed } from '../../../src/core/cloth/openings.ts';
import { standing } from '../../../src/core/drawing/standing.ts';
import { classMaterials, classProject } from '../project/files.ts';
import { materials, named } from './works.ts';
import { piece, value } from '../cloth/works.ts';
import { runs } from '../../random.ts';
import type { Work } from '../../../src/core/cloth/index.ts';
import type { Scene, VerbName } from '../../../src/core/index.ts';
import { content, demoPattern, projectNamed } from '../handout/documents.ts';
import { areaOf, boxOf, faults, paths, pathNamed, stops, texts } from './read.ts';

/** One snap is drawn as so many rings. */
const ringsOfOne = 2;
const fit = { width: 110, height: 90 };
const made = (id: string): Scene => {
  const pattern = resolveProject(projectNamed(id), { edition: 'metric', materials: content.materials.value ?? {} });
  return drawMade(makeUp(pattern), { ...pattern, fit })!;
};
const sizeOf = (scene: Scene, name: string) => {
  const points = stops(pathNamed(scene, name));
  const span = (values: number[]) => (Math.max(...values) - Math.min(...values)) / scene.scale;
  return [span(points.map(({ x }) => x)), span(points.map(({ y }) => y))].map((mm) => Math.round(mm));
};

describe('the picture of what is made', () => {
  it('shows every work that no later step takes, to one scale', () => {
    const scene = made('table-set');
    expect(sizeOf(scene, 'napkin fold edge')).toEqual([400, 400]);
    expect(sizeOf(scene, 'runner fold edge')).toEqual([350, 1050]);
    expect(scene.height).toBeCloseTo(fit.height, 6);
    expect(scene.width).toBeLessThanOrEqual(fit.width);
  });

  it('shows what is in front, without lettering: of the snap, the half on the flap', () => {
    const scene = made('swatch-folio');
    expect(texts(scene)).toEqual([]);
    expect(paths(scene).filter(({ role }) => role === 'hidden')).toEqual([]);
    const rings = pathNamed(scene, 'folio hardware').filter(([letter]) => letter === 'M').length;
    const alone = paths(scene).filter(({ role }) => role === 'hardware');
    expect([alone.length, rings]).toEqual([1, ringsOfOne]);
    expect(scene.text.join(' ')).toContain('111 millimetres');
  });

  it('is nothing where nothing is made', () => {
    expect(drawMade([], { ...demoPattern('metric'), fit })).toBeUndefined();
  });
});

describe('a bag on its boxed bottom', () => {
  const setting = { edition: 'metric', materials } as const;
  const bag = (width: number, height: number, square: number, open: boolean): Work => {
    const [front, back] = [piece('front', rectangle(width, height)), piece('back', rectangle(width, height), 'lining')];
    const sewn = value(sewRound(front, back, { allowance: 6, ...(open && { open: ['top'] }) }));
    const boxed = (work: Work, corner: 'bottom left' | 'bottom right') =>
      value(boxCorner(work, { corner, square, allowance: 6 }));
    return boxed(boxed(sewn, 'bottom left'), 'bottom right');
  };
  const pathsOf = (work: Work) =>
    standing(work, setting)!
      .shapes('bag', (p) => p)
      .flatMap((shape) => (shape.kind === 'path' ? [shape] : []));
  const areaIn = (work: Work, name: string) =>
    areaOf(pathsOf(work).find((shape) => shape.name === `bag ${name}`)!.path);

  it('has a front as wide and as high as the work stands, and a side as deep, to scale', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 120, max: 400 }),
        fc.integer({ min: 120, max: 400 }),
        fc.integer({ min: 5, max: 50 }),
        (w, h, q) => {
          const work = bag(w, h, q, true);
          const { width, height, depth } = size(work);
          // Between the seams, less the squares: published sums of boxed corners are held in tests/reference.
          expect([width, height, depth]).toEqual([w - 12 - 2 * q, h - 6 - q, 2 * q].map((mm) => expect.closeTo(mm, 6)));
          expect(areaIn(work, 'front lining, wrong side')).toBeCloseTo(width * height, 3);
          // A parallelogram keeps the area of its upright side and the way that depth runs aside.
          const { width: across, height: tall } = standing(work, setting)!;
          expect(areaIn(work, 'side')).toBeCloseTo(height * (across - width), 3);
          expect(areaIn(work, 'inside')).toBeCloseTo(width * (tall - height), 3);
        },
      ),
      runs(40),
    );
  });

  it('rises to its seam where it is closed, and is as wide there as it lies flat', () => {
    const work = bag(200, 150, 30, false);
    const { width, height } = size(work);
    const wide = 200 - 12;
    // A trapezium from the base to the top, which lies half the depth further back and is drawn so much higher.
    const tall = height + (0.3 * 60) / 2;
    expect(areaIn(work, 'front lining, wrong side')).toBeCloseTo(((width + wide) / 2) * tall, 3);
    expect(pathsOf(work).map(({ name }) => name)).not.toContain('bag inside');
  });

  it('is drawn only where the work stands: not flat, nor boxed at one corner', () => {
    const [front, back] = [piece('front', rectangle(120, 90)), piece('back', rectangle(120, 90))];
    const flat = value(sewRound(front, back, { allowance: 6, open: ['top'] }));
    expect(standing(flat, setting)).toBeUndefined();
    const one = value(boxCorner(flat, { corner: 'bottom left', square: 20, allowance: 6 }));
    expect(standing(one, setting)).toBeUndefined();
  });

  it('has its handles at the wall in front and at that behind, and shows its lining inside', () => {
    const pattern = resolveProject(classProject('lined-tote')(), { edition: 'inch', materials: classMaterials() });
    const scene = drawMade(makeUp(pattern), { ...pattern, fit })!;
    const roleOf = (name: string) => pathNamed(scene, name) && paths(scene).find((shape) => shape.name === name)!.role;
    expect(roleOf('bag inside')).toBe('lining');
    expect(roleOf('bag side')).toBe('right side');
    const left = (of: string) =>
      Math.min(
        ...paths(scene)
          .filter(({ name }) => name.startsWith(`bag ${of} handle`))
          .flatMap(({ name }) => stops(pathNamed(scene, name)).map(({ x }) => x)),
      );
    const { depth } = { depth: 3 * 25.4 };
    expect((left('back') - left('front')) / scene.scale).toBeCloseTo(0.42 * depth, 3);
  });
});

describe('the mouth of an open work', () => {
  const open = (): Work => {
    const [front, back] = [piece('front', rectangle(120, 90)), piece('back', rectangle(120, 90), 'lining')];
    return value(sewRound(front, back, { allowance: 6, open: ['top'] }));
  };
  const drawn = (verb: VerbName, before: Record<string, Work>, after: Work) =>
    drawStep(named('Do it', verb, before, after), { edition: 'metric', materials });

  it('gapes over the work, and shows the face of the lower wall that is up', () => {
    const bag = open();
    const turned = value(turn(bag));
    const scene = drawn('turn', { bag }, turned);
    const [inside, body] = ['mouth inside', 'after right side'].map((name) => boxOf(stops(pathNamed(scene, name))));
    const roleOf = (name: string) => paths(scene).find((shape) => shape.name === name)?.role;
    expect(roleOf('mouth before 1 inside')).toBe('right side');
    expect(roleOf('mouth inside')).toBe('lining, wrong side');
    expect(inside!.width).toBeCloseTo(body!.width, 1);
    expect(inside!.y + inside!.height).toBeCloseTo(body!.y, 1);
    expect(faults(scene)).toEqual([]);
  });

  it('shows a row that goes round it on the lip behind too, and no other', () => {
    const bag = value(turn(open()));
    const opening = value(openingNamed(bag));
    const hemmed = value(hemOpening(bag, opening, { turn: 10 }));
    const names = (scene: Scene) => paths(scene).map(({ name }) => name);
    expect(names(drawn('hem', { bag }, hemmed))).toContain('mouth row 1');
    const across = value(topstitch(bag, { edge: 'bottom', inside: 3 }));
    expect(names(drawn('topstitch', { bag }, across))).not.toContain('mouth row 1');
  });

  it('is shown as it gaped where two are sewn together round it, with the row on both lips', () => {
    const pattern = resolveProject(classProject('lined-tote')(), { edition: 'inch', materials: classMaterials() });
    const step = makeUp(pattern).find(({ verb }) => verb === 'join openings')!;
    const scene = drawStep(step, pattern);
    expect(paths(scene).map(({ name }) => name)).toContain('mouth row 1');
    expect(faults(scene)).toEqual([]);
  });

  it('is closed by a zip, and there is none where the work is sewn all round', () => {
    expect(paths(made('notions-pouch')).filter(({ name }) => name.includes('mouth'))).toEqual([]);
    const [front, back] = [piece('front', rectangle(120, 90)), piece('back', rectangle(120, 90))];
    const shut = value(sewRound(front, back, { allowance: 6 }));
    expect(heightWithMouth(shut, 'front', { edition: 'metric' })).toBe(90);
    expect(heightWithMouth(open(), 'front', { edition: 'metric', materials })).toBeCloseTo(90 + 0.09 * 108, 6);
  });
});
