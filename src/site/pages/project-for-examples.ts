import { words as lessonWords } from '../../../components/words/index.ts';
import { resolveProject, type WorkOut } from '../../core/project/index.ts';
import type { ProjectFile } from '../../core/project/schema.ts';
import { referenceFault, type Surroundings } from '../check/lesson-references.ts';
import { readLesson } from '../content/lesson-text.ts';
import type { WorkedOut } from '../check/project-problems.ts';

/**
 * The project that most examples can be shown with, and the words whose examples they are. An example names measures
 * and pieces; an author may have taken the project away that has them.
 */
export function projectForExamples<P extends { id: string; file: ProjectFile }>(
  projects: Iterable<P>,
): { project?: P; shown: ReadonlySet<string> } {
  const names = Object.keys(lessonWords);
  let most: { project: P; shown: Set<string> } | undefined;
  for (const project of projects) {
    const surroundings = { project: project.id, worked: asItIs(project.file), projects: [project.id] };
    const shown = new Set(names.filter((name) => fits(name, surroundings)));
    if (shown.size > (most?.shown.size ?? -1)) most = { project, shown };
    if (shown.size === names.length) break;
  }
  return most ?? { shown: new Set(names.filter((name) => lessonWords[name]?.anywhere)) };
}

/** A project in the lesson's own way, as examples show it. */
function asItIs(file: ProjectFile): WorkedOut {
  const inAnyWay: WorkOut = (edition) => resolveProject(file, { edition });
  return {
    file,
    materials: undefined,
    variants: [{ inch: inAnyWay('inch', {}), metric: inAnyWay('metric', {}) }],
    inAnyWay,
    sumFaults: new Map(),
  };
}

function fits(name: string, surroundings: Surroundings): boolean {
  return readLesson(lessonWords[name]!.example).words.every((word) =>
    word.attributes.every(({ name: attribute, value }) => {
      const reference = lessonWords[word.name]?.names?.[attribute];
      return !reference || typeof value !== 'string' || !referenceFault(reference, value, surroundings);
    }),
  );
}
