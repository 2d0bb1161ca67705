import { withHandouts, withTeacher } from '../pages/build-options.ts';
import { everything, plannedHandouts, stepTimes } from './handouts.ts';
import { ContentFiles, readCourse } from '../content/read-content.ts';
import { oncePerBuild, oncePerBuildBy } from '../pages/build-cache.ts';

/** A document of a course, and where each paper and edition of it lies, from the site's root. */
export type HandoutLinks = {
  title: string;
  reader: 'maker' | 'teacher';
  files: { words: string; url: string }[];
};

/**
 * The documents that the site carries for a course. Commands and pages run in the project's own folder.
 *
 * @param named only those whose file is called so: `worksheet-pleat-the-strip`
 */
export function handoutLinks(course: string, named: (name: string) => boolean = () => true): HandoutLinks[] {
  return [...linksFor(course)].flatMap(([name, entry]) => (named(name) ? [entry] : []));
}

/**
 * Where the documents of a project lie at the lesson's size: who wants that size need not wait for one to be made.
 * Empty where the site carries none.
 *
 * @param names of the documents, as `projectDocuments` has them
 * @example readyMade('swatch-folio', ['templates'])['templates A4 inch'] // => '/handouts/pocket-folio/a4-inch/templates.pdf'
 */
export function readyMade(project: string, names: readonly string[]): Record<string, string> {
  if (!withHandouts()) return {};
  const course = teaching().get(project);
  const links = course === undefined ? undefined : linksFor(course);
  return Object.fromEntries(
    names.flatMap((name) =>
      (links?.get(name)?.files ?? []).map(({ words, url }) => [`${name} ${words.replace(',', '')}`, url]),
    ),
  );
}

/** Where a recording of its course shows each step of a project: `from 1:35 to 2:10`, by the step’s id. */
export function timesOf(project: string): Record<string, string> {
  const course = teaching().get(project);
  return course === undefined ? {} : stepTimes(readCourse(process.cwd(), course), course, project);
}

/** For each project the first course that teaches it. */
const teaching = oncePerBuild(() => {
  const files = new ContentFiles(process.cwd());
  return new Map(
    files
      .courses()
      .toReversed()
      .map((id) => [files.course(id).value?.project, id]),
  );
});

const linksFor = oncePerBuildBy((course) => {
  const links = new Map<string, HandoutLinks>();
  if (!withHandouts()) return links;
  for (const planned of plannedHandouts(readCourse(process.cwd(), course), course, everything)) {
    if (planned.kind !== 'document' || (planned.reader === 'teacher' && !withTeacher())) continue;
    const [, kind = '', ...rest] = planned.file.split('/');
    const name = rest.join('/').replace(/^teacher\/|\.pdf$/g, '');
    const [paper, edition] = kind.split('-');
    const entry = links.get(name) ?? { title: planned.title, reader: planned.reader, files: [] };
    entry.files.push({ words: `${paper === 'a4' ? 'A4' : 'Letter'}, ${edition}`, url: `/handouts/${planned.file}` });
    links.set(name, entry);
  }
  return links;
});
