/** What is too thick to sew, too large to turn, or has too little to hold on to. */
import { area, leftOf, lineThrough } from '../../geometry/index.ts';
import { boxOf } from '../../cloth/size.ts';
import { covers } from '../../cloth/ring.ts';
import { type Diagnostic, type Place, quote, SAME } from '../../measure/index.ts';
import { placeFields } from '../../steps/places.ts';
import { sayIn, sayThickness } from './say.ts';
import { layersInWords, size } from '../../cloth/index.ts';
import { thicknessOf } from './thickness.ts';
import { settings } from '../../steps/tools.ts';
import { verbNamed } from '../../steps/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Mark, Stitch, Work } from '../../cloth/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { SewnRow, Step } from '../step.ts';

export const checkStack = (pattern: Pattern, steps: readonly Step[]): Diagnostic[] =>
  steps.flatMap((step) => [
    ...tooThick(pattern, step),
    ...gapTooSmall(pattern, step),
    ...hardware(pattern, step),
    ...sewnOver(pattern, step),
  ]);

/** Of the rows a step sews by machine, the thickest one that does not go under the presser foot. */
function tooThick(pattern: Pattern, step: Step): Diagnostic[] {
  const { lifts, source } = pattern.making!.machine;
  const byMachine = step.stitches.filter((row) => !row.class.startsWith('2'));
  const thickest = byMachine.reduce<SewnRow | undefined>(
    (most, row) => (row.thickness > (most?.thickness ?? 0) ? row : most),
    undefined,
  );
  if (!thickest || thickest.thickness <= lifts + 1e-6) return [];
  const { thickness, at } = thickest;
  const message =
    `This row goes through ${layersInWords(thickest)}, ${sayThickness(thickness)} thick, ${placeIn(pattern, step.after, at)}. ` +
    `The machine takes ${sayThickness(lifts)} (${source}).`;
  const fix =
    thickest.kind === 'seam'
      ? 'Keep interfacing out of the seam, or move folds away from it. A longer stitch and a larger needle help.'
      : 'Grade or clip the allowances, or leave this stretch out. A longer stitch and a larger needle help.';
  return [{ severity: 'warning', place: step.place, code: 'too-thick', message, fix, amount: thickness - lifts }];
}

/** Where a point of a work is, as one would show it with two rulers. */
function placeIn(pattern: Pattern, work: Work, { x, y }: Point): string {
  const say = sayIn(pattern);
  const xs = work.plies.flatMap((ply) => ply.outline.map((edge) => edge.from.x));
  const ys = work.plies.flatMap((ply) => ply.outline.map((edge) => edge.from.y));
  const [left, right] = [x - Math.min(...xs), Math.max(...xs) - x];
  const [low, high] = [y - Math.min(...ys), Math.max(...ys) - y];
  const across = left <= right ? `${say(left)} from the left` : `${say(right)} from the right`;
  const up = low <= high ? `${say(low)} from the bottom` : `${say(high)} from the top`;
  return `${across} and ${up}`;
}

/**
 * Crumpled cloth takes about twice the room of cloth lying flat. From memory, as the rule below: a bundle goes through
 * a gap when the gap, opened to a ring, is as wide as the bundle rolled up along its longer side.
 */
const CRUMPLED = 2;

/** The shortest gap in mm that a work goes through. */
export function leastGap(pattern: Pattern, work: Work): number {
  const volume = work.plies.reduce((sum, ply) => sum + area(ply.outline) * thicknessOf(pattern, [ply]), 0);
  const { width, height } = size(work);
  // A ring of twice the gap round a bundle of this section: 2 gap = 2 √(π section).
  return Math.sqrt(Math.PI * ((CRUMPLED * volume) / Math.max(width, height)));
}

function gapTooSmall(pattern: Pattern, step: Step): Diagnostic[] {
  if (!verbNamed(step.verb).turnsOut) return [];
  const work = Object.values(step.before)[0]!;
  const rows = work.stitches.filter(({ round }) => round !== undefined);
  // One in another, both are turned through the gap that one of them has.
  const isJoined = work.stitches.some(({ joins }) => joins !== undefined);
  const gap = openingOf(isJoined ? rows.find(({ round }) => round!.gap && !round!.gap.closed) : rows.at(-1));
  const least = leastGap(pattern, work);
  // Without any gap it was turned between parts that overlap, which lie open all along.
  if (gap === undefined || gap === 0 || gap >= least) return [];
  const say = sayIn(pattern);
  const message = `The gap of ${say(gap)} is too small to turn ${quote(step.takes[0]!)} through.`;
  const fix = `Leave ${say(roundedUp(pattern, least))} or more.`;
  return [{ severity: 'warning', place: step.place, code: 'gap-too-small', message, fix, amount: least - gap }];
}

/** Half inches or half centimetres are enough for a gap. */
const roundedUp = ({ edition }: Pattern, mm: number): number => {
  const mark = edition === 'inch' ? 12.7 : 5;
  return Math.ceil(mm / mark) * mark;
};

/** The gap, or the longest edge that was left open. */
function openingOf(stitch: Stitch | undefined): number | undefined {
  if (!stitch?.round) return undefined;
  const { ring, allowances, folds, gap } = stitch.round;
  const open = ring.map((edge, i) => {
    const to = ring[(i + 1) % ring.length]!.from;
    return allowances[i] === 0 && folds?.[i] !== true ? Math.hypot(to.x - edge.from.x, to.y - edge.from.y) : 0;
  });
  const left = gap ? Math.hypot(gap.to.x - gap.from.x, gap.to.y - gap.from.y) : 0;
  return Math.max(left, ...open);
}

/** Hardware keeps this far from seams, in mm: its prongs need flat cloth. Common practice, no source. */
const CLEAR = 4;
/** Fewer layers than this tear out. Common practice, no source. */
const LAYERS = 2;

function hardware(pattern: Pattern, step: Step): Diagnostic[] {
  if (!verbNamed(step.verb).setsHardware) return [];
  const mark = step.after.marks.at(-1);
  if (!mark) return [];
  const findings: Diagnostic[] = [];
  const say = sayIn(pattern);
  const material = pattern.materials[mark.name]?.material;
  const kind = material?.hardware;
  if (kind !== undefined && kind !== 'zip' && settings[kind].slides) {
    const { width, height } = boxOf(step.before[step.takes[0]!]!.plies);
    const wide = Math.min(width, height);
    if (material?.across === undefined || wide <= material.across + SAME) return [];
    const message = `${quote(mark.name)} takes a strap of ${say(material.across)}, and this one is ${say(wide)} wide.`;
    const fix = 'Make the strap narrower, or take a wider one.';
    return [{ severity: 'error', place: step.place, code: 'too-wide', message, fix, amount: wide - material.across }];
  }
  const near = nearestRow(step.after, mark);
  if (near < CLEAR) {
    const message = `${quote(mark.name)} sits ${say(near)} from a row of stitches. It needs ${say(CLEAR)} of flat cloth around it.`;
    findings.push({
      severity: 'warning',
      place: saidAt(step),
      code: 'hardware-on-seam',
      message,
      fix: 'Move it off the seam.',
      amount: CLEAR - near,
    });
  }
  if (mark.plies.length < LAYERS) {
    const message = `${quote(mark.name)} goes through one layer only, and tears out of it.`;
    findings.push({
      severity: 'warning',
      place: step.place,
      code: 'too-few-layers',
      message,
      fix: 'Fuse interfacing behind it, or set it through one layer more.',
    });
  }
  return findings;
}

/** Hardware that was set before, and ends in the allowance of a seam or under a row. */
function sewnOver(pattern: Pattern, step: Step): Diagnostic[] {
  const { after, before, place } = step;
  const rows = after.stitches.filter(
    ({ id, kind }) => kind !== 'baste' && kind !== 'gather' && step.stitches.some((row) => row.id === id),
  );
  const known = Object.values(before).reduce((sum, { done }) => sum + done.length, 0);
  const allowance = Math.max(0, ...after.done.slice(known).flatMap(({ met = [] }) => met.map((one) => one.allowance)));
  const there = Object.values(before).flatMap(({ marks }) => marks.map((mark) => mark.step));
  return after.marks.flatMap((mark): Diagnostic[] => {
    if (mark.kind !== 'hardware' || mark.slides || mark.step === undefined || !there.includes(mark.step)) return [];
    if (rows.some((row) => isInAllowance(after, mark, row, allowance))) {
      const message = `${quote(mark.name)} lies in the allowance of this seam, and ends inside.`;
      const fix = 'Set it farther from the edge, or after this seam.';
      return [{ severity: 'error', place, code: 'hardware-in-seam', message, fix }];
    }
    const near = nearestRow({ ...after, stitches: rows }, mark);
    const across = pattern.materials[mark.name]?.material?.across ?? 0;
    if (near >= Math.max(CLEAR, across / 2)) return [];
    const message = `This row runs over ${quote(mark.name)}, or so near to it that the presser foot does not pass.`;
    const fix = 'Sew the row first, or farther away.';
    return [{ severity: 'error', place, code: 'hardware-on-seam', message, fix, amount: CLEAR - near }];
  });
}

/** Whether a mark lies beyond a seam: outside the ring of a pair sewn round, or where its ply reaches no farther than the allowance. */
function isInAllowance(
  { plies }: Work,
  { at, plies: own }: Mark,
  { round, kind, runs }: Stitch,
  allowance: number,
): boolean {
  if (round) return !covers(round.ring, at);
  if (kind !== 'seam' || allowance === 0) return false;
  return runs.some(({ from, to }) => {
    const line = lineThrough(from, to);
    const side = Math.sign(leftOf(line, at));
    const off = distanceTo(at, from, to);
    if (off > allowance + SAME) return false;
    return own.some((id) => {
      const outline = plies.find((ply) => ply.id === id)?.outline ?? [];
      return outline.length > 0 && outline.every((edge) => side * leftOf(line, edge.from) <= allowance + SAME);
    });
  });
}

/** The field that says where it is set. */
function saidAt({ instruction, place }: Step): Place {
  const said: Readonly<Record<string, unknown>> = instruction;
  const field = [...Object.keys(placeFields), 'meets', 'at'].find((name) => said[name] !== undefined);
  return field === undefined ? place : [...place, field];
}

function nearestRow(work: Work, { at, plies }: Mark): number {
  const rows = work.stitches.filter(({ kind }) => kind !== 'baste' && kind !== 'gather');
  const runs = rows.flatMap((stitch) => stitch.runs.filter((run) => run.plies.some((ply) => plies.includes(ply))));
  return Math.min(Infinity, ...runs.map(({ from, to }) => distanceTo(at, from, to)));
}

function distanceTo({ x, y }: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / length));
  return Math.hypot(a.x + t * dx - x, a.y + t * dy - y);
}
