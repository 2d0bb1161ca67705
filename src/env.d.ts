declare namespace App {
  /** A question as it stands in a lesson: its word, the name its answers are kept under, its text, and what its author gave. */
  interface WrittenQuestion {
    word: string;
    name: string;
    words: readonly (string | { readonly size: string })[];
    given: Record<string, unknown>;
  }
  interface Locals {
    /** The project whose numbers the page shows, by the name of its folder. */
    project?: string | undefined;
    /** The questions of the lesson that the page shows. */
    questions?: () => WrittenQuestion[];
  }
}

/** For the plain type checker; Astro's own looks into each file. */
declare module '*.astro' {
  const component: (properties: Record<string, unknown>) => unknown;
  export default component;
}
