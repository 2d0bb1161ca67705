import { describe, expect, it } from 'vitest';
import { drawMade, makeUp, resolveProject } from '../../../src/core/index.ts';
import type { Scene } from '../../../src/core/index.ts';
import { content, demoPattern, projectNamed } from '../handout/documents.ts';
import { paths, pathNamed, stops, texts } from './read.ts';

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
