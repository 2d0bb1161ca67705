import type { ShapeRole } from './scene.ts';
import type { Motif } from './motifs.ts';

/** The few colours there are, by the names that the page's style and the printer's palette give them. */
export type Ink =
  | 'ink'
  | 'ink-quiet'
  | 'thread'
  | 'paper'
  // A tone for each cloth, and the same paler for its wrong side.
  | 'tint'
  | 'tint-quiet'
  | 'clay'
  | 'clay-quiet'
  | 'slate'
  | 'slate-quiet'
  | 'sand'
  | 'sand-quiet';

/** How a role looks. Widths and dashes in mm of the sheet; a fill is a tone, and over it a motif. */
export type Pen = {
  readonly line?: { readonly width: number; readonly ink: Ink; readonly dash?: readonly number[] };
  readonly fill?: { readonly tone: Ink; readonly motif?: Motif };
  /** Its words in the legend; a role without any needs no explaining. */
  readonly legend?: string;
};

type Tone = 'clay' | 'slate' | 'sand';
type Cloth = 'second cloth' | 'third cloth' | 'leather' | 'lining';

/** Both sides of a cloth: its tone with its motif, and the tone paler with a hatch of its own. */
const cloth = <C extends Cloth>(name: C, tone: Tone, motif: Motif, wrong: Motif) =>
  ({
    [name]: { fill: { tone, motif }, legend: `${name}, right side` },
    [`${name}, wrong side`]: { fill: { tone: `${tone}-quiet`, motif: wrong }, legend: `${name}, wrong side` },
  }) as Record<C | `${C}, wrong side`, Pen>;

/**
 * The look of every role: one table for screen and page. Fold lines follow the open convention of paper folding:
 * valley dashed, mountain dash and dot. Every role differs from its neighbours in black and white too.
 */
export const pens: Readonly<Record<ShapeRole, Pen>> = {
  'right side': { fill: { tone: 'tint', motif: 'sprigs' }, legend: 'right side' },
  'wrong side': { fill: { tone: 'tint-quiet', motif: 'hatch' }, legend: 'wrong side' },
  ...cloth('second cloth', 'clay', 'buds', 'wide hatch'),
  ...cloth('third cloth', 'slate', 'bars', 'cross hatch'),
  ...cloth('leather', 'slate', 'grain', 'bold hatch'),
  ...cloth('lining', 'sand', 'crosses', 'hatch back'),
  interfacing: { fill: { tone: 'paper', motif: 'dots' }, legend: 'interfacing' },
  batting: { fill: { tone: 'paper', motif: 'waves' }, legend: 'batting' },
  tape: { fill: { tone: 'paper', motif: 'weave' }, legend: 'tape, ribbon or zip' },
  allowance: { fill: { tone: 'tint-quiet' }, legend: 'seam allowance' },
  held: { line: { width: 0.35, ink: 'ink' }, fill: { tone: 'paper' } },
  trimmed: { fill: { tone: 'paper', motif: 'strokes' }, legend: 'trimmed away' },
  layer: { line: { width: 0.2, ink: 'ink' }, fill: { tone: 'tint' } },
  // From few layers to many: darker and denser, in black and white too. Each drawing says how many.
  'layers 1': { fill: { tone: 'paper', motif: 'specks' }, legend: 'one layer' },
  'layers 2': { fill: { tone: 'tint-quiet', motif: 'lines' }, legend: 'more layers' },
  'layers 3': { fill: { tone: 'tint-quiet', motif: 'close lines' }, legend: 'more layers' },
  'layers 4': { fill: { tone: 'tint', motif: 'checks' }, legend: 'more layers' },
  'layers 5': { fill: { tone: 'tint', motif: 'close checks' }, legend: 'most layers' },

  cut: { line: { width: 0.5, ink: 'ink' }, legend: 'cut line' },
  // A cut line for each size, from the first; a legend names them.
  'size 1': { line: { width: 0.5, ink: 'ink' } },
  'size 2': { line: { width: 0.5, ink: 'ink', dash: [3.2, 1.4] } },
  'size 3': { line: { width: 0.7, ink: 'ink', dash: [0.6, 1.2] } },
  'size 4': { line: { width: 0.5, ink: 'ink', dash: [4, 1, 1, 1] } },
  'size 5': { line: { width: 0.5, ink: 'ink', dash: [2.4, 0.8, 0.7, 0.8, 0.7, 0.8] } },
  'size 6': { line: { width: 0.5, ink: 'ink', dash: [1.8, 2.6] } },
  stitch: { line: { width: 0.35, ink: 'ink', dash: [1.3, 0.8] }, legend: 'stitch line' },
  valley: { line: { width: 0.35, ink: 'ink', dash: [3.4, 1.2] }, legend: 'valley fold' },
  mountain: { line: { width: 0.35, ink: 'ink', dash: [3.4, 0.9, 0.5, 0.9] }, legend: 'mountain fold' },
  'raw edge': { line: { width: 0.25, ink: 'ink' }, legend: 'raw edge' },
  'fold edge': { line: { width: 0.7, ink: 'ink' }, legend: 'folded edge' },
  seam: { line: { width: 0.4, ink: 'ink-quiet' }, legend: 'seam' },
  basting: { line: { width: 0.35, ink: 'ink', dash: [2.2, 1.6] }, legend: 'basting' },
  zigzag: { line: { width: 0.3, ink: 'ink' }, legend: 'zigzag or overlock' },
  pinked: { line: { width: 0.25, ink: 'ink' }, legend: 'pinked edge' },
  'hand stitch': { line: { width: 0.45, ink: 'ink', dash: [0.7, 1.5] }, legend: 'sewn by hand' },
  hidden: { line: { width: 0.3, ink: 'ink', dash: [0.5, 0.9] }, legend: 'hidden behind' },
  face: { line: { width: 0.6, ink: 'ink' }, legend: 'right side' },
  notch: { line: { width: 0.5, ink: 'ink' }, legend: 'notch' },
  grain: { line: { width: 0.35, ink: 'ink' }, legend: 'grain' },
  teeth: { line: { width: 0.3, ink: 'ink' }, legend: 'teeth of a zip' },
  hardware: { line: { width: 0.4, ink: 'ink' }, fill: { tone: 'paper' }, legend: 'snap, button or other hardware' },

  arrow: { line: { width: 0.4, ink: 'ink' } },
  plate: { line: { width: 0.15, ink: 'ink-quiet' }, fill: { tone: 'paper' } },
  dimension: { line: { width: 0.2, ink: 'ink-quiet' } },
  leader: { line: { width: 0.15, ink: 'ink-quiet' } },
  break: { line: { width: 0.25, ink: 'ink' }, legend: 'goes on' },
  'scale bar': { line: { width: 0.5, ink: 'ink' } },
};

/** What is looked at now is drawn in the thread's colour and, so that it stands out in black too, this much heavier. */
export const NOW_HEAVIER = 2;
