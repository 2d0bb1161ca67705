import { quote } from '../../core/measure/index.ts';
import { unusedMeasures } from '../../core/project/index.ts';
import type { ProjectFile } from '../../core/project/schema.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { Entry, LessonEntry } from '../content/read-content.ts';

/**
 * Measures that neither their project nor a lesson of it uses: a slider that moves nothing, a size nobody is told.
 *
 * @param own the lessons that use the project
 */
export function idleMeasures(project: Entry<ProjectFile>, own: readonly LessonEntry[]): Diagnostic[] {
  if (!project.value) return [];
  // What lessons name stands in an attribute or in brackets.
  const named = own.flatMap(({ text }) => text.match(/"[^"]*"|'[^']*'|\[[^\]]*\]/gu) ?? []).join('\n');
  return unusedMeasures(project.value).flatMap((name): Diagnostic[] => {
    if (mentionOf(name).test(named)) return [];
    return [
      {
        file: project.file,
        ...project.locate(['measures', name]),
        severity: 'note',
        message: `Nothing uses ${quote(name)}: no piece, no step, no other measure and no lesson.`,
        fix: 'Put it into the formula it was meant for, or take it out.',
      },
    ];
  });
}

/** The name as a whole word, with any blanks and capitals. */
const mentionOf = (name: string): RegExp => {
  const words = name
    .trim()
    .replace(/[.*+?^${}()|[\]\\]/gu, '\\$&')
    .replace(/\s+/gu, '\\s+');
  return new RegExp(`(?<![\\p{L}\\p{N}])${words}(?![\\p{L}\\p{N}])`, 'iu');
};
