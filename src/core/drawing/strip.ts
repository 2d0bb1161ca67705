import { bounds } from '../geometry/readings.ts';
import { across, heights, tags } from './dimension.ts';
import { lengthWriter } from './lengths.ts';
import { box, closed, polyline } from './path.ts';
import { layOutSheet } from './sheet.ts';
import { surfaceOf } from './surface.ts';
import type { Pleated } from './folding.ts';
import type { Frame } from './frame.ts';
import type { Scene, Shape } from './scene.ts';
import type { PieceSetting } from './surface.ts';

/**
 * The flat strip of a pleated piece, right side up, with its fold lines numbered in the order in which they are made.
 * Beside each stands how far it lies from the raw edge that the plan is marked from; on the other side the stretches
 * between the folds.
 *
 * @param setting `folds` is how many folds are made: that fold line is marked
 */
export function drawStrip(piece: Pleated, setting: PieceSetting & { folds?: number }): Scene {
  const plan = piece.pleats;
  const { set, say } = lengthWriter(setting);
  const cut = bounds(piece.cutOutline);
  const now = setting.folds === undefined ? -1 : Math.round(setting.folds) - 1;
  const marked = plan.folds.map((fold, i) => ({
    ...fold,
    number: i + 1,
    now: i === now,
    from: plan.from === 'top' ? plan.stripLength - fold.at : fold.at,
  }));
  const ends = [0, ...plan.folds.map(({ at }) => at), plan.stripLength - plan.trim, plan.stripLength];
  const stretches = ends.slice(1).map((end, i) => (end - ends[i]! < 1e-6 ? '' : set(end - ends[i]!)));

  const draw = (frame: Frame): Shape[] => {
    const { left, right } = frame;
    const level = (at: number) => polyline({ x: left, y: frame.y(at) }, { x: right, y: frame.y(at) });
    const drawn: Shape[] = [
      {
        kind: 'path',
        name: 'surface',
        role: surfaceOf(piece, setting.materials),
        path: closed(piece.cutOutline, frame.onto),
      },
    ];
    if (plan.trim > 0) {
      const trim = box(left, frame.top, right - left, plan.trim * frame.scale);
      drawn.push({ kind: 'path', name: 'trim', role: 'trimmed', path: trim });
    }
    for (const kind of ['valley', 'mountain'] as const) {
      const path = marked.filter((fold) => fold.kind === kind && !fold.now).flatMap(({ at }) => level(at));
      if (path.length > 0) drawn.push({ kind: 'path', name: `${kind} folds`, role: kind, path });
    }
    const cutLine = closed(piece.cutOutline, frame.onto);
    if (plan.trim > 0) cutLine.push(...level(plan.stripLength - plan.trim));
    drawn.push({ kind: 'path', name: 'cut line', role: 'cut', path: cutLine });
    const fold = marked[now];
    if (fold) drawn.push({ kind: 'path', name: 'fold now', role: fold.kind, path: level(fold.at), now: true });
    return drawn;
  };

  const measured = marked.map(({ number, at, kind, from, pocket }, i) => {
    const before = marked[i - 1];
    const beyond = before ? [`${say(at - before.at)} from fold ${before.number}`] : [];
    if (!before && plan.from === 'top') beyond.push(`${say(at)} from the bottom edge`);
    const places = [`${say(from)} from the ${plan.from} edge`, ...beyond].join(', ');
    return `Fold ${number}, for pocket ${pocket}: a ${kind} fold, ${places}.`;
  });
  const above = plan.stripLength - plan.trim - plan.folds.at(-1)!.at;
  return layOutSheet(
    {
      title: `${piece.label}, flat`,
      lines: [`Right side up. Fold lines from the ${plan.from} edge.`],
      cloth: cut,
      left: [heights({ name: 'stretch', marks: ends, labels: stretches })],
      right: [
        tags(
          'folds',
          marked.map(({ number, at, from, now }) => ({
            name: `fold ${number}`,
            at,
            number: String(number),
            label: set(from),
            now,
          })),
        ),
      ],
      below: [across({ name: 'width', marks: [cut.x, cut.x + cut.width], labels: [set(cut.width)] })],
      draw,
      legend: ['valley', 'mountain'],
      ...(setting.folds !== undefined && { now: { role: marked[now]?.kind ?? 'mountain', words: 'fold made last' } }),
      notes: [`Strip length ${set(plan.stripLength)}.`],
      text: [
        `${piece.label}: the strip, flat, right side up, ${say(cut.width)} wide and ${say(plan.stripLength)} long.`,
        ...measured,
        `Above the last fold: ${say(above)}.`,
        ...(plan.trim > 0 ? [`When it is folded, ${say(plan.trim)} are trimmed off the top.`] : []),
        ...(now >= 0 ? [`Fold ${now + 1} is marked.`] : []),
      ],
    },
    setting,
  );
}
