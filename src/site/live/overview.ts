import type { Content } from '../content/read-content.ts';

/** What the content holds, as `npm start` lists it. */
export type Overview = {
  /** The name of the school. */
  site: string | undefined;
  /** The folder names of the projects. */
  projects: string[];
  /** What an instructor may edit, each file with what it holds. */
  files: [file: string, holds: string][];
};

/** With more lessons than this only their folders are listed. */
const MANY = 40;

export function overviewOf({ site, materials, glossary, projects, courses, lessons }: Content): Overview {
  const lessonsIn = Map.groupBy(lessons, ({ course }) => course);
  const isLarge = lessons.length > MANY;
  return {
    site: site.value?.name,
    projects: projects.map(({ id }) => id),
    files: [
      ...projects.map(({ file, value }): [string, string] => [file, `the numbers of ${value?.title ?? 'a project'}`]),
      ...courses.flatMap(({ file, id, value }): [string, string][] => {
        const own = lessonsIn.get(id) ?? [];
        const order = `the order of the lessons of ${value?.title ?? 'a course'}`;
        if (isLarge) return [[file, `${order}; ${own.length} of them lie beside it`]];
        return [
          [file, order],
          ...own.map((lesson): [string, string] => [lesson.file, `the lesson ${lesson.value?.title ?? ''}`.trim()]),
        ];
      }),
      [site.file, 'the name of the school and how its pages speak'],
      [materials.file, 'cloth, interfacing, thread and hardware'],
      [glossary.file, 'the terms of the trade'],
    ],
  };
}
