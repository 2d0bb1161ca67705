import { bounds, sides, type Outline, type Piece } from '../../../src/core/index.ts';

/** An edge of a piece as a drawing has it: y downwards, in mm. */
export type DrawnEdge = { name: string; path: string };

/** A corner that is rounded or cut off goes with the edges it lies between. */
const isCorner = (name: string) => name.endsWith(' corner');

/** The edges one can point at: all but the corners. */
export const edgesOf = ({ outline }: Piece): string[] => [
  ...new Set(outline.map(({ name }) => name).filter((name) => !isCorner(name))),
];

/** Each side of an outline as an SVG path, and the box they lie in, with a margin all round. */
export function drawEdges(outline: Outline): { edges: DrawnEdge[]; box: string; unit: number } {
  const { x, y, width, height } = bounds(outline);
  const unit = Math.max(width, height) / 100;
  const edges = sides(outline).map(({ name, from, to, bulge }) => {
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    // The bulge is the tangent of a quarter of the arc's sweep.
    const radius = bulge === 0 ? 0 : (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    const place = (point: { x: number; y: number }) => `${point.x.toFixed(2)} ${(-point.y).toFixed(2)}`;
    const way = bulge === 0 ? 'L' : `A${radius.toFixed(2)} ${radius.toFixed(2)} 0 0 ${bulge > 0 ? 0 : 1} `;
    return { name, path: `M${place(from)}${way}${place(to)}` };
  });
  const margin = 7 * unit;
  const box = [x - margin, -(y + height) - margin, width + 2 * margin, height + 2 * margin];
  return { edges, box: box.map((one) => one.toFixed(2)).join(' '), unit };
}
