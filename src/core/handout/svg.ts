import { darts, folds, near, notches, outlines } from '../drawing/piece.ts';
import { frameOf } from '../drawing/frame.ts';
import { pathText } from '../drawing/path.ts';
import { bounds } from '../geometry/readings.ts';
import type { Piece } from '../project/pattern.ts';

/** Blank round the cut line, so that no machine clips half a line, in mm. */
const RIM = 1;

/**
 * A piece at true scale for a cutting machine: width and height in mm, one unit of the picture for each, and a group
 * for every kind of line, named by it. The groups carry the colours that tell machines what to do with them.
 */
export function pieceSvg(piece: Piece): string {
  const cut = bounds(piece.cutOutline);
  const frame = frameOf(cut, 1, RIM, RIM);
  const shapes = [
    ...outlines(piece, near(cut, bounds(piece.outline)), frame),
    ...folds(piece, frame),
    ...notches(piece, cut, frame),
    ...darts(piece, frame),
  ];
  const [width, height] = [cut.width + 2 * RIM, cut.height + 2 * RIM].map((mm) => Math.round(mm * 1000) / 1000);
  const groups = shapes.flatMap((shape) =>
    shape.kind === 'path'
      ? [
          `  <g id="${shape.role}" stroke="${colours[shape.role] ?? '#000'}">\n    <path d="${pathText(shape.path)}"/>\n  </g>`,
        ]
      : [],
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" fill="none" stroke-width="0.1">`,
    `  <title>${escaped(piece.label)}</title>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n');
}

const colours: Partial<Record<string, string>> = {
  cut: '#ff0000',
  stitch: '#0000ff',
  valley: '#00a000',
  mountain: '#a000a0',
  notch: '#ff8000',
};

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
