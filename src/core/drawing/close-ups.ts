/** What the drawing of a step shows as done in it, and where: what a camera comes near to. */
import { actionOf } from './step-action.ts';
import { sideOf } from './step.ts';
import { boxOf } from '../cloth/size.ts';
import type { Box, Point } from '../geometry/index.ts';
import type { SeenFrom } from '../cloth/visible.ts';
import type { StepDrawn } from './step.ts';
import type { Trace } from './trace.ts';

/**
 * Lines of one kind that a step folds, sews or cuts along, each by the side of its work that it lies at; hardware by where
 * it is set. `corners` are those at which two rows meet or a line lies across. `side` is the one the step is drawn from.
 */
export type CloseUp = {
  readonly what: 'fold' | 'row' | 'cut' | 'hardware';
  readonly places: readonly string[];
  readonly corners: readonly string[];
  readonly side: SeenFrom;
};

/** Two ends are one corner within this share of a work's longer side. */
const MEET = 0.06;

/** Up to here a line lies at a side: a share of the work, from that side. */
const AT_SIDE = 0.3;

/** What is done in a step, read off its drawing: nothing where nothing is folded, sewn, cut or set. */
export function closeUpsOf(step: StepDrawn): CloseUp[] {
  const given = Object.values(step.before);
  // Two works of one name are two of the same.
  const works = step.takes?.length === 2 && given.length === 1 ? [given[0]!, given[0]!] : given;
  const { folds, sewn: rows, cuts, marks } = actionOf(step, works);
  const boxes = works.map(({ plies }) => boxOf(plies));
  const side = sideOf(step);
  const lines = (what: CloseUp['what'], traces: readonly Trace[]): CloseUp[] => {
    if (traces.length === 0) return [];
    const places = unique(traces.flatMap((trace) => placeOf(trace, boxes[trace.work]!) ?? []));
    const corners = unique([...cornersAcross(traces, boxes), ...(what === 'row' ? cornersTurned(traces, boxes) : [])]);
    return [{ what, places, corners, side }];
  };
  const box = boxOf(step.after.plies);
  return [
    ...lines('fold', folds),
    ...lines('row', rows),
    ...lines('cut', cuts),
    ...(marks.length > 0
      ? [{ what: 'hardware', places: unique(marks.map(({ at }) => spotOf(at, box))), corners: [], side } as const]
      : []),
  ];
}

const unique = (texts: readonly string[]): string[] => [...new Set(texts)];

const isLevel = ({ from, to }: Trace): boolean => Math.abs(to.y - from.y) < 0.05 * Math.abs(to.x - from.x);
const isUpright = ({ from, to }: Trace): boolean => Math.abs(to.x - from.x) < 0.05 * Math.abs(to.y - from.y);

/** The side a line lies at, or the middle; undefined where it lies across a corner. */
function placeOf(trace: Trace, box: Box): string | undefined {
  if (isLevel(trace)) {
    const share = (trace.from.y - box.y) / box.height;
    return share > 1 - AT_SIDE ? 'the top' : share < AT_SIDE ? 'the bottom' : 'the middle';
  }
  if (!isUpright(trace)) return undefined;
  const share = (trace.from.x - box.x) / box.width;
  return share > 1 - AT_SIDE ? 'the right' : share < AT_SIDE ? 'the left' : 'the middle';
}

const cornerAt = ({ x, y }: Point, box: Box): string =>
  `the ${y - box.y > box.height / 2 ? 'top' : 'bottom'} ${x - box.x > box.width / 2 ? 'right' : 'left'}`;

/** Where something is set: a corner of thirds, or the middle of a side. */
function spotOf({ x, y }: Point, box: Box): string {
  const [across, up] = [(x - box.x) / box.width, (y - box.y) / box.height];
  const way = across < 1 / 3 ? 'left' : across > 2 / 3 ? 'right' : '';
  const level = up < 1 / 3 ? 'bottom' : up > 2 / 3 ? 'top' : '';
  return level + way === '' ? 'the middle' : `the ${[level, way].filter(Boolean).join(' ')}`;
}

/** Lines that lie across a corner. */
const cornersAcross = (traces: readonly Trace[], boxes: readonly Box[]): string[] =>
  traces.flatMap((trace) => {
    if (isLevel(trace) || isUpright(trace)) return [];
    const middle = { x: (trace.from.x + trace.to.x) / 2, y: (trace.from.y + trace.to.y) / 2 };
    return [cornerAt(middle, boxes[trace.work]!)];
  });

/** Corners that a row turns: an upright and a level line with a common end. */
function cornersTurned(traces: readonly Trace[], boxes: readonly Box[]): string[] {
  const found: string[] = [];
  for (const one of traces.filter(isUpright))
    for (const other of traces.filter(isLevel)) {
      if (one.work !== other.work) continue;
      const box = boxes[one.work]!;
      const near = MEET * Math.max(box.width, box.height);
      for (const a of [one.from, one.to])
        for (const b of [other.from, other.to])
          if (Math.hypot(a.x - b.x, a.y - b.y) <= near) found.push(cornerAt(a, box));
    }
  return found;
}
