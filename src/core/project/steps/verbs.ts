/** The verbs of the step language, and what belongs to each. */
import type { StepFile } from '../schema.ts';

type Field = keyof StepFile;

/** What a verb takes beside the work it is done to. */
export type Grammar = {
  /** Fields whose texts are names of works that the step takes, in this order. */
  takes: readonly Field[];
  /** The field whose work keeps its name; that of the verb if left out. */
  keeps?: Field;
  needs: readonly Field[];
  may: readonly Field[];
  /** The fields that hold a length or a list of them. */
  lengths: readonly Field[];
};

const verb = (
  takes: readonly Field[],
  needs: readonly Field[],
  may: readonly Field[],
  lengths: readonly Field[],
  keeps?: Field,
): Grammar => ({ takes, needs, may, lengths, ...(keeps && { keeps }) });

/** A verb that another verb has as a field comes after it, so that the first verb found is the step's own. */
export const grammar = {
  fuse: verb(['fuse', 'to'], ['to'], ['inset'], ['inset'], 'to'),
  join: verb(['join', 'between'], ['at'], ['between', 'seam', 'press', 'topstitch', 'eased'], ['seam', 'topstitch']),
  'sew round': verb(['sew round', 'between'], [], ['between', 'at', 'seam', 'gap', 'open'], ['seam']),
  'french seam': verb(['french seam'], ['at'], ['seam'], ['seam']),
  'flat-felled seam': verb(['flat-felled seam'], ['at'], ['seam'], ['seam']),
  pleat: verb(['pleat'], [], [], []),
  tuck: verb(['tuck'], ['at', 'depth'], ['from'], ['at', 'depth']),
  hem: verb(['hem'], ['fold'], ['at', 'then', 'corners'], ['fold', 'then']),
  lay: verb(['lay', 'on'], ['on'], ['at', 'face'], [], 'on'),
  baste: verb(['baste'], ['at'], ['by'], ['by']),
  trim: verb(['trim'], [], ['at', 'by', 'size'], ['by', 'size']),
  grade: verb(['grade'], [], ['by'], ['by']),
  'clip corners': verb(['clip corners'], [], ['by'], ['by']),
  'turn over': verb(['turn over'], [], [], []),
  turn: verb(['turn'], [], [], []),
  'close gap': verb(['close gap'], [], ['stitch'], []),
  gather: verb(['gather'], ['at', 'to'], [], ['to']),
  'box corner': verb(['box corner'], ['at', 'square'], ['from', 'seam'], ['square', 'seam']),
  bind: verb(['bind', 'with'], ['with', 'at', 'width'], [], ['width']),
  casing: verb(['casing'], ['at', 'width'], ['then'], ['width', 'then']),
  attach: verb(['to'], ['to', 'at'], ['through'], ['at'], 'to'),
  fold: verb(['fold'], ['at'], ['from', 'lands', 'only'], ['at']),
  topstitch: verb(['topstitch'], ['at'], ['by'], ['by']),
  edgestitch: verb(['edgestitch'], ['at'], ['by'], ['by']),
  press: verb(['press'], [], [], []),
} satisfies Partial<Record<Field, Grammar>>;

/** The trade's verbs, as the project file writes them. */
export type Verb = keyof typeof grammar;
export const verbs = Object.keys(grammar) as Verb[];

/** What every step may have. */
export const always: readonly Field[] = [
  ...([
    'id',
    'makes',
    'says',
    'now',
    'minutes',
    'tools',
    'done by',
    'keep with next',
    'when',
    'unless',
    'note',
  ] as const),
];
