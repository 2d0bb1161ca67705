import { area, bounds, reflect, rotate, translate } from '../geometry/index.ts';
import { type Diagnostic, SAME } from '../measure/index.ts';
import { boxesNeeded } from './bounds.ts';
import {
  fewTries,
  layBoxes,
  plainKind,
  shortestLength,
  type BoxLayout,
  type PlacedPiece,
  type BoxTask,
} from './boxes.ts';
import { cutsFor } from './cuts.ts';
import { layOutlines, MOST_OUTLINES } from './outlines.ts';
import { fillsItsBox, noPlaceToMatch, preparePiece, roomOn, checkDemand, type PreparedPiece } from './prepare.ts';
import { MOST_SHRINKAGE, toBuy } from './purchase.ts';
import { lengthUnits } from './length-units.ts';
import type { Cloth, Demand, LayOptions, Wanted } from './demand.ts';
import type { LaidCloth, Layout, Placement } from './layout.ts';

/** News of a search: how many layouts were tried, and a better layout if there is one. */
export type Progress = { tries: number; better?: Layout };

/**
 * Lays pieces on cloth so that little is bought, and says how little could do at all.
 *
 * Cloths are used in the order they are listed: offcuts first, say, then a bolt. Rectangles are searched as such;
 * other outlines too, or by the box round them where cuts are straight. The same seed and tries give the same answer.
 * Never throws: what cannot be laid is in `left`, and a finding says why.
 *
 * @example
 * layOut([{ name: 'square', outline: rectangle(127, 127), count: 56 }], [{ name: 'cloth', kind: 'pre-cut', width: 1016, length: 914.4 }]).left // => []
 */
export function layOut(demand: Demand, cloths: readonly Cloth[], options: LayOptions = {}): Layout {
  let best: Layout | undefined;
  for (const { better } of searchLayouts(demand, cloths, options)) if (better) best = better;
  return best!;
}

/**
 * The search as it goes: the first layout at once, then each better one, and word now and then that the search goes
 * on, so that a worker can post them and hear whether to end.
 */
export function* searchLayouts(
  demand: Demand,
  cloths: readonly Cloth[],
  options: LayOptions = {},
): Generator<Progress, void, void> {
  const checked = checkDemand(demand, cloths, options);
  const fixed = soundOptions(options);
  const onCloth = checked.cloths.map((cloth) =>
    checked.demand.map((piece, i) => preparePiece(piece, i, cloth, fixed.options)),
  );
  const work: Work = {
    ...checked,
    options: fixed.options,
    findings: [...checked.findings, ...fixed.findings],
    onCloth,
    leads: leadsOf(onCloth.flat().filter(isReady)),
  };
  const deadline = options.seconds === undefined ? Infinity : Date.now() + 1000 * Math.max(0, options.seconds);
  const stop = (): boolean => options.cancelled?.() === true || Date.now() >= deadline;
  const total = checked.demand.reduce((sum, piece) => sum + piece.count, 0);
  const few = fewTries(total);
  const tries = options.tries ?? (options.seconds === undefined ? few : Infinity);
  const limits = limitsOf(work);
  const line = (manner: LayOptions['manner']): Line => ({
    news: search(work, manner, limits, tries, { deadline, stop }),
    tries: 0,
    ended: false,
  });
  const own = line(options.manner);
  // Pieces that straight cuts part can be cut out with scissors, too. Folded cloth is cut through as it lies.
  const isFree = options.manner !== 'straight cuts' && checked.cloths.every(({ folded }) => !folded);
  const straight = isFree ? line('straight cuts') : undefined;

  let best: Layout | undefined;
  while (!own.ended || straight?.ended === false) {
    // Straight cuts have their turn when the free search has had a moment, and then one try in twenty.
    const theirs = own.ended || (own.tries >= few && straight && straight.tries < Math.max(few, own.tries / 19));
    const now = theirs && straight?.ended === false ? straight : own;
    const { value, done } = now.news.next();
    if (done) {
      now.ended = true;
      if (stop()) return;
    } else {
      now.tries = Math.max(now.tries, value.tries);
      const news = { tries: own.tries + (straight?.tries ?? 0) };
      if (value.layout && isBetter(value.layout, best)) {
        best = value.layout;
        yield { ...news, better: best };
        if (best.proven) return;
      } else yield news;
    }
  }
}

/** A search under way: how many layouts it has tried, and whether it has come to its end. */
type Line = { news: ReturnType<typeof search>; tries: number; ended: boolean };

/** Lays everything on one cloth after the other, at once without a search, and again with one. */
function* search(
  work: Work,
  manner: LayOptions['manner'],
  limits: Limits,
  tries: number,
  { deadline, stop }: { deadline: number; stop: () => boolean },
): Generator<{ tries: number; layout?: Layout }, void, void> {
  let tried = 0;
  for (const round of [0, tries]) {
    const sheets: Sheet[] = [];
    const left = work.demand.map((piece) => piece.count);
    let over = false;
    for (const [c, cloth] of work.cloths.entries()) {
      const most = cloth.count ?? (cloth.kind === 'pre-cut' ? Infinity : 1);
      for (let number = 1; number <= most && left.some((count) => count > 0); number++) {
        const straight = manner === 'straight cuts';
        const task = taskFor(work, c, left, { tries: round, straight, deadline, stop, first: round === 0 });
        if (!task) break;
        let last: BoxLayout | undefined;
        for (const laying of layPieces(task)) {
          if (typeof laying === 'number') yield { tries: tried + laying };
          else {
            last = laying;
            yield {
              tries: tried + laying.tries,
              layout: assemble(work, [...sheets, { cloth, number, laying }], limits),
            };
          }
        }
        if (!last || last.spots.length === 0) break;
        tried += last.tries;
        sheets.push({ cloth, number, laying: last });
        for (const { prepared: spot } of last.spots) left[spot.index] = Math.max(0, left[spot.index]! - spot.layers);
        over = stop();
      }
    }
    if (sheets.length === 0) yield { tries: tried, layout: assemble(work, sheets, limits) };
    if (over) return;
  }
}

/** How many layouts of boxes may be tried in the time of one round that moves outlines apart. */
const OUTLINE_COST = 20;

/** Rectangles as rectangles; with other outlines among them, first their boxes, then, if not too many, the outlines. */
function* layPieces(task: BoxTask): Generator<BoxLayout | number, void, void> {
  const many = task.pieces.reduce((sum, piece) => sum + piece.count, 0) > MOST_OUTLINES;
  if (task.straight || many || task.pieces.every((piece) => fillsItsBox(piece.prepared))) {
    yield* layBoxes(task);
    return;
  }
  let known: BoxLayout | undefined;
  for (const laying of layBoxes({ ...task, first: true, tries: 16 })) {
    if (typeof laying !== 'number') known = laying;
    yield laying;
  }
  // A try here moves every piece that overlaps: it takes far longer than laying boxes once.
  yield* layOutlines({ ...task, tries: task.tries / OUTLINE_COST }, known);
}

type Sheet = { cloth: Cloth; number: number; laying: BoxLayout };

type Work = {
  demand: Demand;
  cloths: readonly Cloth[];
  options: LayOptions;
  findings: Diagnostic[];
  /** For each cloth, each piece as it lies there, or why it does not. */
  onCloth: (PreparedPiece | Diagnostic)[][];
  leads: BoxTask['leads'];
};

/** The longest piece of each group that must match lies right on the repeat, the others as their marks ask. */
function leadsOf(pieces: readonly PreparedPiece[]): BoxTask['leads'] {
  const longest = new Map<string, PreparedPiece>();
  for (const one of pieces) {
    const group = one.piece.match?.group;
    if (group !== undefined && one.height > (longest.get(group)?.height ?? 0)) longest.set(group, one);
  }
  return new Map([...longest].map(([group, one]) => [group, one.piece.match!.at]));
}

const isReady = (one: PreparedPiece | Diagnostic): one is PreparedPiece => 'outline' in one;

/** Options that are no use are put right, each with a word. */
function soundOptions(options: LayOptions): { options: LayOptions; findings: Diagnostic[] } {
  const findings: Diagnostic[] = [];
  const amount = (name: string, value: number | undefined, most: number): number | undefined => {
    if (value === undefined || (value >= 0 && value <= most)) return value;
    findings.push({
      severity: 'error',
      place: ['layout', name],
      code: `bad ${name}`,
      message: `The ${name} must be 0 or more${most < Infinity ? ` and at most ${most}` : ''}; it is left out.`,
    });
    return undefined;
  };
  const { selling = {} } = options;
  return {
    options: {
      ...options,
      gap: amount('gap', options.gap, 1e6),
      edge: amount('edge', options.edge, 1e6),
      selling: {
        step: amount('step', selling.step, 1e6),
        shrinkage: amount('shrinkage', selling.shrinkage, MOST_SHRINKAGE),
        straightening: amount('straightening', selling.straightening, 1e6),
      },
    },
    findings,
  };
}

/** What is left of the demand as a task for one more of a cloth; undefined if none of it goes there. */
function taskFor(
  { demand, cloths, options, onCloth, leads }: Work,
  c: number,
  left: number[],
  how: { tries: number; straight: boolean; first: boolean; deadline: number; stop: () => boolean },
): BoxTask | undefined {
  const cloth = cloths[c]!;
  const room = roomOn(openUnlessFree(cloth, options), options);
  const pieces = onCloth[c]!.flatMap((one) =>
    isReady(one) && left[one.index]! > 0 ? [{ prepared: one, count: Math.ceil(left[one.index]! / one.layers) }] : [],
  );
  if (pieces.length === 0) return undefined;
  // Of the time left, a cloth takes its share of the area that is left to lay.
  const waiting = demand.reduce((sum, piece, i) => sum + area(piece.outline) * left[i]!, 0);
  const share = Math.min(1, (0.8 * room.width * room.height) / waiting);
  const now = Date.now();
  const until = how.deadline === Infinity ? Infinity : now + (how.deadline - now) * share;
  return {
    pieces,
    width: room.width,
    height: room.height,
    gap: options.gap ?? 0,
    repeat: cloth.repeat,
    leads,
    straight: how.straight,
    seed: options.seed ?? 1,
    tries: how.first ? 8 : how.tries,
    first: how.first,
    stop: () => how.stop() || Date.now() >= until,
  };
}

/** Straight cuts go through open cloth. */
const openUnlessFree = (cloth: Cloth, options: LayOptions): Cloth =>
  options.manner === 'straight cuts' ? { ...cloth, folded: false } : cloth;

/** Fewer pieces left over, then fewer pre-cuts, then less length. */
function isBetter(layout: Layout, best: Layout | undefined): boolean {
  if (!best) return true;
  const left = (one: Layout): number => one.left.reduce((sum, { count }) => sum + count, 0);
  const by = left(layout) - left(best) || layout.preCuts - best.preCuts;
  return by < 0 || (by === 0 && layout.length < best.length - 1e-6);
}

type Limits = { length: number; preCuts: number };

/** What no layout of what can be laid undercuts. */
function limitsOf({ demand, cloths, options, onCloth }: Work): Limits {
  const gap = options.gap ?? 0;
  const edge = options.edge ?? 0;
  const rooms = cloths.map((cloth) => roomOn(openUnlessFree(cloth, options), options));
  const layable = demand.map((piece, i) => (onCloth.some((one) => isReady(one[i]!)) ? piece.count : 0));
  if (layable.every((count) => count === 0)) return { length: 0, preCuts: 0 };
  const [only] = cloths;
  if (cloths.length === 1 && only!.kind !== 'offcut') {
    const room = rooms[0]!;
    const pieces = onCloth[0]!.flatMap((one) =>
      isReady(one) && layable[one.index]! > 0
        ? [{ prepared: one, count: Math.ceil(layable[one.index]! / one.layers) }]
        : [],
    );
    if (options.manner !== 'straight cuts' && !pieces.every((piece) => fillsItsBox(piece.prepared))) {
      // Outlines nest: only their area counts, and how long each is at the least.
      const total = pieces.reduce((sum, piece) => sum + piece.count * area(piece.prepared.outline), 0);
      const longest = Math.max(...pieces.map(({ prepared: one }) => leastHeight(one)));
      if (only!.kind === 'bolt') return { length: Math.max(total / room.width, longest) + 2 * edge, preCuts: 0 };
      return { length: 0, preCuts: Math.ceil(total / (room.width * room.height) - 1e-9) };
    }
    if (only!.kind === 'bolt') {
      // What lies on several bolts could lie on one, with a gap between: so many gaps less do on several.
      const spared = Math.max(0, gap - 2 * edge) * ((only!.count ?? 1) - 1);
      const longest = Math.max(...pieces.map(({ prepared: one }) => leastHeight(one)));
      return {
        length: Math.max(shortestLength(pieces, room.width, gap) - spared, longest) + 2 * edge,
        preCuts: 0,
      };
    }
    const units = lengthUnits(pieces.flatMap((piece) => [piece.prepared.width + gap, piece.prepared.height + gap]));
    const kinds = pieces.map((piece) => plainKind(piece.prepared, piece.count, gap, units.piece));
    return { length: 0, preCuts: boxesNeeded(kinds, units.cloth(room.width + gap), units.cloth(room.height + gap)) };
  }
  // Several cloths: what the others hold at most, by area.
  const total = demand.reduce((sum, piece, i) => sum + layable[i]! * area(opened(piece)), 0);
  const layersOn = (cloth: Cloth): number => (openUnlessFree(cloth, options).folded ? 2 : 1);
  const holds = cloths.map(
    (cloth, i) =>
      rooms[i]!.width * rooms[i]!.height * layersOn(cloth) * (cloth.count ?? (cloth.kind === 'pre-cut' ? Infinity : 1)),
  );
  const besides = (kind: Cloth['kind']): number =>
    Math.max(0, total - holds.reduce((sum, most, i) => (cloths[i]!.kind === kind ? sum : sum + most), 0));
  const largest = (kind: Cloth['kind'], of: (i: number) => number): number =>
    Math.max(0, ...cloths.map((cloth, i) => (cloth.kind === kind ? of(i) * layersOn(cloth) : 0)));
  const width = largest('bolt', (i) => rooms[i]!.width);
  const sheet = largest('pre-cut', (i) => rooms[i]!.width * rooms[i]!.height);
  return {
    length: width > 0 ? besides('bolt') / width : 0,
    preCuts: sheet > 0 ? Math.ceil(besides('pre-cut') / sheet - 1e-9) : 0,
  };
}

/** How long a piece is at the least, however it is turned. */
const leastHeight = (one: PreparedPiece): number =>
  one.angles.length > 2 ? Math.min(one.width, one.height) : one.height;

/** A half pattern stands for twice its area. */
const opened = (piece: Wanted): Wanted['outline'] =>
  piece.fold === undefined
    ? piece.outline
    : piece.outline.map((edge) => ({ ...edge, from: { x: edge.from.x * 2, y: edge.from.y } }));

function assemble(work: Work, sheets: readonly Sheet[], bound: Limits): Layout {
  const { demand, options } = work;
  const manner = options.manner ?? 'free';
  const counted = demand.map(() => 0);
  const cloths = sheets.map((sheet) => laidCloth(sheet, options, counted));
  const left = demand.flatMap((piece, i) =>
    counted[i]! < piece.count ? [{ piece: piece.name, count: piece.count - counted[i]! }] : [],
  );
  const length = cloths.reduce((sum, cloth) => (cloth.kind === 'bolt' ? sum + cloth.length : sum), 0);
  const preCuts = cloths.filter((cloth) => cloth.kind === 'pre-cut').length;
  const usable = cloths.reduce((sum, cloth) => sum + (cloth.to - cloth.from) * cloth.length, 0);
  const covered = cloths.reduce((sum, cloth) => sum + cloth.share * (cloth.to - cloth.from) * cloth.length, 0);
  const findings = [...work.findings, ...leftFindings(work, left)];
  return {
    manner,
    cloths,
    length,
    preCuts,
    bound,
    proven: left.length === 0 && cloths.length > 0 && length <= bound.length + SAME / 10 && preCuts <= bound.preCuts,
    share: usable > 0 ? covered / usable : 0,
    left,
    buy: toBuy(length, options.selling),
    findings,
  };
}

function laidCloth({ cloth, number, laying }: Sheet, options: LayOptions, counted: number[]): LaidCloth {
  const asLaid = openUnlessFree(cloth, options);
  const room = roomOn(asLaid, options);
  const edge = options.edge ?? 0;
  const folded = asLaid.folded === true;
  const placements = laying.spots.map((spot): Placement => placement(spot, room.left, edge, counted));
  const width = folded ? cloth.width / 2 : cloth.width;
  const [from, to] = folded ? [0, width - (cloth.selvage ?? 0)] : [cloth.selvage ?? 0, width - (cloth.selvage ?? 0)];
  const length = cloth.kind === 'bolt' ? (placements.length > 0 ? laying.length + 2 * edge : 0) : (cloth.length ?? 0);
  const covered = placements.reduce((sum, one) => sum + area(one.outline), 0);
  const fields = placements.map((one) => ({ name: `${one.piece} ${one.number}`, ...one.at, ...one.size }));
  const region = { name: cloth.name, x: 0, y: 0, width, height: cloth.kind === 'bolt' ? Infinity : length };
  return {
    cloth: cloth.name,
    kind: cloth.kind,
    number,
    width,
    from,
    to,
    length,
    folded,
    placements,
    cuts: options.manner === 'straight cuts' ? (cutsFor(region, fields) ?? []) : [],
    share: length > 0 ? covered / ((to - from) * length) : 0,
  };
}

function placement(
  { prepared: one, x, y, angle, mirrored: flipped }: PlacedPiece,
  left: number,
  edge: number,
  counted: number[],
): Placement {
  const { piece, index, layers } = one;
  const number = counted[index]! + 1;
  counted[index] = Math.min(piece.count, counted[index]! + layers);
  const mirrored = flipped ?? (layers === 1 && number > piece.count - (piece.mirrored ?? 0));
  // `one.outline` lies in the first of its angles already.
  let outline = rotate(one.outline, angle - one.angles[0]!);
  if (mirrored) outline = reflect(outline, { at: { x: 0, y: 0 }, angle: 90 });
  const box = bounds(outline);
  const at = { x: left + x, y: edge + y };
  return {
    piece: piece.name,
    number,
    angle,
    mirrored,
    outline: translate(outline, { x: at.x - box.x, y: at.y - box.y }),
    at,
    size: { width: box.width, height: box.height },
    layers,
  };
}

/** Why something is left over: it goes on no cloth, the repeat leaves it no place, or there is not enough. */
function leftFindings({ demand, cloths, onCloth }: Work, left: Layout['left']): Diagnostic[] {
  const findings: Diagnostic[] = [];
  let short = 0;
  for (const [i, piece] of demand.entries()) {
    const missing = left.find((one) => one.piece === piece.name)?.count ?? 0;
    if (missing === 0 || onCloth.length === 0) continue;
    const reasons = onCloth.map((cloth) => cloth[i]!);
    // The last cloth is the one that takes what is left; what stands in the way there is what to mend.
    const why = reasons.every((one) => !isReady(one)) ? reasons.at(-1) : undefined;
    // Of pre-cuts as many are taken as are needed: what is left all the same found no place on the repeat.
    const printed = cloths.find(
      (cloth, c) =>
        isReady(reasons[c]!) && cloth.kind === 'pre-cut' && cloth.count === undefined && cloth.repeat !== undefined,
    );
    if (why && !isReady(why)) findings.push(why);
    else if (piece.match && printed) findings.push(noPlaceToMatch(piece, printed));
    else short += missing;
  }
  if (short > 0)
    findings.push({
      severity: 'error',
      place: ['cloths'],
      code: 'not enough cloth',
      message: `There is not enough cloth: ${short} ${short === 1 ? 'piece is' : 'pieces are'} left over.`,
      fix: 'Add a cloth, or a bolt without a length.',
    });
  return findings;
}
