/** Turn of cloth in the steps: how much more what lies outside of a fold or a turned edge needs. */
import { bendAllowance, turnOfCloth } from '../../cloth/turn-of-cloth.ts';
import { boxOf } from '../../cloth/size.ts';
import { layersAt } from '../../cloth/layers.ts';
import { lineFrom, verbNamed } from '../../steps/index.ts';
import { listed, quote } from '../../measure/index.ts';
import { direction, distance } from '../../geometry/point.ts';
import { plansOf } from './plan.ts';
import { sayIn, sayThickness } from './say.ts';
import { stackOf, thicknessOf } from './thickness.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Ply, Work } from '../../cloth/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { Step } from '../step.ts';

/** Less than so much, in mm, is below the marks of an inch ruler and pressed away. Common practice, no source. */
const LEAST = 25.4 / 16;

/**
 * What a step turns or folds, in mm. `lining`: the way round a lining that lies inside, `linings` by label, is so much
 * shorter at each edge. `round`: to go round what lies in the fold takes so much more than lying flat. `stack`: the
 * outermost of layers that are folded together goes so much farther round than the innermost.
 */
export type TurnOfCloth =
  | { kind: 'lining'; amount: number; linings: string[] }
  | { kind: 'round'; amount: number }
  | { kind: 'stack'; amount: number; layers: number };

/**
 * The turn of cloth of a step; undefined where there is none that a ruler shows. Half a circle round what lies inside,
 * each layer keeping its length in its middle (see turn-of-cloth.ts for the source).
 */
export function turnOfClothIn(pattern: Pattern, step: Step): TurnOfCloth | undefined {
  const verb = verbNamed(step.verb);
  const found = verb.turnsOut ? liningIn(pattern, step) : step.verb === 'fold' ? foldedIn(pattern, step) : undefined;
  return found && found.amount >= LEAST ? found : undefined;
}

function liningIn(pattern: Pattern, step: Step): TurnOfCloth | undefined {
  const work = Object.values(step.before)[0]!;
  const seam = work.stitches.findLast((stitch) => stitch.round !== undefined);
  if (!seam?.round) return undefined;
  const isLining = (ply: Ply): boolean => pattern.materials[ply.material]?.lining === true;
  if (!work.plies.some(isLining)) return undefined;
  const caught = new Set(seam.round.caught);
  const half = work.plies.findIndex(({ id }) => id === seam.round!.over);
  const edges: { amount: number; along: number }[] = [];
  const linings = new Set<string>();
  for (const { from, to } of seam.runs) {
    const here = layersAt(work, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }).filter(({ id }) => !caught.has(id));
    const [inside, outside] = [here.filter(isLining), here.filter((ply) => !isLining(ply))];
    if (inside.length === 0 || outside.length === 0) continue;
    // A bag of two lined halves has a lining and an outside on either side of the seam.
    const sides = new Set(inside.map((ply) => work.plies.indexOf(ply) >= half)).size;
    const thick = [inside, outside].map((plies) => thicknessOf(pattern, plies) / sides);
    edges.push({ amount: turnOfCloth(thick)[1]!.longer, along: distance(from, to) });
    for (const { material } of inside) linings.add(pattern.materials[material]!.label);
  }
  return edges.length === 0 ? undefined : { kind: 'lining', amount: usualOf(edges), linings: [...linings] };
}

/** What half of the way round has, or more: a pocket that is sewn in makes a short stretch far thicker. */
function usualOf(edges: readonly { amount: number; along: number }[]): number {
  const all = edges.reduce((sum, { along }) => sum + along, 0);
  let passed = 0;
  for (const { amount, along } of edges.toSorted((a, b) => b.amount - a.amount)) {
    passed += along;
    if (passed >= all / 2) return amount;
  }
  return 0;
}

/** So many places along a fold are looked at. */
const PLACES = 9;
/** And so far beside it, in mm. */
const BESIDE = 0.5;

function foldedIn(pattern: Pattern, { instruction, before, after }: Step): TurnOfCloth | undefined {
  const came = after.done.at(-1)?.undo?.came;
  if (!came || instruction.verb !== 'fold') return undefined;
  const { from = 'top', at, lands = 'over', only } = instruction;
  const work = Object.values(before)[0]!;
  let found: TurnOfCloth | undefined;
  for (const place of placesAlong(work, from, at)) {
    const upward = layersAt(after, place);
    const stack = lands === 'over' ? upward : upward.toReversed();
    const moved = stack.filter(({ id }) => came.get(id)?.moved);
    const [innermost] = moved;
    if (!innermost) continue;
    const source = came.get(innermost.id)!.from;
    const under = stack.findIndex(({ id }) => came.get(id)?.from === source && !came.get(id)!.moved);
    if (under < 0) continue;
    const round = thicknessOf(pattern, stack.slice(under + 1, stack.indexOf(innermost)));
    const layers = moved.map((ply) => thicknessOf(pattern, [ply]));
    const total = layers.reduce((sum, one) => sum + one, 0);
    const one: TurnOfCloth =
      round > 0 || only !== undefined
        ? { kind: 'round', amount: bendAllowance(180, round / 2, total) }
        : { kind: 'stack', amount: turnOfCloth(layers).at(-1)!.longer, layers: layers.length };
    if (!found || one.amount > found.amount) found = one;
  }
  return found;
}

/** Points along a fold line, a little to the side that stays. */
function placesAlong(work: Work, side: Parameters<typeof lineFrom>[1], by: number): Point[] {
  const line = lineFrom(work, side, by);
  const { x, y, width, height } = boxOf(work.plies);
  const way = direction(line.angle);
  // What moves lies right of the line.
  const left = { x: -way.y * BESIDE, y: way.x * BESIDE };
  return Array.from({ length: PLACES }, (_, i) => {
    const share = (i + 0.5) / PLACES;
    return Math.abs(way.x) > 0.5
      ? { x: x + share * width + left.x, y: line.at.y + left.y }
      : { x: line.at.x + left.x, y: y + share * height + left.y };
  });
}

/** Notes for the author: where cloth needs more than the flat work shows, and than the step allows, and how much. */
export function noteTurnOfCloth(pattern: Pattern, steps: readonly Step[]): Diagnostic[] {
  return steps.flatMap((step): Diagnostic[] => {
    const turn = turnOfClothIn(pattern, step);
    const { instruction: told } = step;
    const allowed = told.verb === 'turn' || told.verb === 'fold' ? (told['turn of cloth'] ?? 0) : 0;
    if (!turn || allowed > turn.amount - LEAST) return [];
    const amount = about(pattern, turn.amount);
    const has = allowed > 0 ? ` The step allows ${about(pattern, allowed)}.` : '';
    const [message, how] = inWords(turn, amount);
    const fix = `${how}, and say so in this step: turn of cloth: ${amount}.`;
    return [
      { severity: 'note', place: step.place, code: 'turn-of-cloth', message: message + has, fix, amount: turn.amount },
    ];
  });
}

function inWords(turn: TurnOfCloth, amount: string): [message: string, how: string] {
  switch (turn.kind) {
    case 'lining':
      return [
        `Inside the turned edges ${listed(turn.linings.map(quote))} has about ${amount} less way round than the outside.`,
        'Take that off the lining in its seams, or roll the outside over the edge in pressing',
      ];
    case 'round':
      return [
        `To go round what lies in the fold takes about ${amount} more than the flat fold shows.`,
        'Make what is folded longer by that',
      ];
    case 'stack':
      return [
        `Folded together, the outermost of ${turn.layers} layers goes about ${amount} farther round than the innermost.`,
        'Fold before the edges are sewn together, or cut the inner layers shorter by that',
      ];
  }
}

/** To the nearest mark: what is pressed in cloth is no finer. */
function about(pattern: Pattern, mm: number): string {
  const mark = pattern.edition === 'inch' ? 25.4 / 16 : 1;
  return sayIn(pattern)(Math.round(mm / mark) * mark);
}

/** The same for a learner at the step, in a sentence; undefined where there is nothing to mind. */
export function adviceOnTurn(pattern: Pattern, step: Step): string | undefined {
  const said = [turnSaid(pattern, step), thicknessClosed(pattern, step)].filter((one) => one !== undefined);
  return said.length === 0 ? undefined : said.join(' ');
}

/** How thick what opens and closes is once the last step has closed it, where the file promises both sizes. */
function thicknessClosed(pattern: Pattern, step: Step): string | undefined {
  if (!pattern.finished?.open || step.verb !== 'fold') return undefined;
  const last = plansOf(pattern).steps.findLast(({ doing }) => doing?.step.verb === 'fold');
  if (last?.id !== step.id) return undefined;
  const { thickest } = stackOf(pattern, step.after)();
  return `Closed, it is about ${sayThickness(thickest.mm)} thick where it is thickest.`;
}

function turnSaid(pattern: Pattern, step: Step): string | undefined {
  const turn = turnOfClothIn(pattern, step);
  if (!turn) return undefined;
  const amount = about(pattern, turn.amount);
  switch (turn.kind) {
    case 'lining':
      return `Let the outside roll a little over the edge as you press: it goes about ${amount} farther round than the lining.`;
    case 'round':
      return `Fold it loosely: to go round what lies in the fold takes about ${amount}.`;
    case 'stack':
      return `The inner layers come to lie about ${amount} beyond the outer one. That is right; do not pull them even.`;
  }
}
