/** Makes a demand ready to be laid: which way pieces may lie, opened out or doubled, and what stands in the way. */
import { bounds, reflect, reflectPoint, rotate, sample, sides, translate } from '../geometry/index.ts';
import { type Diagnostic, capital, formatLength, SAME } from '../measure/index.ts';
import type { Outline, Point } from '../geometry/index.ts';
import type { Edition } from '../measure/index.ts';
import type { Cloth, Demand, LayOptions, Wanted } from './demand.ts';

/** A piece as it is laid on one cloth. */
export type PreparedPiece = {
  /** Its place in the demand. */
  index: number;
  piece: Wanted;
  /** The outline that is laid, its box's lower left corner at the origin, in the first of its angles. */
  outline: Outline;
  width: number;
  height: number;
  /** How it may be turned, in degrees; the first is how `outline` lies. */
  angles: number[];
  atFold: boolean;
  layers: 1 | 2;
};

/** More pieces than this of one demand are more than one layout is for. */
export const MOST_PIECES = 20_000;

/** How far chords may leave arcs, in mm. */
const TOLERANCE = 0.1;

const fits = (size: number, room: number): boolean => size <= room + SAME / 10;

/** The room on a cloth for pieces, edges left free: across, and along if it has an end. */
export function roomOn(cloth: Cloth, options: LayOptions): { width: number; height: number; left: number } {
  const { edge = 0 } = options;
  const selvage = cloth.selvage ?? 0;
  const usable = cloth.width - 2 * selvage;
  // Folded, the fold lies at the left; nothing is kept free there.
  if (cloth.folded) return { left: 0, width: usable / 2 - edge, height: (cloth.length ?? Infinity) - 2 * edge };
  return { left: selvage + edge, width: usable - 2 * edge, height: (cloth.length ?? Infinity) - 2 * edge };
}

/** How a piece may be turned on a cloth, in degrees, with its grain where it belongs. */
export function anglesOf(piece: Wanted, cloth: Cloth): number[] {
  const oneWay =
    cloth.nap === 'one way' || piece.nap === 'up' || (piece.match !== undefined && cloth.repeat !== undefined);
  switch (piece.grain ?? 'lengthwise') {
    case 'lengthwise':
      return oneWay ? [0] : [0, 180];
    case 'crosswise':
      return oneWay ? [90] : [90, 270];
    case 'bias':
      return oneWay ? [45] : [45, 135, 225, 315];
    case 'any':
      return oneWay ? [0] : [0, 90, 180, 270];
  }
}

/** The piece ready to be laid on a cloth, or what stands in the way. */
export function preparePiece(
  piece: Wanted,
  index: number,
  cloth: Cloth,
  options: LayOptions,
): PreparedPiece | Diagnostic {
  const edition = options.edition ?? 'metric';
  const doubled = cloth.folded === true && options.manner !== 'straight cuts';
  let outline = piece.outline;
  let atFold = false;
  let angles = anglesOf(piece, cloth);
  if (piece.fold !== undefined) {
    const fold = sides(outline).find((side) => side.name === piece.fold);
    if (!fold || fold.bulge !== 0)
      return problem(
        index,
        piece,
        'no fold edge',
        `${named(piece)} has no straight edge called “${piece.fold}” to lay on the fold.`,
      );
    if (doubled) {
      // The fold runs along the cloth at the left, so the piece is turned or flipped until its edge does too.
      const angle = [0, 90, 180, 270].find((turn) => {
        const [from, to] = [rotated(fold.from, turn), rotated(fold.to, turn)];
        return Math.abs(from.x - to.x) < SAME && to.y < from.y;
      });
      const allowed = angle !== undefined && angles.some((turn) => turn % 180 === angle % 180);
      if (!allowed)
        return problem(
          index,
          piece,
          'fold off grain',
          `The fold edge of ${named(piece)} does not run along the grain, as the fold of the cloth does.`,
          'Lay it on open cloth, or choose the other grain.',
        );
      // A half turn about a fold edge is made by flipping the doubled cloth, so nap stays as it is.
      if (angles.includes(angle)) angles = [angle];
      else {
        outline = reflect(outline, { at: { x: 0, y: 0 }, angle: angle % 180 === 0 ? 90 : 0 });
        angles = [(angle + 180) % 360];
      }
      atFold = true;
    } else outline = openedOut(outline, fold.from, fold.to, piece.fold);
  }
  const turned = rotate(outline, angles[0]!);
  const box = bounds(turned);
  const { width, height } = box;
  const room = roomOn(doubled ? cloth : { ...cloth, folded: false }, options);
  const quarter = angles.some((angle) => angle === (angles[0]! + 90) % 360);
  const goes = fits(width, room.width) && fits(height, room.height);
  const goesTurned = quarter && fits(height, room.width) && fits(width, room.height);
  if (!goes && !goesTurned) return tooLarge(index, piece, cloth, { width, height }, room, edition);
  return {
    index,
    piece,
    outline: translate(turned, { x: -box.x, y: -box.y }),
    width,
    height,
    angles,
    atFold,
    layers: doubled && !atFold ? 2 : 1,
  };
}

function rotated({ x, y }: Point, degrees: number): Point {
  if (degrees === 90) return { x: -y, y: x };
  if (degrees === 180) return { x: -x, y: -y };
  if (degrees === 270) return { x: y, y: -x };
  return { x, y };
}

/** A half pattern and its mirror image as one outline. */
function openedOut(half: Outline, from: Point, to: Point, fold: string): Outline {
  const angle = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  const start = half.findIndex((edge) => edge.name === fold) + 1;
  const open = [...half.slice(start), ...half.slice(0, start - 1)];
  const axis = { at: from, angle };
  // Walked backwards, the mirrored edges lead from the end of the open ones to their beginning.
  const mirrored = open.map((edge, i) => ({
    name: edge.name,
    from: reflectPoint(i + 1 < open.length ? open[i + 1]!.from : from, axis),
    bulge: edge.bulge,
  }));
  return [...open, ...mirrored.reverse()];
}

function tooLarge(
  index: number,
  piece: Wanted,
  cloth: Cloth,
  size: { width: number; height: number },
  room: { width: number; height: number },
  edition: Edition,
): Diagnostic {
  const say = (mm: number): string => formatLength(mm, edition);
  const tooWide = !fits(size.width, room.width);
  const [what, has, over] = tooWide
    ? ['wide', room.width, size.width - room.width]
    : ['long', room.height, size.height - room.height];
  const couldTurn = fits(size.height, room.width) && fits(size.width, room.height);
  const fix = couldTurn
    ? 'Turned by a quarter it would fit: let its grain be any, if the piece allows it.'
    : tooWide
      ? 'Join it from two pieces, or take wider cloth.'
      : 'Join it from two pieces, or take a longer cloth.';
  return {
    ...problem(
      index,
      piece,
      tooWide ? 'piece too wide' : 'piece too long',
      `${named(piece)} is ${say(tooWide ? size.width : size.height)} ${what}; ${cloth.name} has room for ${say(Math.max(0, has))}.`,
      fix,
    ),
    amount: over,
  };
}

/** The repeat is too high for a cloth: it leaves the piece no place there that matches its group. */
export const noPlaceToMatch = (piece: Wanted, cloth: Cloth): Diagnostic => ({
  severity: 'error',
  place: ['pieces', piece.name, 'match'],
  code: 'no place to match',
  message: `The repeat of ${cloth.name} leaves ${named(piece)} no place that matches its group.`,
  fix: 'Take a longer cloth, or let it lie unmatched.',
});

const named = (piece: Wanted): string => piece.label ?? piece.name;

function problem(index: number, piece: Wanted, code: string, message: string, fix?: string): Diagnostic {
  const place = ['pieces', piece.name || index];
  return {
    severity: 'error',
    place,
    code,
    message: capital(message),
    ...(fix ? { fix } : {}),
  };
}

/** Whether a piece is a rectangle along the cloth, so that its box is all of it. */
export const fillsItsBox = ({ outline, width, height }: PreparedPiece): boolean => {
  const points = sample(outline, TOLERANCE);
  let doubled = 0;
  for (const [i, a] of points.entries()) {
    const b = points[(i + 1) % points.length]!;
    doubled += a.x * b.y - b.x * a.y;
  }
  return Math.abs(doubled / 2 - width * height) <= 1e-9 * width * height;
};

/** What is wrong with a demand and cloths before anything is laid. Pieces and cloths that are wrong are left out. */
export function checkDemand(
  demand: Demand,
  cloths: readonly Cloth[],
  options: LayOptions,
): { demand: Demand; cloths: Cloth[]; findings: Diagnostic[] } {
  const findings: Diagnostic[] = [];
  const say = (place: (string | number)[], code: string, message: string, fix?: string): void => {
    findings.push({ severity: 'error', place, code, message, ...(fix ? { fix } : {}) });
  };
  let total = 0;
  const pieces = demand.map((piece, i): Wanted => {
    const place = ['pieces', piece.name || i];
    const none = { ...piece, count: 0 };
    if (!Number.isInteger(piece.count) || piece.count < 0) {
      say([...place, 'count'], 'count', `Give ${named(piece)} a whole number of pieces, 0 or more.`);
      return none;
    }
    const points = sample(piece.outline, TOLERANCE);
    const box = bounds(piece.outline);
    if (
      points.length < 3 ||
      !points.every((p) => Number.isFinite(p.x) && Number.isFinite(p.y)) ||
      !(box.width > SAME && box.height > SAME)
    ) {
      say(place, 'no outline', `${named(piece)} has no outline to lay.`);
      return none;
    }
    if (total + piece.count > MOST_PIECES) {
      say([...place, 'count'], 'too many', `These are more than ${MOST_PIECES} pieces; lay them in several layouts.`);
      return none;
    }
    total += piece.count;
    return piece;
  });
  if (findings.length === 0 && total === 0)
    findings.push({
      severity: 'note',
      place: ['pieces'],
      code: 'nothing to lay',
      message: 'There is no piece to lay.',
    });

  const usable = cloths.filter((cloth, i) => {
    const place = ['cloths', cloth.name || i];
    const before = findings.length;
    const selvage = cloth.selvage ?? 0;
    if (!(cloth.width > 0) || !Number.isFinite(cloth.width))
      say([...place, 'width'], 'cloth width', `Give ${cloth.name} a width above 0.`);
    else if (!(selvage >= 0) || !(cloth.width - 2 * selvage - 2 * (options.edge ?? 0) > SAME))
      say([...place, 'selvage'], 'no width left', `Nothing is left of the width of ${cloth.name} between its edges.`);
    if (cloth.length !== undefined && !(cloth.length > 0))
      say([...place, 'length'], 'cloth length', `Give ${cloth.name} a length above 0.`);
    else if (cloth.kind !== 'bolt' && cloth.length === undefined)
      say([...place, 'length'], 'cloth length', `Say how long ${cloth.name} is; only a bolt goes on.`);
    if (cloth.count !== undefined && (!Number.isInteger(cloth.count) || cloth.count < 0))
      say([...place, 'count'], 'cloth count', `Give a whole number of ${cloth.name}, 0 or more.`);
    if (cloth.repeat !== undefined && (!(cloth.repeat > SAME) || !Number.isFinite(cloth.repeat)))
      say(
        [...place, 'repeat'],
        'repeat',
        `The repeat of ${cloth.name} must be a length above 0.`,
        'Leave it out where nothing repeats.',
      );
    return findings.length === before;
  });
  if (cloths.length === 0)
    say(['cloths'], 'no cloth', 'There is no cloth to lay on.', 'Add a bolt, a pre-cut or an offcut.');

  const matched = pieces.filter((piece) => piece.match && piece.count > 0);
  if (matched.length > 0 && usable.length > 0 && usable.every((cloth) => cloth.repeat === undefined))
    findings.push({
      severity: 'warning',
      place: ['pieces', matched[0]!.name, 'match'],
      code: 'nothing to match',
      message: 'Pieces are to match, and no cloth has a repeat.',
      fix: 'Give the cloth the height of its repeat.',
    });
  return { demand: pieces, cloths: usable, findings };
}
