/** The single mistakes that make a piece come out too large or too small, each with the size it then has. */
import { formatLength, isOnGrid, markOf, type Edition } from '../measure/index.ts';
import { sizeNames, type MeasuredWork, type SizeName } from './measured-work.ts';
import { called, wordingOf } from './sentences.ts';
import type { Size } from '../project/pattern.ts';

export type MistakeKind =
  | 'other-allowance'
  | 'seam-forgotten'
  | 'seam-doubled'
  | 'cut-at-finished'
  | 'cut-one-side'
  | 'cut-twice'
  | 'not-sewn'
  | 'exchanged'
  | 'unit'
  | 'not-trimmed'
  | 'trimmed-twice'
  | 'pocket-forgotten'
  | 'fold-off'
  | 'measure-left-out'
  | 'measure-halved'
  | 'measure-doubled'
  | 'miscounted';

export type SewingMistake = {
  kind: MistakeKind;
  sentence: string;
  /** What the work would measure after this mistake, in mm. */
  size: Size;
  /** The measures concerned. */
  names: string[];
  /** Its size was chosen to fit what was measured, so that fitting says less. */
  loose?: boolean;
};

/**
 * Allowances that people sew by habit, in mm. 5/8 in and 1.5 cm: traditional home sewing (Fox Chapel tailoring book,
 * 2023 excerpt). 3/8 in: enclosed seams (Threads no. 131, 2009). 1/2 in: waist seams (Baldt, Clothing for Women, 1916).
 * 1/4 in: patchwork, from memory. The others: common practice, no source.
 */
const usual: Record<Edition, readonly number[]> = {
  inch: [1 / 8, 1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1].map((inches) => inches * 25.4),
  metric: [3, 5, 6, 7, 8, 10, 12, 15, 20, 25],
};

const edges: Record<SizeName, string> = { width: 'one side', height: 'the top or the bottom' };

/** Every single mistake thought of, the commonest kinds first. `off` is how far the work is off, in mm. */
export function mistakesFor(work: MeasuredWork, off: Partial<Size>): SewingMistake[] {
  return [
    ...(work.stage === 'sewn' ? inSewing(work) : []),
    ...inCutting(work),
    ...inFolding(work, off),
    ...inReading(work),
    ...inMeasures(work),
  ];
}

const plus = (size: Size, way: SizeName, mm: number): Size => ({ ...size, [way]: size[way] + mm });
const sum = ([a, b]: readonly [number, number]) => a + b;

function inSewing({ pattern, sewn, cut, seams }: MeasuredWork): SewingMistake[] {
  const { edition, grid } = pattern;
  const show = (mm: number) => formatLength(mm, edition, { grid, style: 'set' });
  const all = [...seams.width, ...seams.height].filter((seam) => seam > 0);
  if (all.length === 0) return [];
  const meant = all.every((seam) => seam === all[0]) ? `The pattern has ${show(all[0]!)}.` : 'The pattern has others.';
  const others = usual[edition].flatMap((habit): SewingMistake[] => {
    if (all.every((seam) => Math.abs(seam - habit) < 0.05)) return [];
    const taken = (way: SizeName) => sum(seams[way].map((seam) => (seam > 0 ? habit : 0)) as [number, number]);
    const size = { width: cut.width - taken('width'), height: cut.height - taken('height') };
    return [
      { kind: 'other-allowance', sentence: `It looks sewn with seams of ${show(habit)}. ${meant}`, size, names: [] },
    ];
  });
  const single = sizeNames.flatMap((way) =>
    [...new Set(seams[way])].flatMap((seam): SewingMistake[] => {
      if (seam === 0) return [];
      return [
        {
          kind: 'seam-forgotten',
          sentence: `The seam at ${edges[way]} seems to be missing.`,
          size: plus(sewn, way, seam),
          names: [],
        },
        {
          kind: 'seam-doubled',
          sentence: `The seam at ${edges[way]} seems to have taken twice its allowance.`,
          size: plus(sewn, way, -seam),
          names: [],
        },
      ];
    }),
  );
  const unsewn: SewingMistake = { kind: 'not-sewn', sentence: 'That is its size before sewing.', size: cut, names: [] };
  return [...others, ...single, unsewn];
}

function inCutting({ pattern, stage, expected, seams }: MeasuredWork): SewingMistake[] {
  const { edition, grid } = pattern;
  const show = (mm: number) => formatLength(mm, edition, { grid, style: 'set' });
  const without = (size: Size, way: SizeName, times = 1) => plus(size, way, -times * sum(seams[way]));
  const both = sum(seams.width) > 0 && sum(seams.height) > 0;
  const whole: SewingMistake[] = both
    ? [
        {
          kind: 'cut-at-finished',
          sentence: 'It seems to be cut at its finished size.',
          size: without(without(expected, 'width'), 'height'),
          names: [],
        },
        {
          kind: 'cut-twice',
          sentence: 'It seems to be cut with every allowance twice.',
          size: without(without(expected, 'width', -1), 'height', -1),
          names: [],
        },
      ]
    : [];
  const single = sizeNames.flatMap((way): SewingMistake[] => {
    if (sum(seams[way]) === 0) return [];
    return [
      {
        kind: 'cut-at-finished',
        sentence: `Its ${way} seems to be cut at the finished size.`,
        size: without(expected, way),
        names: [],
      },
      {
        kind: 'cut-twice',
        sentence: `Its ${way} seems to be cut with the allowances twice.`,
        size: without(expected, way, -1),
        names: [],
      },
      ...[...new Set(seams[way])].flatMap((seam): SewingMistake[] =>
        seam > 0 && seam < sum(seams[way])
          ? [
              {
                kind: 'cut-one-side',
                sentence: `It seems to be cut with an allowance at one edge only in its ${way}.`,
                size: plus(expected, way, -seam),
                names: [],
              },
            ]
          : [],
      ),
    ];
  });
  const cutWith = stage === 'cut' && both ? usual[edition] : [];
  const others = cutWith.flatMap((habit): SewingMistake[] => {
    const change = (way: SizeName) => sum(seams[way].map((seam) => (seam > 0 ? habit - seam : 0)) as [number, number]);
    const size = { width: expected.width + change('width'), height: expected.height + change('height') };
    return [{ kind: 'other-allowance', sentence: `It looks cut with allowances of ${show(habit)}.`, size, names: [] }];
  });
  return [...whole, ...single, ...others];
}

function inFolding({ pattern, stage, expected, piece }: MeasuredWork, off: Partial<Size>): SewingMistake[] {
  const { edition, grid } = pattern;
  const pleats = piece?.pleats;
  if (!pleats) return [];
  const found: SewingMistake[] = [];
  const add = (kind: MistakeKind, sentence: string, mm: number, loose = false) =>
    found.push({ kind, sentence, size: plus(expected, 'height', mm), names: [], ...(loose && { loose }) });
  if (stage === 'cut') return found;
  if (pleats.trim > 0) {
    add('not-trimmed', 'The top seems not to be trimmed yet.', pleats.trim);
    add('trimmed-twice', 'The top seems to be trimmed twice.', -pleats.trim);
  }
  for (const depth of new Set(pleats.pockets.map((pocket) => pocket.depth))) {
    add('pocket-forgotten', 'One pocket seems not to be folded.', 2 * depth);
  }
  // Each fold turns the cloth back: a fold off its line by d makes the panel higher or lower by 2 d.
  const shift = Math.abs(off.height ?? 0) / 2;
  const least = Math.min(...pleats.pockets.map((pocket) => pocket.depth));
  if (shift >= markOf(edition, grid) && shift < least / 2 && isOnGrid(shift, edition, grid)) {
    const by = formatLength(shift, edition, { grid, style: 'set' });
    add('fold-off', `One fold seems to lie ${by} off its line.`, off.height ?? 0, true);
  }
  return found;
}

/** Slips of the ruler: its other side, or the two ways exchanged. */
function inReading({ expected }: MeasuredWork): SewingMistake[] {
  const times = (factor: number): Size => ({ width: expected.width * factor, height: expected.height * factor });
  const unit = (read: string, meant: string, factor: number): SewingMistake => ({
    kind: 'unit',
    sentence: `Your numbers fit in ${meant}, but were read as ${read}. Check the ruler and the unit.`,
    size: times(factor),
    names: [],
  });
  const turned: Size = { width: expected.height, height: expected.width };
  return [
    unit('inches', 'centimetres', 2.54),
    unit('centimetres', 'inches', 1 / 2.54),
    unit('inches', 'millimetres', 25.4),
    unit('millimetres', 'inches', 1 / 25.4),
    unit('millimetres', 'centimetres', 0.1),
    unit('centimetres', 'millimetres', 10),
    { kind: 'exchanged', sentence: 'Width and height seem to be exchanged.', size: turned, names: [] },
  ];
}

/** A measure left out, taken once for twice, or twice for once, all the way through the project. */
function inMeasures({ pattern, names, seams, sizeWith }: MeasuredWork): SewingMistake[] {
  const wording = wordingOf(pattern);
  const allowances = [...seams.width, ...seams.height];
  return [...names].flatMap((name): SewingMistake[] => {
    const measure = pattern.measures[name];
    if (measure?.source !== 'stated') return [];
    const it = called(name, wording);
    const changed = (kind: MistakeKind, sentence: string, value: number): SewingMistake[] => {
      const size = sizeWith({ [name]: value });
      return size ? [{ kind, sentence, size, names: [name] }] : [];
    };
    const { value, dimension } = measure;
    if (measure.isRatio) return [];
    if (dimension === 0) {
      return [
        ...changed('miscounted', `It looks made with one too few of ${it}.`, value - 1),
        ...changed('miscounted', `It looks made with one too many of ${it}.`, value + 1),
      ];
    }
    // What an allowance does is told at the seams.
    if (dimension !== 1 || allowances.some((seam) => Math.abs(seam - value) < 1e-6 && /seam|allowance/iu.test(name)))
      return [];
    return [
      ...changed('measure-left-out', `It looks made without ${it}.`, 0),
      ...changed('measure-halved', `It looks made with half of ${it}.`, value / 2),
      ...changed('measure-doubled', `It looks made with twice ${it}.`, 2 * value),
    ];
  });
}
