import { wordCalled } from '../../../components/words/index.ts';
import { quote } from '../../core/measure/index.ts';
import { verbIn } from '../../core/steps/index.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { ProjectFile } from '../../core/project/schema.ts';
import type { Entry, LessonEntry } from '../content/read-content.ts';

/**
 * Steps of a project that none of its lessons tells. A lesson tells a step by naming its id in a lesson word, or by
 * using its verb: fuse, fused, fusing.
 *
 * @param own the lessons that use the project
 */
export function unmentionedSteps(project: Entry<ProjectFile>, own: readonly LessonEntry[]): Diagnostic[] {
  // A lesson that plays the making through tells every step.
  if (own.length === 0 || own.some(({ lesson }) => lesson.words.some(({ name }) => wordCalled(name)?.showsAllSteps)))
    return [];
  const prose = own.flatMap(({ lesson }) => lesson.prose.map(({ text }) => text)).join('\n');
  const named = new Set(
    own.flatMap(({ lesson }) => lesson.words.flatMap((word) => word.attributes.map((a) => a.value))),
  );
  const said = new Set<string>();
  return (project.value?.steps ?? []).flatMap((step, i): Diagnostic[] => {
    const verb = verbIn(step);
    const id = typeof step['id'] === 'string' ? step['id'] : undefined;
    if (!verb || (id !== undefined && named.has(id))) return [];
    if (said.has(verb) || formsOf(verb).test(prose)) return [];
    said.add(verb);
    const name = id ?? `step ${i + 1}`;
    return [
      {
        file: project.file,
        ...project.locate(['steps', i]),
        severity: 'note',
        message: `No lesson tells ${quote(name)}: none speaks of ${quote(verb)}.`,
        fix: 'Say in a lesson how it is done.',
      },
    ];
  });
}

/** A verb of several words is told by its first: box corner by boxed. */
function formsOf(verb: string): RegExp {
  const [first = ''] = verb.split(' ');
  return new RegExp(`(?<!\\p{L})${first.replace(/e$/, '')}\\p{L}{0,4}(?!\\p{L})`, 'iu');
}
