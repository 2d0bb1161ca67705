/**
 * What must hold of every step, whatever it does, told from the plies before and after and from nothing that made them.
 * Each law gives what breaks it, in a line each.
 */
import { DART } from '../../../src/core/cloth/dart.ts';
import { area, contains, straightened, union } from '../../../src/core/index.ts';
import { cutApartIn } from '../../../src/core/cloth/work.ts';
import { layerMap, layersAt } from '../../../src/core/cloth/index.ts';
import { openingsOf } from '../../../src/core/cloth/openings.ts';
import { inside, tangle } from '../../core/cloth/order.ts';
import type { Pattern, Point, Step } from '../../../src/core/index.ts';
import type { Ply, Work } from '../../../src/core/cloth/index.ts';

/** The same length, in mm. */
const SAME = 0.05;
/** The same area, in mm²: what cutting with a clipping library may lose. */
const SAME_AREA = 0.05;

const { abs, hypot, max, min } = Math;

/** Works that a step takes, each as often as it is taken. */
export const takenBy = (step: Step): Work[] => step.takes.map((name) => step.before[name]!);

const cutAwayIn = (works: readonly Work[]): number =>
  works.flatMap(({ done }) => done).reduce((sum, { cutAway = 0 }) => sum + cutAway, 0);

const ringArea = (ring: readonly { from: Point }[]): number => {
  let twice = 0;
  ring.forEach(({ from: a }, i) => {
    const b = ring[(i + 1) % ring.length]!.from;
    twice += a.x * b.y - a.y * b.x;
  });
  return twice / 2;
};

const clothOf = ({ plies }: Work): number =>
  plies.reduce((sum, { outline, fullness }) => sum + ringArea(outline) * fullness, 0);

/** No number of a step is none. */
export function finite(step: Step): string[] {
  const found: string[] = [];
  const seen = new Set<unknown>();
  const look = (value: unknown, where: string): void => {
    if (typeof value === 'number' && !Number.isFinite(value)) found.push(`${where} is ${value}`);
    if (typeof value !== 'object' || value === null || seen.has(value)) return;
    seen.add(value);
    if (value instanceof Map) for (const [key, one] of value) look(one, `${where}.${String(key)}`);
    else for (const [key, one] of Object.entries(value)) look(one, `${where}.${key}`);
  };
  const { after, size, stitches, minutes, depth, layersMost, thicknessMost } = step;
  look({ after, size, stitches, minutes, depth, layersMost, thicknessMost }, 'step');
  return found.slice(0, 1);
}

const key = ({ piece, copy = 0 }: Ply): string => `${piece} ${copy + 1}`;

/** Cloth is neither made nor lost: what is not cut away is still there, of every piece. */
export function clothStays(step: Step, cuts: boolean): string[] {
  const works = takenBy(step);
  const before = works.reduce((sum, work) => sum + clothOf(work), 0);
  const many = cutApartIn(works, step.after)?.many ?? 1;
  const cut = many * cutAwayIn([step.after]) - cutAwayIn(works);
  const lost = before - cut - many * clothOf(step.after);
  const found: string[] = [];
  if (abs(lost) > SAME_AREA) found.push(`${lost.toFixed(3)} mm² of cloth are lost`);
  if (cut < -SAME_AREA) found.push(`the book says that ${cut.toFixed(3)} mm² were cut away`);
  if (cut > SAME_AREA && !cuts) found.push(`${cut.toFixed(1)} mm² are cut away by a verb that does not cut`);
  const count = (plies: readonly Ply[]) => new Set(plies.map(key)).size;
  const pieces = works.reduce((sum, { plies }) => sum + count(plies), 0);
  const left = count(step.after.plies);
  if (left > pieces || (left < pieces && !cuts)) found.push(`${pieces} pieces went in, ${left} came out`);
  return found;
}

/** The point of the piece, as it was cut, that lies at a point now. */
function uncut({ a, b, c, d, e, f }: Ply['transform'], { x, y }: Point): Point {
  const size = a * d - b * c;
  return { x: (d * (x - e) - c * (y - f)) / size, y: (a * (y - f) - b * (x - e)) / size };
}

function away(p: Point, ring: readonly { from: Point }[]): number {
  return min(
    ...ring.map(({ from: a }, i) => {
      const b = ring[(i + 1) % ring.length]!.from;
      const [x, y] = [b.x - a.x, b.y - a.y];
      const size = x * x + y * y;
      const along = size === 0 ? 0 : min(1, max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / size));
      return hypot(p.x - a.x - x * along, p.y - a.y - y * along);
    }),
  );
}

const isOn = (ring: readonly { from: Point }[], p: Point): boolean => inside(ring, p) || away(p, ring) < SAME;

/**
 * Each ply is a part of its piece as it was cut: a ring that does not cross itself, the right side up or turned over as
 * it lies, on no place of the piece that another ply has.
 */
export function partsOfPieces({ after }: Step, pattern: Pattern): string[] {
  const found: string[] = [];
  const parts = new Map<string, { plies: Ply[]; rings: { name: string; from: Point; bulge: number }[][] }>();
  for (const ply of after.plies) {
    const piece = pattern.pieces[ply.piece];
    const { a, b, c, d } = ply.transform;
    const size = a * d - b * c;
    // What goes along a curve or round a cord tells by no one transform where it lay on its strip.
    if (abs(abs(size) * ply.fullness - 1) > 1e-6 && !ply.bent)
      found.push(`ply ${ply.id} is ${size} times as large as it was cut`);
    if (size > 0 !== (ply.face === 'right')) found.push(`ply ${ply.id} shows its ${ply.face} side, and lies otherwise`);
    if (!(ringArea(ply.outline) > 0)) found.push(`ply ${ply.id} has no area`);
    if (crosses(ply.outline)) found.push(`the outline of ply ${ply.id} crosses itself`);
    const back = ply.outline.map(({ name, from }) => ({ name, from: uncut(ply.transform, from), bulge: 0 }));
    const cut = piece && straightened(piece.cutOutline, SAME);
    const off = cut && !ply.bent && back.find(({ from }) => !isOn(cut, from));
    if (!piece) found.push(`ply ${ply.id} is of no piece`);
    if (off) found.push(`ply ${ply.id} has cloth where ${ply.piece} was never cut: ${off.from.x}, ${off.from.y}`);
    const all = parts.get(key(ply)) ?? { plies: [], rings: [] };
    all.plies.push(ply);
    all.rings.push(size > 0 ? back : back.reverse());
    parts.set(key(ply), all);
  }
  for (const [name, { plies, rings }] of parts) {
    if (plies.some(({ bent }) => bent)) continue;
    // A piece with a dart does not lie flat: what is beside the dart is drawn in, and tells by no one transform where it lay.
    if (rings.length < 2 || rings.some((ring) => ring.some((edge) => edge.name === DART))) continue;
    const sum = rings.reduce((all, ring) => all + abs(ringArea(ring)), 0);
    const whole = union(rings).reduce((all, ring) => all + area(ring), 0);
    if (sum - whole > 0.5) found.push(`${(sum - whole).toFixed(2)} mm² of ${name} are there twice`);
  }
  return found;
}

/** Whether two edges of a ring cross, and do not only touch. */
function crosses(ring: readonly { from: Point }[]): boolean {
  const n = ring.length;
  const side = (a: Point, b: Point, p: Point) => {
    const off = ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / hypot(b.x - a.x, b.y - a.y);
    return abs(off) < 0.001 ? 0 : Math.sign(off);
  };
  for (let i = 0; i < n; i++) {
    const [a, b] = [ring[i]!.from, ring[(i + 1) % n]!.from];
    for (let k = i + 2; k < n; k++) {
      const [c, d] = [ring[k]!.from, ring[(k + 1) % n]!.from];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return true;
    }
  }
  return false;
}

/** Cloth hangs together: where a ply ends inside its piece, the piece goes on at the same place, or was cut there. */
export function untorn({ after }: Step, pattern: Pattern): string[] {
  const isDarted = (ply: Ply) => ply.outline.some(({ name }) => name === DART);
  const darted = new Set(after.plies.flatMap((ply) => (isDarted(ply) ? [key(ply)] : [])));
  for (const ply of after.plies) {
    const piece = pattern.pieces[ply.piece];
    if (!piece || ply.bent || darted.has(key(ply))) continue;
    const cut = straightened(piece.cutOutline, SAME);
    for (const [i, edge] of ply.outline.entries()) {
      if (['cut', 'clip', 'gathers'].includes(edge.name)) continue;
      const to = ply.outline[(i + 1) % ply.outline.length]!.from;
      if (hypot(to.x - edge.from.x, to.y - edge.from.y) < 1) continue;
      const middle = { x: (edge.from.x + to.x) / 2, y: (edge.from.y + to.y) / 2 };
      if (away(uncut(ply.transform, middle), cut) < SAME) continue;
      if (edge.fold === undefined) {
        // Cut along its own edge, as by trimming, it keeps the edge's name.
        if (cutAwayIn([after]) > 0) continue;
        return [`ply ${ply.id} of ${ply.piece} ends at ${edge.name} inside the piece, and was not cut there`];
      }
      const goesOn = after.plies.some(
        (other) =>
          other !== ply &&
          other.outline.some(({ fold }) => fold === edge.fold) &&
          key(other) === key(ply) &&
          away(middle, other.outline) < SAME &&
          hypot(
            uncut(other.transform, middle).x - uncut(ply.transform, middle).x,
            uncut(other.transform, middle).y - uncut(ply.transform, middle).y,
          ) < SAME,
      );
      if (!goesOn && cutAwayIn([after]) === 0)
        return [`ply ${ply.id} of ${ply.piece} is torn off at its fold ${edge.fold}`];
    }
  }
  return [];
}

/** No ply passes through another. */
export const untangled = ({ after }: Step): string[] => {
  const found = tangle(after);
  return found === undefined ? [] : [found];
};

const rowLength = ({ runs }: Work['stitches'][number]): number =>
  runs.reduce((sum, { from, to }) => sum + hypot(to.x - from.x, to.y - from.y), 0);

/** Rows lie on the plies that they hold; none is lost but basting and what is cut away. */
export function rowsStay(step: Step, cuts: boolean): string[] {
  const { after } = step;
  const found: string[] = [];
  const plies = new Map(after.plies.map((ply) => [ply.id, ply]));
  for (const { id, kind, runs } of after.stitches) {
    for (const { from, to, plies: held } of runs) {
      if (held.length === 0) found.push(`row ${id} (${kind}) holds nothing`);
      for (const number of held) {
        const ply = plies.get(number);
        const off = [0.1, 0.5, 0.9]
          .map((t) => ({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t }))
          .find((p) => ply && !isOn(ply.outline, p));
        if (!ply) found.push(`row ${id} (${kind}) holds ply ${number}, which is not there`);
        else if (off) {
          found.push(
            `row ${id} (${kind}) runs beside ply ${number} of ${ply.piece}, which it holds: ${off.x}, ${off.y}`,
          );
        }
      }
    }
  }
  if (found.length > 1) found.length = 1;
  const long = (works: readonly Work[]) => {
    const kinds = new Map<string, number>();
    for (const stitch of works.flatMap(({ stitches }) => stitches)) {
      kinds.set(stitch.kind, (kinds.get(stitch.kind) ?? 0) + rowLength(stitch));
    }
    return kinds;
  };
  const isLoose = (kind: string) => kind === 'baste' || kind === 'gather';
  const drawnUp = after.done.at(-1)?.drawnUp !== undefined;
  const now = long([after]);
  for (const [kind, length] of long(takenBy(step))) {
    const lost = length - (now.get(kind) ?? 0);
    if (lost > SAME && !isLoose(kind) && !cuts && !drawnUp)
      found.push(`${lost.toFixed(2)} mm of ${kind} rows are lost`);
  }
  for (const row of step.stitches) {
    const stitch = after.stitches.find(({ id }) => id === row.id);
    if (!(row.length > 0)) found.push(`row ${row.id} (${row.kind}) is sewn nowhere`);
    if (!stitch) found.push(`row ${row.id} of the ledger is not there`);
    else if (abs(rowLength(stitch) - row.length) > SAME) found.push(`row ${row.id} is not as long as the ledger says`);
  }
  return found;
}

/** Hardware sits on its plies; none is lost but what is cut away. */
export function marksStay(step: Step, cuts: boolean): string[] {
  const { after } = step;
  const found: string[] = [];
  const before = takenBy(step).reduce((sum, { marks }) => sum + marks.length, 0);
  if (after.marks.length < before && !cuts) found.push(`${before - after.marks.length} marks are lost`);
  for (const { kind, name, at, plies } of after.marks) {
    if (kind !== 'hardware') continue;
    const off = plies.find((id) => {
      const ply = after.plies.find((one) => one.id === id);
      return !ply || !isOn(ply.outline, at);
    });
    if (plies.length === 0 || off !== undefined) found.push(`${name} sits on nothing, or beside ply ${off}`);
  }
  return found.slice(0, 1);
}

/** Layers counted are the plies that cover a point; the regions of the layer map are the work. */
export function layersCounted({ after, layersMost }: Step, points: readonly Point[]): string[] {
  const found: string[] = [];
  for (const at of points) {
    const there = after.plies.filter(({ outline }) => inside(outline, at));
    const counted = layersAt(after, at);
    const isClear = after.plies.every(({ outline }) => away(at, outline) > 0.001);
    if (isClear && counted.map(({ id }) => id).join() !== there.map(({ id }) => id).join())
      found.push(`${there.length} plies cover ${at.x}, ${at.y}, and ${counted.length} are counted`);
    if (isClear && there.length > layersMost && isWide(there, at))
      found.push(`${there.length} plies cover ${at.x}, ${at.y}, and the most is said to be ${layersMost}`);
  }
  const regions = layerMap(after);
  const sum = regions.reduce((all, region) => all + region.area * region.plies.length, 0);
  const cloth = after.plies.reduce((all, { outline }) => all + ringArea(outline), 0);
  // The map takes corners that lie nearer together than a hair for one.
  if (abs(sum - cloth) > 0.5 + 0.01 * after.plies.length)
    found.push(`the layer map has ${sum.toFixed(2)} mm² of plies, and there are ${cloth.toFixed(2)}`);
  const most = max(0, ...regions.map(({ plies }) => plies.length));
  if (layersMost > most) found.push(`the most is said to be ${layersMost}, and the map has ${most}`);
  return found.slice(0, 2);
}

/** A heap of plies that is more than a slip of the arithmetic wide. */
const isWide = (plies: readonly Ply[], at: Point): boolean => plies.every(({ outline }) => away(at, outline) > 0.1);

/** Points inside plies of a work, so many of them. */
export function pointsIn({ plies }: Work, many: number, share: () => number): Point[] {
  const points: Point[] = [];
  for (let i = 0; i < many && plies.length > 0; i++) {
    const { outline } = plies[Math.floor(share() * plies.length)]!;
    const [xs, ys] = [outline.map(({ from }) => from.x), outline.map(({ from }) => from.y)];
    const [left, low] = [min(...xs), min(...ys)];
    const at = { x: left + share() * (max(...xs) - left), y: low + share() * (max(...ys) - low) };
    if (inside(outline, at)) points.push(at);
  }
  return points;
}

/**
 * The size that is told is the box round the plies, but where boxed corners stand. What was laid on the work and stands
 * out of an opening over no more than half of it is a handle, and counts as far as the opening.
 */
export function sized({ after, size, depth }: Step): string[] {
  if (depth > 0 || after.marks.some(({ kind }) => kind === 'box')) return [];
  const points = after.plies.flatMap((ply) => {
    // Piping stands out beyond the seams that are measured.
    if (ply.piping) return [];
    const out = openingsOf(after).filter((opening) => isHandle(ply, after, opening));
    return ply.outline.map(({ from }) => out.reduce(asFarAs, from));
  });
  const span = (all: number[]) => max(...all) - min(...all);
  const [wide, high] = [span(points.map(({ x }) => x)), span(points.map(({ y }) => y))];
  return abs(wide - size.width) < 1e-6 && abs(high - size.height) < 1e-6
    ? []
    : [`it is ${wide} x ${high} mm, and said to be ${size.width} x ${size.height}`];
}

type Ends = { readonly from: Point; readonly to: Point };

/** A point, or where it stands out beyond an opening, which has its cloth on the left, the place on its line. */
function asFarAs(p: Point, { from, to }: Ends): Point {
  const [x, y] = [to.x - from.x, to.y - from.y];
  if (x * (p.y - from.y) - y * (p.x - from.x) >= 0) return p;
  const along = ((p.x - from.x) * x + (p.y - from.y) * y) / (x * x + y * y);
  return { x: from.x + x * along, y: from.y + y * along };
}

/** Whether a ply belongs to something laid that covers some, and no more than half, of the places along an opening. */
function isHandle({ laid = [] }: Ply, { plies, stitches }: Work, { from, to }: Ends): boolean {
  const put = stitches.flatMap(({ round }) => (round?.put ? [`${round.put.work} ${round.put.nth}`] : []));
  const places = Array.from({ length: 400 }, (_, i) => (i + 0.5) / 400);
  return laid
    .map(({ work, nth }) => `${work} ${nth}`)
    .filter((name) => !put.includes(name))
    .some((name) => {
      const own = plies.filter((ply) => ply.laid?.some(({ work, nth }) => `${work} ${nth}` === name));
      const share = places.filter((t) => {
        const at = { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
        return own.some(({ outline }) => inside(outline, at));
      }).length;
      return share > 0 && share <= places.length / 2;
    });
}

export { away, contains, inside, isOn, key, uncut };
