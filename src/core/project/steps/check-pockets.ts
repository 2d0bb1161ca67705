/** Whether what goes in still fits once everything is sewn: rows of stitches take from a pocket's width and depth. */
import { type Diagnostic, quote } from '../../measure/index.ts';
import { boxOf } from '../../cloth/size.ts';
import { covers } from '../../cloth/ring.ts';
import { cross, dot, minus } from '../../geometry/point.ts';
import { transformPoint } from '../../geometry/transform.ts';
import { lengthOf, middleOf } from './rows.ts';
import { sayIn } from './say.ts';
import type { HoldCheck, Pattern, Piece } from '../pattern.ts';
import type { Ledger } from '../step.ts';
import type { Ply, Run, Stitch, Work } from '../../cloth/index.ts';
import type { Point } from '../../geometry/index.ts';

const CLOSE = 0.05;

export function checkPockets(pattern: Pattern, ledger: Ledger): Diagnostic[] {
  const closed = ledger.finished === undefined ? undefined : ledger.results[ledger.finished];
  if (!closed) return [];
  const open = openOf(ledger) ?? closed;
  const said = new Set<string>();
  return pattern.holds.flatMap((hold): Diagnostic[] => {
    const piece = pattern.pieces[hold.piece];
    const work = hold.state === 'closed' ? closed : open;
    const inside = piece && (hold.behind ? behind(work, piece) : insideOf(work, piece, hold.pocket));
    if (inside === 'not sewn') return [notSewnOn(hold, piece!)];
    // What does not fit the flat pieces has its finding already.
    if (!piece || !inside || !hold.fits) return [];
    const finding = tooSmall(pattern, hold, piece, inside);
    const key = JSON.stringify([hold.place, finding?.code]);
    if (!finding || said.has(key)) return [];
    said.add(key);
    return [finding];
  });
}

/** What may come after the last seam and holds nothing together. */
const HOLDS_NOTHING: ReadonlySet<string> = new Set(['fold', 'press', 'turn over', 'attach']);

/** The finished work as it lies open: before the folds at the end that no seam holds. */
export function openOf({ steps, finished }: Ledger): Work | undefined {
  let [name, open]: [string | undefined, Work | undefined] = [finished, undefined];
  for (const step of steps.toReversed()) {
    if (step.makes !== name) continue;
    if (!HOLDS_NOTHING.has(step.verb)) break;
    name = step.takes[0];
    if (step.verb === 'fold') open = step.before[name!];
  }
  return open;
}

/** The room between the rows of stitches round a pocket, in mm. */
export type Inside = { width: number; depth: number };

function tooSmall(pattern: Pattern, hold: HoldCheck, piece: Piece, { width, depth }: Inside): Diagnostic | undefined {
  const say = sayIn(pattern);
  const before = hold.behind ? 'the room behind ' : hold.pocket === undefined ? '' : `pocket ${hold.pocket} of `;
  const where = `${before}the ${piece.name}`;
  const place = [...hold.place, 'in'];
  const once = hold.state === 'closed' ? 'Folded shut' : 'Once sewn';
  const wider = `Make the ${piece.name} wider, or sew nearer to its edge.`;
  const spare = width - hold.size.width;
  if (spare < -CLOSE) {
    const message = `${once}, ${where} is ${say(width)} wide. That is ${say(-spare)} too narrow for ${hold.what}.`;
    return { severity: 'error', place, code: 'pocket-narrow', message, fix: wider, amount: -spare };
  }
  const wanted = piece.sewn.width - hold.size.width - hold.room.width;
  if (spare < wanted - CLOSE) {
    const message = `${once}, ${where} leaves ${hold.what} ${say(Math.max(0, spare))} to spare, not ${say(wanted)}.`;
    return { severity: 'warning', place, code: 'pocket-tight', message, fix: wider, amount: wanted - spare };
  }
  const least = hold.pocket === undefined ? hold.size.height : hold.cover * hold.size.height;
  if (depth < least - CLOSE) {
    const message = `${once}, ${where} is ${say(depth)} deep. That is ${say(least - depth)} too shallow for ${hold.what}.`;
    const fix = 'Make it deeper, or move the row of stitches across it lower.';
    return { severity: 'error', place, code: 'pocket-shallow', message, fix, amount: least - depth };
  }
  return undefined;
}

/** A layer of a pocket: from where it is looked at, its ways across and up, and how high it goes. */
type Layer = { ply: Ply; origin: Point; across: Point; up: Point; height: number };

function insideOf(work: Work, piece: Piece, pocket: number | undefined): Inside | undefined {
  const layer = pocket === undefined ? largest(work, piece) : frontOf(work, piece, pocket);
  return layer && roomIn(work, layer, closingRows(work, piece, layer.ply));
}

function notSewnOn({ place, what }: HoldCheck, { name }: Piece): Diagnostic {
  const message = `Nothing sews ${quote(name)} to other cloth, so that ${what} has no place behind it.`;
  const fix = `Sew it on along its sides and its bottom, or write “in: ${name}”.`;
  return { severity: 'error', place: [...place, 'in'], code: 'nothing-behind', message, fix };
}

/** The room between a piece, pleated or not, and what it is sewn to: bounded by the rows that go out of it alone. */
function behind(work: Work, { name }: Piece): Inside | 'not sewn' | undefined {
  const plies = work.plies.filter(({ piece }) => piece === name);
  const [ply] = plies;
  if (!ply) return undefined;
  const own = new Set(plies.map(({ id }) => id));
  const glued = new Set(
    work.plies.filter(({ fusedTo }) => fusedTo !== undefined && own.has(fusedTo)).map(({ id }) => id),
  );
  const closes = ({ kind }: Stitch, { plies: through }: Run) =>
    kind !== 'baste' &&
    kind !== 'gather' &&
    through.some((id) => own.has(id)) &&
    through.some((id) => !own.has(id) && !glued.has(id));
  if (!work.stitches.some((stitch) => stitch.runs.some((run) => closes(stitch, run)))) return 'not sewn';
  const { x, y, width, height } = boxOf(plies);
  const upright = { origin: { x, y }, across: { x: 1, y: 0 }, up: { x: 0, y: 1 }, height };
  return roomIn(work, { ...upright, xs: [0, width] }, closes);
}

function roomIn(
  work: Work,
  layer: Pick<Layer, 'origin' | 'across' | 'up' | 'height'> & ({ ply: Ply } | { xs: number[] }),
  closes: (stitch: Stitch, run: Run) => boolean,
): Inside {
  const { origin, across, up, height } = layer;
  const xs = 'xs' in layer ? layer.xs : layer.ply.outline.map(({ from }) => dot(minus(from, origin), across));
  let [left, right] = [Math.min(...xs), Math.max(...xs)];
  const middle = (left + right) / 2;
  const levels: number[] = [];
  for (const stitch of work.stitches) {
    for (const run of stitch.runs) {
      if (!closes(stitch, run)) continue;
      const way = minus(run.to, run.from);
      const at = minus(middleOf(run), origin);
      const [x, y, length] = [dot(at, across), dot(at, up), lengthOf(run)];
      if (Math.abs(cross(way, up)) < CLOSE * length) {
        const reach = length / 2;
        if (y + reach < CLOSE || y - reach > height - CLOSE) continue;
        if (x < middle) left = Math.max(left, x);
        else right = Math.min(right, x);
      } else if (Math.abs(cross(way, across)) < CLOSE * length && Math.abs(x - middle) < length) {
        if (y > -CLOSE && y < height + CLOSE) levels.push(Math.max(0, Math.min(height, y)));
      }
    }
  }
  return { width: right - left, depth: depthOf(levels, height) };
}

/**
 * From the opening down to the highest row that closes a pocket. What is closed at its top as well, such as a cushion
 * with a gap or a zip, is as deep as the largest room between two rows.
 */
function depthOf(levels: readonly number[], height: number): number {
  const sorted = [0, ...levels].sort((a, b) => a - b);
  const highest = sorted.at(-1)!;
  if (highest < height - CLOSE) return height - highest;
  return Math.max(...sorted.slice(1).map((level, i) => level - sorted[i]!));
}

/**
 * Which rows close a pocket: those that hold its front to other cloth. A hem or a row through the pocket alone, as it was
 * before it was laid on, closes nothing. Pleats make pockets of one piece: there every row through several layers does.
 */
function closingRows({ plies, stitches }: Work, piece: Piece, front: Ply): (stitch: Stitch, run: Run) => boolean {
  const [laid] = front.laid ?? [];
  const isOwn = (ply: Ply) =>
    laid
      ? (ply.laid?.some(({ work, nth }) => work === laid.work && nth === laid.nth) ?? false)
      : ply.piece === piece.name;
  const own = new Set(plies.filter(isOwn).map(({ id }) => id));
  const glued = new Set(plies.filter(({ fusedTo }) => fusedTo !== undefined && own.has(fusedTo)).map(({ id }) => id));
  const goesOut = ({ plies: through }: Run) =>
    through.some((id) => own.has(id)) && through.some((id) => !own.has(id) && !glued.has(id));
  const isSewnOn = !piece.pleats && stitches.some(({ runs }) => runs.some(goesOut));
  return ({ kind }, run) => {
    if (kind === 'baste' || kind === 'gather') return false;
    if (isSewnOn) return goesOut(run);
    return kind !== 'hem' && run.plies.length > 1 && run.plies.some((id) => own.has(id));
  };
}

/** The front of a pleated pocket, from its bottom fold up to its top fold. */
function frontOf(work: Work, { name, pleats, size }: Piece, pocket: number): Layer | undefined {
  const [top, bottom] = [pleats?.folds[2 * pocket - 2], pleats?.folds[2 * pocket - 1]];
  if (!top || !bottom) return undefined;
  // The layer behind the front lies between both folds; the front itself may run on below.
  const middle = { x: size.width / 2, y: (top.at + bottom.at) / 2 };
  const ply = work.plies.find(
    (one) => one.piece === name && covers(one.outline, transformPoint(one.transform, middle)),
  );
  if (!ply) return undefined;
  const at = (x: number, y: number) => transformPoint(ply.transform, { x, y });
  const origin = at(0, bottom.at);
  return {
    ply,
    origin,
    across: minus(at(1, bottom.at), origin),
    up: minus(at(0, bottom.at - 1), origin),
    height: bottom.at - top.at,
  };
}

/** The largest layer of a piece that is not pleated, as it lies. */
function largest(work: Work, { name }: Piece): Layer | undefined {
  let [best, most]: [Layer | undefined, number] = [undefined, 0];
  for (const ply of work.plies) {
    const { x, y, width, height } = boxOf([ply]);
    if (ply.piece !== name || width * height <= most) continue;
    most = width * height;
    best = { ply, origin: { x, y }, across: { x: 1, y: 0 }, up: { x: 0, y: 1 }, height };
  }
  return best;
}
