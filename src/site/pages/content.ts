import { ShownContent } from './shown-content.ts';

/**
 * The content of this site. In a module of its own: what the live preview remembers of it outlasts the pages, which begin
 * anew with each change. Commands and pages run in the project's own folder.
 */
export const content = new ShownContent(process.cwd(), import.meta.env.DEV);
