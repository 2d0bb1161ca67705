import type { Scene } from '../drawing/scene.ts';
import type { Pattern } from '../project/pattern.ts';
import type { PaperName } from './paper.ts';

/** One sheet of paper: a scene of its size, and the name it has among the document's bookmarks. */
export type Page = { readonly bookmark?: string; readonly scene: Scene };

/** A document to print. */
export type Handout = {
  /** For a file's name: lower-case letters, digits and hyphens. */
  readonly name: string;
  readonly title: string;
  /** Language tag of its words. */
  readonly language: string;
  /** Who may have it: an answer key is the teacher's alone. */
  readonly reader: 'maker' | 'teacher';
  readonly paper: PaperName;
  readonly pages: readonly Page[];
  /** What could not be put on paper, in plain sentences. */
  readonly findings: readonly string[];
};

/** What all documents of a course share. */
export type HandoutSetting = {
  readonly paper: PaperName;
  /** Name of the school or the instructor. */
  readonly school?: string;
  /** Language tag; en if left out. */
  readonly language?: string;
  /** No letter smaller than 14 pt. */
  readonly largePrint?: boolean;
};

/** What a document says of itself on each page. */
export type Heading = { readonly title: string; readonly project: string; readonly edition: Pattern['edition'] };

/** The project, with the size and the choices it is made in: “Skirt, size: large, zip”. */
export const madeAs = ({ title, sizes, choices }: Pattern): string =>
  [
    title,
    ...(sizes ? [`${sizes.label.toLowerCase()}: ${sizes.chosen}`] : []),
    ...Object.values(choices).map(({ of, chosen }) => of[chosen]!.label),
  ].join(', ');

/**
 * A title as part of a file's name.
 *
 * @example slug('Pocket strip, n°2') // => 'pocket-strip-n-2'
 */
export function slug(title: string): string {
  const plain = title.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  return (
    plain
      .replace(/[^a-z0-9]+/gu, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 60) || 'untitled'
  );
}

export const editionWords: Readonly<Record<Pattern['edition'], string>> = {
  inch: 'inch edition',
  metric: 'metric edition',
};
