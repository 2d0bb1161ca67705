import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { ProjectFile, resolveProject } from '../../../src/core/project/index.ts';
import { readTolerance } from '../../../src/core/questions/index.ts';
import { readContent } from '../../../src/site/content/read-content.ts';
import type { Edition } from '../../../src/core/measure/index.ts';
import type { Measure, Pattern } from '../../../src/core/project/index.ts';
import type { Question } from '../../../src/core/questions/index.ts';

const content = new URL('../../../content/', import.meta.url);

export const editions = ['inch', 'metric'] as const;

/** The project of the demo course. */
export const folio = ProjectFile.parse(
  parse(readFileSync(new URL('projects/swatch-folio/project.yaml', content), 'utf8')),
);

/** The same with narrow seams: without its ease it is as wide as with one seam only. */
export const narrowFolio: ProjectFile = {
  ...folio,
  measures: { ...folio.measures, seam: { in: '1/4', mm: 6, label: 'Seam allowance' } },
};

export const folioIn = (edition: Edition, values: Record<string, number> = {}): Pattern =>
  resolveProject(folio, { edition, values });

/** A question for a size, with the project of its lesson in an edition. */
export type DemoQuestion = {
  asked: string;
  project: string;
  question: Question;
  patternIn: (edition: Edition) => Pattern;
};

/** Every question for a size in the lessons of all demo courses, as its author wrote it. */
export function demoQuestions(): DemoQuestion[] {
  const { lessons, courses, projects, materials } = readContent(fileURLToPath(new URL('..', content)));
  return lessons.flatMap(({ course, slug, value, lesson }) => {
    const id = value?.project ?? courses.find((one) => one.id === course)?.value?.project;
    const project = projects.find((one) => one.id === id)?.value;
    if (id === undefined || !project) throw new Error(`${slug} has no sound project.`);
    const patternIn = (edition: Edition) => resolveProject(project, { edition, materials: materials.value ?? {} });
    return lesson.words
      .filter(({ name }) => name === 'AskSize' || name === 'Practice')
      .flatMap(({ name, attributes }): DemoQuestion[] => {
        const given = Object.fromEntries(attributes.map(({ name, value }) => [name, value]));
        const { of, tolerance, hint, slips, reword, forbid } = given as Record<string, string | undefined> & {
          slips?: Record<string, string>;
          reword?: Record<string, string>;
          forbid?: string[];
        };
        const { asks = {} } = given as { asks?: Record<string, string> };
        const all = of === undefined ? Object.keys(asks) : [of];
        if (all.length === 0) throw new Error(`A question of ${slug} asks for nothing.`);
        const allowed = tolerance === undefined ? undefined : readTolerance(tolerance, 'inch');
        const more = {
          ...(allowed && { tolerance: allowed }),
          ...(hint !== undefined && { hints: [hint] }),
          ...(slips && { slips: Object.entries(slips).map(([is, say]) => ({ is, say })) }),
          ...(reword && { reword }),
          ...(forbid && { forbid }),
        };
        return all.map((of) => {
          const question: Question = { of, ...more };
          return { project: id, asked: `${slug}: ${name} ${of}`, question, patternIn };
        });
      });
  });
}

/** A pattern of plain lengths (mm) and numbers of things, without pieces. */
export function patternOf(
  lengths: Record<string, number>,
  edition: Edition = 'metric',
  counts: Record<string, number> = {},
  labels: Record<string, string> = {},
): Pattern {
  const measure = (name: string, value: number, dimension: 0 | 1): [string, Measure] => [
    name,
    { name, label: labels[name] ?? name, value, dimension, source: 'stated' },
  ];
  const { origin, cache } = resolveProject({ title: 'Sums', measures: {}, pieces: {} }, { edition });
  return {
    title: 'Sums',
    edition,
    home: edition,
    grid: { inch: 16, metric: 1 },
    measures: Object.fromEntries([
      ...Object.entries(lengths).map(([name, value]) => measure(name, value, 1)),
      ...Object.entries(counts).map(([name, value]) => measure(name, value, 0)),
    ]),
    pieces: {},
    materials: {},
    options: {},
    choices: {},
    holds: [],
    cutting: { manner: 'straight cuts', gap: 0, edge: 0 },
    findings: [],
    ...{ origin, cache },
  };
}
