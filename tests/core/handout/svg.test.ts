import { describe, expect, it } from 'vitest';
import { bounds, isPleated, pieceSvg } from '../../../src/core/index.ts';
import { demoPattern } from './documents.ts';

const group = (svg: string, id: string) => new RegExp(`<g id="${id}"[^>]*>\\s*<path d="([^"]+)"`).exec(svg)?.[1];

/** All numbers of a path of straight lines and curves, as points; H and V keep the pen's other number. */
const points = (path: string) => {
  let pen = { x: 0, y: 0 };
  return [...path.matchAll(/([MLCHV])([^MLCHVZ]+)/g)].flatMap(([, letter, numbers = '']) => {
    const all = numbers.trim().split(' ').map(Number);
    const named =
      letter === 'H'
        ? [{ ...pen, x: all[0]! }]
        : letter === 'V'
          ? [{ ...pen, y: all[0]! }]
          : all.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: all[i + 1]! }] : []));
    pen = named.at(-1) ?? pen;
    return named;
  });
};

describe.each(['inch', 'metric'] as const)('outlines for a cutting machine, %s edition', (edition) => {
  const pieces = Object.values(demoPattern(edition).pieces);

  it('have a unit of the picture for each millimetre', () => {
    for (const piece of pieces) {
      const [, width, height, across, down] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/
        .exec(pieceSvg(piece))!
        .map(Number);
      expect([across, down]).toEqual([width, height]);
      const { width: cutWidth, height: cutHeight } = bounds(piece.cutOutline);
      expect(width).toBeCloseTo(cutWidth + 2, 2);
      expect(height).toBeCloseTo(cutHeight + 2, 2);
    }
  });

  it('hold the cut line at its size', () => {
    for (const piece of pieces) {
      const cut = points(group(pieceSvg(piece), 'cut')!);
      const [xs, ys] = [cut.map(({ x }) => x), cut.map(({ y }) => y)];
      expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(bounds(piece.cutOutline).width, 1);
      expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(bounds(piece.cutOutline).height, 1);
    }
  });

  it('have a group for each kind of line that the piece has, and none for others', () => {
    for (const piece of pieces) {
      const svg = pieceSvg(piece);
      const kinds = [...svg.matchAll(/<g id="([a-z ]+)"/g)].map(([, id]) => id);
      expect(new Set(kinds).size).toBe(kinds.length);
      expect(kinds.includes('valley')).toBe(isPleated(piece));
      expect(kinds.includes('mountain')).toBe(isPleated(piece));
      expect(kinds.includes('notch')).toBe(piece.notches.length > 0);
    }
  });

  it('are well-formed where a name holds signs of XML', () => {
    const svg = pieceSvg({ ...pieces[0]!, label: 'Front & <back>' });
    expect(svg).toContain('<title>Front &amp; &lt;back&gt;</title>');
  });
});
