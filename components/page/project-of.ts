/** The project whose page a lesson word stands on. The content check has said so already if there is none. */
export function projectOf(locals: { project?: string | undefined }, word: string): string {
  if (locals.project === undefined) throw new Error(`<${word} /> needs a lesson with a project.`);
  return locals.project;
}
