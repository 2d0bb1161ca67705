import { across, heights, margin } from './dimension.ts';
import { boxOf } from '../cloth/size.ts';
import { layOutSheet } from './sheet.ts';
import { nameOf, rowWords, seenWords, sizeWords, standingNotes } from './work-words.ts';
import { shapesOf } from './work-shapes.ts';
import { viewOf } from './view.ts';
import { lengthWriter } from './lengths.ts';
import type { SeenFrom } from '../cloth/visible.ts';
import type { Work } from '../cloth/work.ts';
import type { Scene } from './scene.ts';
import type { WorkSetting } from './work-words.ts';

/**
 * Work in progress as it lies, seen from one side: what shows, with its motif running as the cloth does, raw and folded
 * edges, edges hidden behind, rows of stitches, hardware, and its size.
 */
export function drawWork(work: Work, setting: WorkSetting & { side?: SeenFrom }): Scene {
  const { side = 'front', materials } = setting;
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
      draw: (frame) => shapesOf('work', view, frame.onto, materials),
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
