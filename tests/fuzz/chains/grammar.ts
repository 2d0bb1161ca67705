/**
 * Random projects from the grammar of verbs. What a step may say is read off the fields of its verb, so that a new verb
 * joins by its file; a new kind of field is told by the type checker, and a text that has a form of its own by `textFor`.
 */
import { always, takesWork } from '../../../src/core/steps/index.ts';
import {
  checkMaterials,
  ledgerOf,
  makeUp,
  MaterialsFile,
  ProjectFile,
  resolveProject,
  verbNamed,
  verbNames,
} from '../../../src/core/index.ts';
import type { Chance } from '../chance.ts';
import type { Edition, Pattern, Size, VerbName } from '../../../src/core/index.ts';
import type { Field, Fields } from '../../../src/core/steps/index.ts';

/** A value as it stands in a file. */
export type Plain = string | number | boolean | readonly Plain[] | { readonly [key: string]: Plain };
export type Said = { readonly [key: string]: Plain };
/** project.yaml, not read yet. */
export type File = Said & { readonly steps: readonly Said[] };

export const shelf = MaterialsFile.parse({
  linen: { kind: 'cloth' },
  lining: { kind: 'cloth', lining: true },
  stay: { kind: 'interfacing' },
  clasp: { kind: 'hardware', hardware: 'snap' },
});
if (checkMaterials(shelf).length > 0) throw new Error('The shelf of the random projects is not sound.');

export const editions: readonly Edition[] = ['inch', 'metric'];

/** A project worked out; throws what the schema finds wrong with it. */
export function resolved(file: File, edition: Edition): Pattern {
  const read = ProjectFile.safeParse(file);
  if (!read.success) throw new Error(`The schema refuses it: ${read.error.message}`);
  return resolveProject(read.data, { edition, materials: shelf });
}

const sides = ['top', 'right', 'bottom', 'left'] as const;
const corners = ['bottom left', 'bottom right', 'top left', 'top right'] as const;

/** The table on which the next step is thought of. */
type Table = {
  readonly chance: Chance;
  readonly home: Edition;
  /** What lies there, and the pieces in it. */
  readonly works: ReadonlyMap<string, readonly string[]>;
  readonly steps: readonly Said[];
  /** Width and height of some work there, in mm, from which lengths are thought of. */
  readonly size: Size;
};

/**
 * The project of a seed: for every fourth a verb by itself, else a chain of two to eight steps. A verb that cannot be sewn
 * on single pieces, such as one that turns, gets a pair that was sewn round.
 */
export function projectOf(chance: Chance, seed: number): File {
  const home = chance.of(editions);
  const alone = seed % 4 === 0;
  const lead = alone
    ? leadsTo[verbOf(seed)]
    : chance.often(0.15)
      ? chance.of([...Object.values(leadsTo), ...allRound])
      : undefined;
  let file: File = lead ? bagsOf(chance, home, lead) : { ...piecesOf(chance, home), steps: [] };
  if (alone && !lead) {
    const one = withStep(file, chance, home, verbOf(seed));
    if (doneIn(one, home) > 0 || chance.often(0.1)) return one;
  }
  if (!lead && (alone || chance.often(0.3))) file = withStep(file, chance, home, 'sew round');
  // What leads somewhere is followed by some steps, however long it is.
  const long = alone ? file.steps.length + 1 : Math.max(2 + chance.below(7), lead ? file.steps.length + 2 : 0);
  while (file.steps.length < long) {
    const next = withStep(file, chance, home, alone ? verbOf(seed) : undefined);
    if (next === file) break;
    file = next;
  }
  return file;
}

/** What leads to a verb that takes no single pieces: a folded work, two bags, a lining in its bag. */
const twoBags: readonly Said[] = [
  { 'sew round': ['front', 'back'], open: ['top'], makes: 'bag' },
  {
    'sew round': ['lining front', 'lining back'],
    open: ['top'],
    gap: { edge: 'bottom', length: { mm: 30, in: '1 1/4' } },
    makes: 'lining',
  },
  { turn: 'lining' },
];
const onePut: readonly Said[] = [...twoBags, { put: 'lining', into: 'bag', together: 'right sides' }];
const oneJoined: readonly Said[] = [...onePut, { 'join openings': 'bag' }];
const oneCased: readonly Said[] = [
  { 'sew round': ['front', 'back'], open: ['top'], makes: 'bag' },
  { turn: 'bag' },
  { casing: 'bag', at: 'opening', width: { mm: 12, in: '1/2' }, 'way in': { mm: 25, in: 1 } },
];
const leadsTo: Partial<Record<VerbName, readonly Said[]>> = {
  // It takes a strip and a cord that are long enough.
  pipe: [],
  'sew up': [{ fold: 'front', from: 'top', at: { mm: 50, in: 2 } }],
  put: twoBags,
  'join openings': onePut,
  'push in': [...oneJoined, { turn: 'bag' }],
  draw: oneCased,
};

/** What is done all round an opening with a strip as long as that, or with a ring. */
const ringed: readonly Said[] = [
  { 'sew round': ['front', 'back'], open: ['top', 'bottom'], makes: 'tube' },
  { gather: 'tube', at: 'top opening', to: 'ring' },
  { fold: 'band', from: 'right', at: 'ring / 2 + seam' },
  { 'sew up': 'band', at: 'left' },
  { turn: 'band' },
  { put: 'band', into: 'tube', together: 'right sides', at: 'top', own: 'top' },
  { 'join openings': 'tube', at: 'top opening' },
];
const allRound: readonly (readonly Said[])[] = [
  [twoBags[0]!, { turn: 'bag' }, { bind: 'bag', with: 'binding', at: 'opening', width: { mm: 12, in: '1/2' } }],
  [...oneCased, { draw: 'elastic', into: 'bag', to: 'ring', overlap: { mm: 25, in: 1 } }],
  ringed.slice(0, 2),
  ringed,
];

/** The pieces of two bags of one size, or nearly, with the steps that lead to something. */
function bagsOf(chance: Chance, home: Edition, lead: readonly Said[]): File {
  const across = () => chance.of([100, 120, 150, 200]);
  const [w, h] = [written(across(), home), written(across(), home)];
  const pieces = {
    front: { size: [w, chance.often(0.5) ? { mm: 100, in: 4 } : h], from: 'outer' },
    back: { like: 'front', from: 'outer' },
    'lining front': { like: 'front', from: 'inner' },
    'lining back': { like: 'front', from: 'inner' },
    strip: { size: [written(1000, home), written(48, home)], from: 'outer', grain: 'bias' },
    cord: { size: [written(1000, home), written(6, home)], from: 'outer', allowance: 0 },
    binding: { size: [`2 * ${w} - 2 * seam`, { mm: 48, in: 2 }], from: 'outer' },
    elastic: { size: ['ring + overlap', { mm: 12, in: '1/2' }], from: 'outer', allowance: 0 },
    band: { size: ['ring + 2 * seam', { mm: 50, in: 2 }], from: 'outer' },
  };
  const made = piecesOf(chance, home);
  return {
    ...made,
    measures: { ...(made['measures'] as Said), ring: `1.2 * ${w}`, overlap: { mm: 25, in: 1 } },
    pieces,
    steps: lead.map((step, i) => ({ id: `step ${i + 1}`, ...step })),
  };
}

/** The verb that stands alone in the project of a seed. */
export const verbOf = (seed: number): VerbName => verbNames[Math.floor(seed / 4) % verbNames.length]!;

/** How many steps are thought of before one that cannot be sewn stays as it is. */
const TRIES = 12;

/** The file with one more step. Most that cannot be sewn are thought of anew; some stay, to hear why. */
function withStep(file: File, chance: Chance, home: Edition, verb: VerbName | undefined): File {
  const lying = onTable(resolved(file, home));
  const names = [...lying.works.keys()];
  if (names.length === 0) return file;
  const table = { chance, home, steps: file.steps, works: lying.works, size: lying.sizes.get(chance.of(names))! };
  // What was just sewn round is often turned, and its gap closed.
  const wanted =
    lying.last === 'sew round' && chance.often(0.5)
      ? after(chance)
      : lying.last === 'turn' && chance.often(0.4)
        ? 'close gap'
        : undefined;
  let best = file;
  // A verb that was asked for is worth more trouble.
  const tries = verb ? 3 * TRIES : TRIES;
  for (let i = 0; i < tries; i++) {
    const step = stepOf(verb ?? (i < TRIES / 2 ? wanted : undefined) ?? chance.of(verbNames), table);
    best = { ...file, steps: [...file.steps, step] };
    if (doneIn(best, home) > lying.done || chance.often(0.06)) return best;
  }
  return best;
}

/** What was thrown while a project was thought of, and the project that threw it. */
export class Thrown extends Error {
  readonly file: File;
  constructor(file: File, cause: unknown) {
    super(String(cause), { cause });
    this.file = file;
  }
}

/** How many steps of a project are done; throws what its last step threw, with the project. */
function doneIn(file: File, home: Edition): number {
  try {
    return makeUp(resolved(file, home)).length;
  } catch (error) {
    throw new Thrown(file, error);
  }
}

type Lying = {
  /** What lies on the table, and the pieces in it. */
  works: Map<string, readonly string[]>;
  sizes: Map<string, Size>;
  done: number;
  last: VerbName | undefined;
};

/** What lies on the table once all steps are done. */
function onTable(pattern: Pattern): Lying {
  const { results, steps } = ledgerOf(pattern);
  const works = new Map<string, readonly string[]>();
  const sizes = new Map<string, Size>();
  for (const [name, { plies }] of Object.entries(results)) {
    works.set(name, [...new Set(plies.map(({ piece }) => piece))]);
    const points = plies.flatMap(({ outline }) => outline.map(({ from }) => from));
    const span = (all: number[]) => Math.max(...all) - Math.min(...all);
    sizes.set(name, { width: span(points.map(({ x }) => x)), height: span(points.map(({ y }) => y)) });
  }
  // Without steps nothing is made up yet.
  if (!pattern.making) {
    for (const { name, size } of Object.values(pattern.pieces)) {
      works.set(name, [name]);
      sizes.set(name, size);
    }
  }
  return { works, sizes, done: steps.length, last: steps.at(-1)?.verb };
}

const after = (chance: Chance): VerbName => chance.of(['turn', 'turn', 'clip corners', 'grade', 'box corner']);

/** A length as an author of the home edition writes it, on the ruler's marks. */
function written(mm: number, home: Edition): string {
  if (home === 'metric') return `${Math.max(1, Math.round(mm))} mm`;
  const eighths = Math.max(1, Math.round((mm / 25.4) * 8));
  const [whole, rest] = [Math.floor(eighths / 8), eighths % 8];
  return `${[...(whole > 0 ? [whole] : []), ...(rest > 0 ? [`${rest}/8`] : [])].join(' ')} in`;
}

/** Two to five pieces of all sorts. */
function piecesOf(chance: Chance, home: Edition): Said {
  const length = (mm: number) => written(mm, home);
  const across = () => chance.of([60, 80, 100, 100, 120, 150, 200, 240]);
  const pieces: Record<string, Plain> = {};
  const w = across();
  const h = chance.often(0.15) ? w : across();
  const square = (wide: number, high: number) => ({ size: [length(wide), length(high)], from: 'outer' });
  const isCurved = chance.often(0.12);
  const first: Said = isCurved
    ? { ...curvedOf(chance, length, w, h), from: 'outer' }
    : chance.often(0.15)
      ? { outline: shapeOf(chance, w, h).map(([x, y]) => [length(x), length(y)]), from: 'outer' }
      : square(w, h);
  const round: Said = !isCurved && chance.often(0.08) ? { corners: { round: length(chance.of([10, 20, 25])) } } : {};
  pieces['front'] = { ...first, ...round, ...(chance.often(0.2) && { cut: 2 }) };
  const mirrored: Said = chance.often(0.2) ? { mirrored: true } : {};
  if (chance.often(0.85))
    pieces['back'] = chance.often(0.75) ? { like: 'front', from: 'inner', ...mirrored } : square(across(), h);
  if (chance.often(0.4)) pieces['stay'] = stayOf(chance, length, w, h);
  if (chance.often(0.4)) pieces['pocket'] = square(w * chance.of([0.4, 0.5, 0.6]), h * chance.of([0.3, 0.5, 0.75]));
  if (chance.often(0.35))
    pieces['strip'] = square(chance.of([w, h, 1.5 * w, 2 * (w + h)]), chance.of([20, 30, 40, 60]));
  if (chance.often(0.2)) {
    const pleats = { pockets: chance.of([1, 2, 3]), depth: length(chance.of([30, 40])), step: length(20) };
    pieces['pleated'] = { size: [length(w), length(400)], from: 'outer', pleats };
  }
  if (chance.often(0.3)) {
    const [on, width] = [chance.of(sides), chance.of([8, 12, 20])];
    const at = (mm: number): Said => ({
      on,
      at: length(mm),
      width: length(width),
      length: length(chance.of([20, 30])),
    });
    const darts = chance.often(0.5) ? [at(50)] : [at(35), at(75)];
    pieces['darted'] = { ...square(120, 120), darts };
  }
  if (chance.often(0.15)) pieces['flounce'] = pleatedAlong(chance, length, w, h);
  return {
    title: 'A chain of steps',
    units: home,
    measures: { seam: { in: chance.of(['1/4', '3/8', '5/8']), mm: chance.of([6, 10, 15]), editions: 'Made up.' } },
    materials: { outer: 'linen', inner: 'lining', iron: 'stay', snap: 'clasp' },
    pieces,
  };
}

/** A circle, half of one, or a piece with one curved edge between straight ones, whole or as a half on the fold. */
function curvedOf(chance: Chance, length: (mm: number) => string, w: number, h: number): Said {
  if (chance.often(0.3)) return { [chance.of(['circle', 'half circle'])]: length(w) };
  const middle = [length(w * 0.5), length(h * chance.of([0.8, 1.2]))];
  const way = chance.of<Said>([
    { rise: length(Math.min(w, h) * chance.of([0.1, 0.3])), bends: chance.of(['in', 'out']) },
    { radius: length(w * chance.of([0.6, 1.5])), bends: chance.of(['in', 'out']) },
    { 'curve through': [middle] },
  ]);
  const outline = [
    { at: [length(0), length(0)], edge: 'bottom' },
    { at: [length(w), length(0)], edge: 'right' },
    { at: [length(w), length(h)], edge: 'top', ...way },
    { at: [length(0), length(h)], edge: 'left' },
  ];
  return { outline, ...(chance.often(0.3) && { 'on fold': 'left' }) };
}

/** A piece with pleats along an edge, by two of number, depth and length, or by its finished size. */
function pleatedAlong(chance: Chance, length: (mm: number) => string, w: number, h: number): Said {
  const on = chance.of(sides);
  const kind = chance.of(['knife', 'knife', 'box', 'inverted']);
  const upright = on === 'left' || on === 'right';
  const faces = upright ? ['up', 'down'] : ['left', 'right'];
  const more: Said = {
    ...(kind === 'knife' && chance.often(0.5) && { faces: chance.of(faces) }),
    ...(chance.often(0.2) && { every: length(chance.of([20, 30])) }),
  };
  const [count, depth] = [chance.of([1, 2, 3]), length(chance.of([6, 10, 15]))];
  const side = upright ? h : w;
  const flat = [length(upright ? w : 3 * w), length(upright ? 3 * h : h)];
  return chance.of<Said>([
    { finished: [length(w), length(h)], from: 'outer', pleats: { on, kind, count, depth, ...more } },
    { size: flat, from: 'outer', pleats: { on, kind, count, depth, ...more } },
    { size: flat, from: 'outer', pleats: { on, kind, count, to: length(2 * side), ...more } },
  ]);
}

function stayOf(chance: Chance, length: (mm: number) => string, w: number, h: number): Said {
  if (chance.often(0.6)) return { like: 'front', from: 'iron', inset: chance.of([0, length(6), length(15)]) };
  return { size: [length(w * chance.of([0.3, 0.5, 0.9])), length(h * chance.of([0.3, 0.5, 0.9]))], from: 'iron' };
}

/** A shape with straight edges that is no rectangle, inner corners among them. */
function shapeOf(chance: Chance, w: number, h: number): readonly (readonly [number, number])[] {
  return chance.of([
    [
      [0, 0],
      [w, 0],
      [w * 0.8, h],
      [w * 0.2, h],
    ],
    [
      [0, 0],
      [w, 0],
      [w, h * 0.6],
      [w / 2, h],
      [0, h * 0.6],
    ],
    [
      [0, 0],
      [w, 0],
      [w, h],
      [w * 0.6, h],
      [w * 0.6, h * 0.5],
      [0, h * 0.5],
    ],
    [
      [0, 0],
      [w, 0],
      [w, h],
    ],
  ] as const);
}

/** A step of a verb: its own field first, others that it needs, and some of those it may have. */
export function stepOf(verb: VerbName, table: Table): Said {
  const { chance } = table;
  const { fields } = verbNamed(verb);
  const taken: string[] = [];
  const said = fieldsOf(fields, verb, table, taken);
  const makes: Said = chance.often(0.1) ? { makes: `work ${table.steps.length + 1}` } : {};
  return { id: `step ${table.steps.length + 1}`, ...said, ...makes };
}

function fieldsOf(fields: Fields, verb: VerbName, table: Table, taken: string[]): Said {
  const said: Record<string, Plain> = {};
  // Of a verb with many fields that may be left out, most are: two of them often say the same.
  const many = Object.values(fields).filter((field) => field.optional && !takesWork(field)).length;
  for (const [name, field] of Object.entries(fields)) {
    if (name in always) continue;
    const often = takesWork(field) ? 0.25 : Math.min(0.45, 1.5 / many);
    if (field.optional && !table.chance.often(often)) continue;
    said[name] = valueFor(field, `${verb}: ${name}`, table, taken, verb);
  }
  return said;
}

/** A value that goes into a field, by its kind. */
function valueFor(field: Field, where: string, table: Table, taken: string[], verb: VerbName): Plain {
  const { chance, works, home } = table;
  const take = (): string => {
    const left = [...works.keys()].filter((name) => !taken.includes(name));
    const name = chance.of(left.length > 0 && chance.often(0.97) ? left : [...works.keys()]);
    taken.push(name);
    return name;
  };
  switch (field.kind) {
    case 'work':
      // What is fused is an interfacing: few works are.
      if (verbNamed(verb).fuses && taken.length === 0 && works.has('stay') && chance.often(0.8)) {
        taken.push('stay');
        return 'stay';
      }
      // What is bound with is a strip, and says so.
      if (/^the strip\b/u.test(field.about) && works.has('strip') && !taken.includes('strip') && chance.often(0.8)) {
        taken.push('strip');
        return 'strip';
      }
      if (/^the cord\b/u.test(field.about) && works.has('cord') && !taken.includes('cord') && chance.often(0.9)) {
        taken.push('cord');
        return 'cord';
      }
      // What is drawn into a casing is as long as it goes round.
      if (verb === 'draw' && taken.length === 0 && works.has('cord') && chance.often(0.7)) {
        taken.push('cord');
        return 'cord';
      }
      if (verb === 'draw' && works.has('bag') && !taken.includes('bag') && chance.often(0.8)) {
        taken.push('bag');
        return 'bag';
      }
      return take();
    case 'works': {
      const least = field.least ?? 1;
      if (least === 2 && taken.length === 0 && works.has('front') && works.has('back') && chance.often(0.6)) {
        taken.push('front', 'back');
        return ['front', 'back'];
      }
      const many = Math.min(field.most ?? 3, least + (chance.often(0.1) ? 1 : 0));
      return Array.from({ length: many }, take);
    }
    case 'edges': {
      // A verb that takes corners says so.
      const one = () => (/\bcorners\b/u.test(field.about) ? chance.of(corners) : edgeFor(table, taken));
      return chance.often(0.5) ? one() : Array.from({ length: 1 + chance.below(3) }, one);
    }
    case 'names': {
      const pieces = [...works.values()].flat();
      return Array.from({ length: 1 + chance.below(2) }, () => chance.of(chance.often(0.5) ? pieces : sides));
    }
    case 'material':
      return chance.of(['snap', 'snap', 'outer']);
    case 'options':
      throw new Error(`The grammar makes no options, and ${where} needs one.`);
    case 'text':
      return textFor(field.only, where, table, taken);
    case 'choice':
      return chance.of(field.words);
    case 'yes':
      return chance.often(0.8);
    case 'whole':
      return 1 + chance.below(4);
    case 'count':
      return 1 + chance.below(3);
    case 'grid':
      return Array.from({ length: 1 + chance.below(2) }, () =>
        Array.from({ length: 1 + chance.below(2) }, () => `${take()}${chance.often(0.2) ? ' turned left' : ''}`),
      );
    case 'number':
      return chance.of([0.5, 1, 2, 10]);
    case 'length':
      return lengthFor(table);
    case 'size':
      return [0.6, 0.8].map((share, i) =>
        written((i === 0 ? table.size.width : table.size.height) * (chance.often(0.3) ? 1.1 : share), home),
      );
    case 'point':
      return [table.size.width, table.size.height].map((most) => written(most * chance.share(), home));
    case 'group':
      return fieldsOf(field.fields, verb, table, taken);
  }
}

/** A length as authors write it, now and then one that no author means. */
function lengthFor({ chance, home, size }: Table): string {
  if (chance.often(0.03)) return chance.of(['0.0000001 mm', '0 mm', '3 m', '0.04 mm', '1/64 in']);
  if (chance.often(0.3)) {
    const share = chance.of([0.5, 0.25, 1 / 3, 0.75, 1]);
    return written(chance.of([size.width, size.height]) * share, home);
  }
  return written(chance.of([2, 3, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40]), home);
}

/** An edge as a step names it: mostly a side of the work. */
function edgeFor({ chance, works }: Table, taken: readonly string[]): string {
  if (chance.often(0.08)) return chance.of(['opening', 'opening', 'top opening']);
  if (chance.often(0.7)) return chance.of(sides);
  if (chance.often(0.4)) return chance.of(corners);
  if (chance.often(0.2)) return 'all';
  if (chance.often(0.15)) return chance.of(['outline', 'edge', 'curve', ...taken.map((name) => `${name} outline`)]);
  const pieces = taken.flatMap((name) => [name, ...(works.get(name) ?? [])]);
  return `${chance.of([...pieces, ...works.keys()])} ${chance.of(sides)}`;
}

/** A text for a field: one that reads as the field asks. */
function textFor(
  only: RegExp | undefined,
  where: string,
  { chance, steps, works }: Table,
  taken: readonly string[],
): string {
  const set = steps.flatMap((step) => ('attach' in step ? [step['id'] as string] : []));
  const known = [...sides, ...set, 'open', 'up', 'down', 'unopened', ...taken.map((name) => `to ${name}`)];
  const fit = known.filter((text) => !only || only.test(text));
  if (fit.length === 0) throw new Error(`The grammar has no text for ${where}. Add one to textFor.`);
  // A field without a form of its own takes a side, a piece, or a step that set something.
  return chance.of(only ? fit : [...sides, ...set, ...[...works.values()].flat()]);
}
