declare namespace App {
  /** A question as it stands in a lesson: its word, the name its answers are kept under, its text, and what its author gave. */
  interface WrittenQuestion {
    word: string;
    name: string;
    words: readonly (string | { readonly size: string })[];
    given: Record<string, unknown>;
  }
  /** A word as it stands in a lesson; of one whose answers are kept, the name they are kept under. */
  interface WrittenWord {
    word: string;
    name?: string;
    given: Record<string, unknown>;
  }
  interface Locals {
    /** Every word of the lesson that the page shows, in order. */
    words?: () => WrittenWord[];
    /** The project whose numbers the page shows, by the name of its folder. */
    project?: string | undefined;
    /** Terms of the trade, each with what it means. */
    glossary?: () => Readonly<Record<string, string>>;
    /** Terms in texts whose meanings the page holds: the id of each, by the words that stand for it. */
    terms?: (texts: readonly string[]) => Readonly<Record<string, string>>;
    /** The sections of the lesson that the page shows, in order. */
    sections?: readonly { slug: string }[];
    /** The questions of the lesson that the page shows. */
    questions?: () => WrittenQuestion[];
    /** A file beside the lesson: where it lies in the site, and how large it is. */
    fileBeside?: (name: string) => { address: string; bytes: number };
    /** How many pictures the page has up to here. */
    pictures?: number;
    /** The recordings of the course. */
    recordings?: readonly import('../components/words/recording/view.ts').RecordingOnPage[];
  }
}

/** For the plain type checker; Astro's own looks into each file. */
declare module '*.astro' {
  const component: (properties: Record<string, unknown>) => unknown;
  export default component;
}
