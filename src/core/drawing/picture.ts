import { visibleMarks } from '../cloth/visible.ts';
import { boxOf } from '../cloth/size.ts';
import { frameOf } from './frame.ts';
import { seenWords, sizeWords } from './work-words.ts';
import { shapesOf } from './work-shapes.ts';
import { standing } from './standing.ts';
import { viewOf } from './view.ts';
import type { Work } from '../cloth/work.ts';
import type { Step } from '../project/step.ts';
import type { PieceSetting } from './surface.ts';
import type { Scene } from './scene.ts';

/** Round the works, so that no line is cut off, in mm of the sheet. */
const RIM = 0.6;
/** Between two works, in mm of the sheet. */
const GAP = 4;

/**
 * What is made in the end, for a cover: every work that no later step takes, side by side to one scale, seen from the
 * front, without lettering and without what is hidden behind. What has a boxed bottom stands on it.
 *
 * @param fit the room for it: both sides count, and the picture is no larger than what lies in it
 * @returns undefined where nothing is made
 */
export function drawMade(
  steps: readonly Pick<Step, 'makes' | 'takes' | 'after' | 'title'>[],
  { fit, ...setting }: PieceSetting & { title: string; fit: { width: number; height: number } },
): Scene | undefined {
  const ends = steps.filter(({ makes }, i) => !steps.slice(i + 1).some(({ takes }) => takes.includes(makes)));
  if (ends.length === 0) return undefined;
  const upright = ends.map(({ after }) => standing(after, setting));
  const boxes = ends.map(({ after }, i) => upright[i] ?? boxOf(after.plies));
  const widths = boxes.reduce((sum, { width }) => sum + width, 0);
  const tallest = Math.max(...boxes.map(({ height }) => height));
  const scale = Math.min((fit.width - GAP * (ends.length - 1) - 2 * RIM) / widths, (fit.height - 2 * RIM) / tallest);
  let left = RIM;
  const shapes = ends.flatMap(({ after, makes }, i) => {
    const { width, height } = boxes[i]!;
    const top = RIM + (tallest - height) * scale;
    const frame = frameOf({ x: 0, y: 0, width, height }, scale, left, top);
    left = frame.right + GAP;
    const stands = upright[i];
    if (stands) return stands.shapes(makes, frame.onto);
    const shapes = shapesOf(makes, viewOf(openly(after), 'front'), frame.onto, setting);
    return shapes.filter((shape) => shape.kind === 'text' || shape.role !== 'hidden');
  });
  return {
    title: `${setting.title}, made`,
    width: left - GAP + RIM,
    height: tallest * scale + 2 * RIM,
    scale,
    shapes,
    text: ends.flatMap(({ after }) => [seenWords(after, 'front', setting), ...sizeWords(after, setting)]),
  };
}

/** A work with the marks that show: those on the uppermost ply where they sit. */
const openly = (work: Work): Work => ({ ...work, marks: visibleMarks(work) });
