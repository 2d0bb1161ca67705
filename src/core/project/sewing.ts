/** How a machine is set for a step: stitch and its length, needle, foot. The machine's manual and a scrap go first. */
import { pipingLoose } from '../cloth/piping.ts';
import { feet, verbNamed } from '../steps/index.ts';
import { materialIn } from './steps/thickness.ts';
import { needleWords, suits, type Suits, type ThicknessRange } from './needle.ts';
import type { Always, Foot, Instruction } from '../steps/index.ts';
import type { Edition } from '../measure/index.ts';
import type { Material, Pattern } from './pattern.ts';
import type { SewnRow } from './step.ts';
import type { StitchKind, Work } from '../cloth/index.ts';

/** A stitch to set, and its length in mm, from and to; undefined where the machine has one of its own. */
export type SetStitch = { name: string; length?: ThicknessRange };

export type Sewing = {
  /** Each once, in the order in which they are sewn. */
  stitches: SetStitch[];
  /** For the heaviest row that is sewn by machine; none where all is sewn by hand or by an overlock. */
  needle?: Suits;
  /** In words: standard foot. */
  foot?: string;
};

/** Stitch lengths that do not go by the layers, in mm: basting and gathers (course notes on stitch lengths). */
const long: Partial<Record<StitchKind, ThicknessRange>> = { baste: [4, 5], gather: [3, 4] };

const names: Partial<Record<StitchKind, string>> = {
  zigzag: 'zigzag stitch',
  overlock: 'overlock, on a machine of its own',
  slipstitch: 'slip stitch, by hand',
};

/** What the foot and the stitch follow from beside the rows. */
type Around = { pattern: Pattern; materials: readonly Material[]; always: Always };

/**
 * How the machine is set for what a step sews; undefined where it sews nothing.
 *
 * @param taken the works that the step takes
 */
export function sewingOf(
  step: Instruction,
  rows: readonly SewnRow[],
  taken: readonly Work[],
  { pattern, materials, always }: Around,
): Sewing | undefined {
  if (rows.length === 0) return undefined;
  const own = always['stitch length'];
  const { foot: needed } = verbNamed(step.verb);
  const stitches = rows.map((row): SetStitch => {
    const name = names[row.kind];
    if (row.kind === 'overlock' || row.kind === 'slipstitch') return { name: name! };
    if (needed === 'buttonhole') return { name: 'buttonhole stitch' };
    const length = own === undefined ? (long[row.kind] ?? suits(row).stitch) : ([own, own] as const);
    return { name: name ?? (row.kind in long ? 'long straight stitch' : 'straight stitch'), length };
  });
  const ofMachine = rows.filter(({ kind }) => kind !== 'overlock' && kind !== 'slipstitch');
  const heaviest = ofMachine.map(suits).reduce<Suits | undefined>((a, b) => (a && a.nm >= b.nm ? a : b), undefined);
  const foot = always.foot ?? (heaviest && feet[footFor(needed, taken, pattern, materials)]);
  return {
    stitches: stitches.filter((one, i) => stitches.findIndex((other) => isOne(one, other)) === i),
    ...(heaviest && { needle: heaviest }),
    ...(foot !== undefined && { foot }),
  };
}

const isOne = (a: SetStitch, b: SetStitch) =>
  a.name === b.name && a.length?.[0] === b.length?.[0] && a.length?.[1] === b.length?.[1];

/** Common practice, no source: a zip's tape is sewn with a foot that runs beside its teeth, batting with one that feeds the upper layer too. */
function footFor(
  needed: Foot | undefined,
  taken: readonly Work[],
  pattern: Pattern,
  materials: readonly Material[],
): Foot {
  if (needed) return needed;
  const isZip = ({ plies }: Work) => plies.every((ply) => materialIn(pattern, ply)?.hardware === 'zip');
  // Beside a cord as beside teeth.
  if (taken.some((work) => isZip(work) || pipingLoose(work.plies).length > 0)) return 'zip';
  if (materials.some(({ kind }) => kind === 'batting')) return 'walking';
  if (materials.some(({ kind, holes }) => kind === 'cloth' && holes === 'stay')) return 'gliding';
  return 'standard';
}

/**
 * How the machine is set, in words. In the inch edition also stitches to the inch, which many dials count.
 *
 * @example saySewing(sewing, 'metric') // => { stitch: 'straight stitch, 2 to 3 mm', needle: 'NM 80 (US 12), universal', foot: 'standard foot' }
 */
export function saySewing(
  { stitches, needle, foot }: Sewing,
  edition: Edition,
): { stitch: string; needle?: string; foot?: string } {
  const said = stitches.map(({ name, length }) => (length ? `${name}, ${sayLength(length, edition)}` : name));
  return {
    stitch: said.join('; '),
    ...(needle && { needle: needleWords(needle) }),
    ...(foot !== undefined && { foot }),
  };
}

function sayLength([from, to]: ThicknessRange, edition: Edition): string {
  const range = (a: number, b: number) => (a === b ? String(a) : `${a} to ${b}`);
  const toInch = (mm: number) => Math.round(25.4 / mm);
  const length = `${range(from, to)} mm`;
  return edition === 'inch' ? `${length} (${range(toInch(to), toInch(from))} to the inch)` : length;
}
