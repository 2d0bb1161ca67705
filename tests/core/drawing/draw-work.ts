import { direction } from '../../../src/core/geometry/point.ts';
import { across, heights, margin } from '../../../src/core/drawing/dimension.ts';
import { boxOf } from '../../../src/core/cloth/size.ts';
import { layOutSheet } from '../../../src/core/drawing/sheet.ts';
import { nameOf, rowWords, seenWords, sizeWords, standingNotes } from '../../../src/core/drawing/work-words.ts';
import { shapesOf } from '../../../src/core/drawing/work-shapes.ts';
import { viewOf } from '../../../src/core/drawing/view.ts';
import { lengthWriter } from '../../../src/core/drawing/lengths.ts';
import type { SeenFrom } from '../../../src/core/cloth/visible.ts';
import type { Work } from '../../../src/core/cloth/work.ts';
import type { Line } from '../../../src/core/geometry/line.ts';
import type { Scene } from '../../../src/core/drawing/scene.ts';
import type { WorkSetting } from '../../../src/core/drawing/work-words.ts';

/** One work by itself on a sheet, put together of the parts that the drawings of steps are made of. */
export function drawWork(work: Work, setting: WorkSetting & { side?: SeenFrom }): Scene {
  const { side = 'front' } = setting;
  const { set } = lengthWriter(setting);
  const { width, height } = boxOf(work.plies);
  const view = viewOf(work, side);
  return layOutSheet(
    {
      title: nameOf(work, setting.name),
      lines: [`Seen from the ${side}.`],
      cloth: { x: 0, y: 0, width, height },
      left: [heights({ name: 'height', marks: [0, height], labels: [set(height)] })],
      right: [margin],
      below: [across({ name: 'width', marks: [0, width], labels: [set(width)] })],
      draw: (frame) => shapesOf('work', view, frame.onto, setting),
      notes: standingNotes(work, setting),
      text: [
        `${nameOf(work, setting.name)}.`,
        seenWords(work, side, setting),
        ...sizeWords(work, setting),
        ...rowWords(work, setting),
      ],
    },
    setting,
  );
}

/** The line across the middle of a work from left to right, or from its lower edge up. */
export function lineAcross(
  box: { x: number; y: number; width: number; height: number },
  way: 'level' | 'upright',
): Line {
  const angle = way === 'level' ? 0 : 90;
  const { x, y } = direction(angle);
  return { at: { x: box.x + (y * box.width) / 2, y: box.y + (x * box.height) / 2 }, angle };
}
