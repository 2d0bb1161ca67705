/**
 * Steps that are drawn before a page asks for them: while Astro puts a site's programs together, the command that builds
 * has its hands free. A drawing that is not there, or not yet, is made by the page that shows it.
 */
import type { Scene } from '../../src/core/index.ts';

/** The steps of a project at the lesson's own size, in the site's edition, by their ids, and what they come to. */
export type DrawnAhead = { project: string; steps: Record<string, Scene>; made: Scene | undefined };

/** Astro reads its settings and runs its pages apart from each other, each with a copy of this file: they share this. */
const SHELF = Symbol.for('steps drawn ahead');
const shared = globalThis as typeof globalThis & { [SHELF]?: Map<string, DrawnAhead> };

export function keepAhead(drawn: DrawnAhead): void {
  (shared[SHELF] ??= new Map()).set(drawn.project, drawn);
}

export const drawnAhead = (project: string, step: string): Scene | undefined =>
  shared[SHELF]?.get(project)?.steps[step];

export const madeAhead = (project: string): Scene | undefined => shared[SHELF]?.get(project)?.made;
