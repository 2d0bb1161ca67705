import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { ProjectFile, resolveProject } from '../../../src/core/project/index.ts';
import type { Edition } from '../../../src/core/measure/index.ts';
import type { Measure, Pattern } from '../../../src/core/project/index.ts';
import type { Question } from '../../../src/core/questions/index.ts';

const content = new URL('../../../content/', import.meta.url);

export const editions = ['inch', 'metric'] as const;

/** The project of the demo course. */
export const folio = ProjectFile.parse(
  parse(readFileSync(new URL('projects/swatch-folio/project.yaml', content), 'utf8')),
);

export const folioIn = (edition: Edition, values: Record<string, number> = {}): Pattern =>
  resolveProject(folio, { edition, values });

/** Every question for a size in the lessons of the demo course, as its author wrote it. */
export function demoQuestions(): Question[] {
  const folder = new URL('courses/pocket-folio/', content);
  const lessons = readdirSync(folder).filter((name) => name.endsWith('.mdx'));
  return lessons.flatMap((lesson) => {
    const text = readFileSync(new URL(lesson, folder), 'utf8');
    return [...text.matchAll(/<AskSize\b([^>]*)>/gu)].map(([, attributes = '']): Question => {
      const of = /\bof="([^"]+)"/u.exec(attributes)?.[1];
      if (of === undefined) throw new Error(`A question of ${lesson} asks for nothing: ${attributes}`);
      return { of };
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
    holds: [],
    findings: [],
  };
}
