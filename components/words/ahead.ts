/** What pages will show, worked out before they ask: while Astro puts a site's programs together there is time for it. */

/** What was worked out of a project at the lesson's own size, in the site's edition; see shows.ts. */
export type Ahead = { project: string; shown: Record<string, unknown> };

/** Astro reads its settings and runs its pages apart from each other, each with a copy of this file: they share this. */
const SHELF = Symbol.for('worked out ahead');
const shared = globalThis as typeof globalThis & { [SHELF]?: Map<string, Ahead['shown']> };

export function keepAhead({ project, shown }: Ahead): void {
  (shared[SHELF] ??= new Map()).set(project, shown);
}

export const aheadOf = (project: string): Ahead['shown'] => shared[SHELF]?.get(project) ?? {};
