import { legendOf } from '../drawing/legend.ts';
import type { LegendWords } from '../drawing/legend.ts';
import { letteringWidth, wrap } from '../drawing/lettering.ts';
import { line, placedShapes } from './place.ts';
import { editionWords } from './handout.ts';
import { MARGIN, papers, SAFE } from './paper.ts';
import { testHeight, testMarks } from './test-marks.ts';
import { LEADING } from './type.ts';
import type { Shape, ShapeRole } from '../drawing/scene.ts';
import type { Box } from '../geometry/readings.ts';
import type { Heading, Page, HandoutSetting } from './handout.ts';
import type { Type } from './type.ts';

/** A sheet at true scale: a head, the room for pieces, a legend and the test marks below. */
export type TrueScale = {
  /** The room for pieces, in mm of the sheet. */
  readonly room: Box;
  page: (title: string, number: number, count: number, shapes: readonly Shape[], text: readonly string[]) => Page;
};

/**
 * The sheet that all templates of a document share.
 *
 * @param roles what the legend explains: the same on every sheet, so that the room is the same too
 * @param words of roles that mean something of their own here
 */
export function trueScale(
  heading: Heading,
  setting: HandoutSetting,
  type: Type,
  roles: readonly ShapeRole[],
  words: LegendWords['words'] = {},
): TrueScale {
  const { width, height } = papers[setting.paper];
  const across = width - 2 * MARGIN;
  const row = type.small * LEADING;
  const legend = legendOf([], { legend: roles, words }, across / type.drawing, 0);
  const legendHeight = legend.bottom * type.drawing;
  const low = height - MARGIN;
  const legendTop = low - testHeight(across, type) - 2.5 - legendHeight;
  const top = MARGIN + 2 * row + 1.5;
  const room = { x: SAFE, y: top, width: width - 2 * SAFE, height: legendTop - 2 - top };
  const about = [heading.project, editionWords[heading.edition], setting.school ?? ''].filter(Boolean).join(' · ');
  return {
    room,
    page(title, number, count, shapes, text) {
      const pageOf = `page ${number} of ${count}`;
      const first = MARGIN + 0.76 * type.small;
      const beside = across - letteringWidth(pageOf, type.small) - 4;
      return {
        bookmark: title,
        scene: {
          title,
          width,
          height,
          scale: 1,
          shapes: [
            line('title', firstLine(title, type.small, beside), MARGIN, first, type.small, { strong: true }),
            line('page', pageOf, width - MARGIN, first, type.small, { anchor: 'end' }),
            line('about', firstLine(about, type.small, across), MARGIN, first + row, type.small),
            ...shapes,
            ...placedShapes(legend.shapes, { x: MARGIN, y: legendTop }, type.drawing),
            ...testMarks(MARGIN, low, across, type),
          ],
          text,
        },
      };
    },
  };
}

/**
 * As much of a text as fits one line; what is left out shows as an ellipsis.
 *
 * @example firstLine('A very long title', 3, 12) // => 'A very…'
 */
export function firstLine(text: string, size: number, width: number): string {
  if (letteringWidth(text, size) <= width) return text;
  const [line = ''] = wrap(text, size, width - letteringWidth('…', size));
  return `${line}…`;
}
