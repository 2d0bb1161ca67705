/**
 * The fields of a step as plain data: what each holds, and what it means. The schema of a step, the authoring reference,
 * the reader and the types that a verb is given are all made from them.
 */
import type { Point } from '../geometry/index.ts';
import type { Work } from '../cloth/index.ts';

/** One work among those that are set out in rows, and how it is turned there. */
export type Cell = { readonly name: string; readonly turned?: 'left' | 'right' | 'round' };

/** What a field holds that is read as it stands. */
type Plain = {
  /** The name of one work that the step takes. */
  work: string;
  /** The names of works that the step takes, in order. */
  works: string[];
  /** Works set out in rows, the top row first and each from the left. */
  grid: readonly (readonly Cell[])[];
  /** The name of a role under materials. */
  material: string;
  /** The names of one option or of several. */
  options: string[];
  /** Edges by name. */
  edges: string[];
  /** Names of pieces or of edges, or other short texts. */
  names: string[];
  text: string;
  yes: boolean;
  /** A whole number above 0. */
  whole: number;
  /** A whole number above 0, or a formula that comes to one. */
  count: number;
  /** A number above 0. */
  number: number;
  /** In mm. */
  length: number;
  /** Width and height in mm. */
  size: { width: number; height: number };
  /** From the left and from the bottom, in mm. */
  point: Point;
};

type Told = { readonly about: string; readonly optional?: boolean };

/** One field of a step. */
export type Field = Told &
  (
    | { readonly kind: Exclude<keyof Plain, 'works' | 'names' | 'text' | 'edges'> }
    | { readonly kind: 'edges'; readonly most?: number }
    /** `least` names belong in the list; without it a single name may stand without brackets. */
    | { readonly kind: 'works' | 'names'; readonly least?: number; readonly most?: number }
    /** A text that must read as `only` says; `not` begins the sentence that refuses another. */
    | { readonly kind: 'text'; readonly only?: RegExp; readonly code?: string; readonly not?: string }
    | { readonly kind: 'choice'; readonly words: readonly string[] }
    | { readonly kind: 'group'; readonly fields: Fields }
  );

export type Fields = { readonly [name: string]: Field };

/** What a verb is given for a field. */
export type ValueOf<F> = F extends { kind: 'choice'; words: readonly (infer Word)[] }
  ? Word
  : F extends { kind: 'group'; fields: infer Inside }
    ? ValuesOf<Inside>
    : F extends { kind: infer Kind extends keyof Plain }
      ? Plain[Kind]
      : never;

/** What a verb is given for all of its fields: those that may be left out may be missing, and only those. */
export type ValuesOf<F> = {
  readonly [Name in keyof F as F[Name] extends { optional: true } ? never : Name]: ValueOf<F[Name]>;
} & { readonly [Name in keyof F as F[Name] extends { optional: true } ? Name : never]?: ValueOf<F[Name]> };

type WorkIn<F> = F extends { kind: 'works' | 'grid' } ? readonly Work[] : Work;
type Takes<F> = F extends { kind: 'work' | 'works' | 'grid' } ? true : false;

/** The works that a verb takes, by the field that names them. */
export type WorksOf<F> = {
  readonly [
    Name in keyof F as Takes<F[Name]> extends true ? (F[Name] extends { optional: true } ? never : Name) : never
  ]: WorkIn<F[Name]>;
} & {
  readonly [
    Name in keyof F as Takes<F[Name]> extends true ? (F[Name] extends { optional: true } ? Name : never) : never
  ]?: WorkIn<F[Name]>;
};

const plain =
  <const Kind extends keyof Plain>(kind: Kind) =>
  (about: string) =>
    ({ kind, about }) as const;

export const work = plain('work');
export const material = plain('material');
export const options = plain('options');
export const yes = plain('yes');
export const whole = plain('whole');
export const count = plain('count');
export const grid = plain('grid');
export const number = plain('number');
export const length = plain('length');
export const size = plain('size');
export const point = plain('point');

type HowMany = { least?: number; most?: number };
export const works = (about: string, many: HowMany = {}) => ({ kind: 'works', about, ...many }) as const;
export const names = (about: string, many: HowMany = {}) => ({ kind: 'names', about, ...many }) as const;

type Reads = { only?: RegExp; code?: string; not?: string };
export const text = (about: string, reads: Reads = {}) => ({ kind: 'text', about, ...reads }) as const;

export const choice = <const Words extends readonly string[]>(words: Words, about: string) =>
  ({ kind: 'choice', words, about }) as const;

export const group = <const Inside extends Fields>(fields: Inside, about: string) =>
  ({ kind: 'group', fields, about }) as const;

/** The same field, which may be left out. */
export const optional = <const F extends Field>(field: F) => ({ ...field, optional: true }) as const;

/** Edges by name, as most verbs take them. */
export const edges = (
  about = 'edges by name: top, [left, right], all. Where several pieces have such an edge, name the piece too: facing top.',
  many: Pick<HowMany, 'most'> = {},
) => ({ kind: 'edges', about, ...many }) as const;
