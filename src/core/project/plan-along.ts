/** Pleats along an edge of a piece, worked out on its stitch line. */
import { depthsOf, MOST_PLEATS, planEdgePleats } from './edge-pleats.ts';
import { distance } from '../geometry/point.ts';
import { plainName, quote, SAME, type Place } from '../measure/index.ts';
import { pleatedAlong, type CompiledPiece } from './shapes.ts';
import { sides } from '../geometry/index.ts';
import type { EdgePleatFault } from './edge-pleats.ts';
import type { EdgePleats } from './pattern.ts';
import type { Evaluator } from './evaluator.ts';

/** The edge that is pleated: from which side of the box its places are measured, where it begins, and how long it is. */
type Stretch = { edge: string; from: 'left' | 'bottom'; start: number; flat: number };

/** The edge as it lies flat. One that is not straight, or slants, is reported. */
export function stretchAlong(evaluator: Evaluator, piece: CompiledPiece): Stretch | undefined {
  const { on, place } = piece.edgePleats!;
  const lines = evaluator.lines(piece);
  if (!lines) return undefined;
  const own = sides(lines.stitch).filter(({ name }) => plainName(name) === plainName(on));
  const [side] = own;
  const refuse = (code: string, message: string, fix: string): undefined => {
    evaluator.report({ severity: 'error', place: [...place, 'on'], code, message, fix });
  };
  const called = `The edge ${quote(on)} of ${quote(piece.label)}`;
  if (!side || own.length > 1 || side.bulge !== 0) {
    const message = `${called} is not one straight line: only a straight edge is folded into pleats.`;
    return refuse('not-straight', message, 'Gather it in a step, or pleat a straight edge.');
  }
  const [wide, high] = [Math.abs(side.to.x - side.from.x), Math.abs(side.to.y - side.from.y)];
  if (Math.min(wide, high) > SAME) {
    return refuse('not-straight', `${called} slants.`, 'Turn the outline so that the edge lies level or upright.');
  }
  const from = wide > high ? 'left' : 'bottom';
  const start = from === 'left' ? Math.min(side.from.x, side.to.x) : Math.min(side.from.y, side.to.y);
  const flat = distance(side.from, side.to);
  const isShort = pleatedAlong(piece, from === 'left' ? 'width' : 'height') && piece.corners.length > 0;
  const { cut } = lines;
  const xs = cut.map((one) => (from === 'left' ? one.from.x : one.from.y));
  const around = evaluator.sides(piece);
  const ends = !around ? 0 : from === 'left' ? around.left + around.right : around.bottom + around.top;
  if (isShort && Math.max(...xs) - Math.min(...xs) - ends > flat + SAME) {
    return refuse(
      'not-straight',
      `${called} is shortened by its shaped corners.`,
      'Shape other corners, or leave the pleats.',
    );
  }
  return { edge: side.name, from, start, flat };
}

/** The pleats of a piece along an edge. What stands in the way is reported. */
export function planAlong(evaluator: Evaluator, piece: CompiledPiece): EdgePleats | undefined {
  const { kind, faces, count: asked, every: apart, place } = piece.edgePleats!;
  const stretch = stretchAlong(evaluator, piece);
  const depth = evaluator.part(piece.name, { what: 'pleat depth' });
  const takeUp = evaluator.part(piece.name, { what: 'takeup' });
  const every = apart && evaluator.length(apart);
  if (!stretch || takeUp === undefined || (apart && every === undefined)) return undefined;
  const { from, flat } = stretch;
  const upright = faces === 'up' || faces === 'down';
  if (faces !== undefined && upright !== (from === 'bottom')) {
    const way = from === 'bottom' ? 'up or down' : 'left or right';
    const message = `Along ${quote(stretch.edge)} the folds of knife pleats point ${way}.`;
    const fix = `Write “faces: ${way.split(' ')[0]!}”.`;
    evaluator.report({ severity: 'error', place: [...place, 'faces'], code: 'pleats-face-elsewhere', message, fix });
    return undefined;
  }
  const count = asked ? evaluator.count(asked) : countFor(evaluator, piece, depth, takeUp);
  if (count === undefined || depth === undefined) return undefined;
  const plan = planEdgePleats({
    kind,
    faces: faces === 'left' || faces === 'down' ? 'back' : 'onward',
    count,
    depth,
    flat,
    ...(every !== undefined && { every }),
  });
  if (!plan.ok) {
    report(evaluator, piece, plan.fault, { count, depth, flat });
    return undefined;
  }
  const folds = plan.value.folds.map((fold) => ({ ...fold, at: stretch.start + fold.at }));
  return { ...plan.value, folds, edge: stretch.edge, from };
}

/** How many pleats of a depth take up so much. */
function countFor(evaluator: Evaluator, piece: CompiledPiece, depth: number | undefined, takeUp: number) {
  const { kind, place } = piece.edgePleats!;
  if (depth === undefined || !(depth > SAME)) return depth === undefined ? undefined : 1;
  const each = depthsOf(kind) * depth;
  const count = Math.round(takeUp / each);
  if (count >= 1 && Math.abs(count * each - takeUp) <= SAME) return count;
  const say = (mm: number) => evaluator.say(mm);
  const message = `There are ${say(takeUp)} to take up, and pleats of ${say(depth)} take ${say(each)} each: that is no whole number of them.`;
  const near = [Math.floor(takeUp / each), Math.ceil(takeUp / each)].filter((n) => n >= 1 && n <= MOST_PLEATS);
  const ways = near.map(
    (n, i) => `${n}${i === 0 ? (n === 1 ? ' pleat' : ' pleats') : ''} of ${say(takeUp / (n * depthsOf(kind)))}`,
  );
  const fix =
    ways.length > 0
      ? `It would be ${ways.join(', or ')}. Give “count” in place of “depth”.`
      : 'Make the edge longer, or the pleats less deep.';
  evaluator.report({ severity: 'error', place: [...place, 'depth'], code: 'pleats-not-whole', message, fix });
  return undefined;
}

function report(
  evaluator: Evaluator,
  piece: CompiledPiece,
  { code, field, amount = 0 }: EdgePleatFault,
  { count, depth, flat }: { count: number; depth: number; flat: number },
): void {
  const { kind, place } = piece.edgePleats!;
  const pleats = piece.edgePleats!;
  const say = (mm: number) => evaluator.say(mm);
  const words = (): [string, string?] => {
    switch (code) {
      case 'pleats-not-whole':
        return ['A whole number of pleats belongs here, one or more.'];
      case 'too-many-pleats':
        return [`An edge is folded into ${MOST_PLEATS} pleats at the most here.`];
      case 'no-depth':
        return [
          `A pleat ${say(depth)} deep takes up nothing.`,
          'Make it deeper than nothing, or the edge longer than “to”.',
        ];
      case 'no-room':
        return [
          `${count} ${kind} pleat${count === 1 ? ' takes' : 's take'} up ${say(depthsOf(kind) * count * depth)} at a depth of ${say(depth)}, and the edge is ${say(flat)} long.`,
          'Make the pleats fewer or less deep, or the edge longer.',
        ];
      case 'pleats-overlap':
        return [
          kind === 'inverted'
            ? `The cloth beneath each of these pleats would reach ${say(amount)} past the fold of the next.`
            : `These pleats are ${say(kind === 'knife' ? depth : 2 * depth)} wide and lie ${say(amount)} too close: each would hide the next.`,
          'Make them fewer or less deep, or “every” larger.',
        ];
      case 'beyond-the-side':
        return [
          `The cloth beneath these pleats would reach ${say(amount)} past the end of the edge.`,
          field === 'every' ? 'Make “every” smaller.' : 'Make the pleats less deep, or the edge longer.',
        ];
    }
  };
  const [message, fix] = words();
  const at: Place = pleats[field] ? [...place, field] : place;
  evaluator.report({ severity: 'error', place: at, code, message, ...(fix && { fix }), amount });
}
