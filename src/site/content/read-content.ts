import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { closest } from '../../core/measure/index.ts';
import { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { readLesson } from './lesson-text.ts';
import type { LessonText } from './lesson-text.ts';
import { topOf } from './lesson-top.ts';
import { readYaml } from './located-yaml.ts';
import type { ReadYaml } from './located-yaml.ts';
import type { Diagnostic } from './diagnostic.ts';
import { CourseFile, GlossaryFile, LessonFront, SiteFile } from './schemas.ts';

/** One file of the content folder as read: its value where it has no mistake of its own. */
export type Entry<T> = {
  /** Path from the root with forward slashes. */
  file: string;
  /** What addresses and other files call it. */
  id: string;
  text: string;
  value?: T;
  /** Mistakes of the file by itself; what it says about other files is checked later. */
  problems: Diagnostic[];
  locate: ReadYaml<T>['locate'];
};

export type LessonEntry = Entry<LessonFront> & {
  course: string;
  /** Last part of its address: the file name without its number and ending. */
  slug: string;
  fileName: string;
  lesson: LessonText;
};

/** The whole content folder. */
export type Content = {
  site: Entry<SiteFile>;
  materials: Entry<MaterialsFile>;
  glossary: Entry<GlossaryFile>;
  projects: Entry<ProjectFile>[];
  courses: Entry<CourseFile>[];
  lessons: LessonEntry[];
  /** What is wrong with the folder itself: files that nothing reads, names that make no address. */
  problems: Diagnostic[];
};

/** Every file of the folder, in no order that matters. */
export function allEntries({
  site,
  materials,
  glossary,
  projects,
  courses,
  lessons,
}: Content): (Entry<unknown> | LessonEntry)[] {
  return [site, materials, glossary, ...projects, ...courses, ...lessons];
}

const FOLDER = 'content';

/**
 * Reads every file below `content/`. Never throws for what an instructor wrote.
 *
 * @param root folder of the project, the one that holds `content/`
 * @param before an earlier reading of the folder: a file that did not change since is the same entry
 */
export function readContent(root: string, before?: Content): Content {
  const problems: Diagnostic[] = [];
  const known = new Map<string, Entry<unknown>>(before && allEntries(before).map((entry) => [entry.file, entry]));
  const read = <E extends Entry<unknown>>(file: string, make: (text: string) => E): E => {
    const text = readFileSync(path.join(root, file), 'utf8');
    const earlier = known.get(file);
    // A file that was missing had no text either.
    return text !== '' && earlier?.text === text ? (earlier as E) : make(text);
  };
  const has = (file: string) => existsSync(path.join(root, file));
  const yaml = <S extends z.ZodType>(
    file: string,
    schema: S,
    id: string,
    missing: 'needed' | 'fine',
  ): Entry<z.output<S>> => {
    if (has(file)) return read(file, (text) => ({ file, id, text, ...readYaml(text, schema, file) }));
    return {
      file,
      id,
      text: '',
      problems:
        missing === 'fine' ? [] : [{ file, line: 1, column: 1, severity: 'error', message: 'This file is missing.' }],
      locate: () => ({ line: 1, column: 1 }),
    };
  };
  const folders = (file: string) => {
    const names = listing(root, file)
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name);
    problems.push(...names.filter((name) => !isAddress(name)).map((name) => noAddress(`${file}/${name}`)));
    return names;
  };

  const courses = folders(`${FOLDER}/courses`);
  const content: Content = {
    site: yaml(`${FOLDER}/site.yaml`, SiteFile, 'site', 'needed'),
    materials: yaml(`${FOLDER}/materials.yaml`, MaterialsFile, 'materials', 'fine'),
    glossary: yaml(`${FOLDER}/glossary.yaml`, GlossaryFile, 'glossary', 'fine'),
    projects: folders(`${FOLDER}/projects`).map((id) =>
      yaml(`${FOLDER}/projects/${id}/project.yaml`, ProjectFile, id, 'needed'),
    ),
    courses: courses.map((id) => yaml(`${FOLDER}/courses/${id}/course.yaml`, CourseFile, id, 'needed')),
    lessons: courses.flatMap((id) =>
      listing(root, `${FOLDER}/courses/${id}`)
        .filter((entry) => entry.name.endsWith('.mdx'))
        .map(({ name }) => {
          const file = `${FOLDER}/courses/${id}/${name}`;
          return read(file, (text) => lessonFrom(file, id, name, text));
        }),
    ),
    problems,
  };
  for (const { file, slug } of content.lessons) if (!isAddress(slug)) problems.push(noAddress(file));
  problems.push(...unreadFiles(root, content));
  return content;
}

function listing(root: string, folder: string) {
  const full = path.join(root, folder);
  if (!existsSync(full)) return [];
  return readdirSync(full, { withFileTypes: true })
    .filter((entry) => !/^[._]/.test(entry.name))
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

function lessonFrom(file: string, course: string, fileName: string, text: string): LessonEntry {
  const slug = fileName.replace(/^\d+[-_ ]*/, '').replace(/\.mdx$/, '');
  const { yaml, fault } = topOf(text);
  let lesson: LessonText | undefined;
  const read: ReadYaml<LessonFront> =
    yaml !== undefined
    ? readYaml(yaml, LessonFront, file, 2)
    : {
        // A top that stands at a wrong place is a fault of the lesson.
        problems: fault ? [] : [
          {
            file,
            line: 1,
            column: 1,
            severity: 'error',
            message: 'A lesson starts with its title, summary and minutes between two lines of ---.',
          },
        ],
        locate: () => ({ line: 1, column: 1 }),
      };
  return {
    ...{ file, id: `${course}/${slug}`, course, slug, fileName, text, ...read },
    // Who puts a lesson on a shelf needs no more than what stands at its top.
    get lesson() {
      return (lesson ??= readLesson(text));
    },
  };
}

const isAddress = (name: string): boolean => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(name);

const noAddress = (file: string): Diagnostic => ({
  file,
  line: 1,
  column: 1,
  severity: 'error',
  message: 'This name becomes part of an address: lower-case letters a to z, digits and hyphens only.',
});

/** A file that looks like content but lies where nothing reads it: most often a slip in its name. */
function unreadFiles(root: string, content: Content): Diagnostic[] {
  const read = new Set(allEntries(content).map(({ file }) => file));
  const found: string[] = [];
  const look = (folder: string) => {
    for (const entry of listing(root, folder)) {
      if (entry.isDirectory()) look(`${folder}/${entry.name}`);
      else if (/\.(ya?ml|mdx?)$/i.test(entry.name)) found.push(`${folder}/${entry.name}`);
    }
  };
  look(FOLDER);
  return found
    .filter((file) => !read.has(file))
    .map((file) => {
      const isLesson = /^content\/courses\/[^/]+\/[^/]+\.mdx?$/i.test(file);
      const near = isLesson ? file.replace(/\.mdx?$/i, '.mdx') : closest(file, read);
      const isBeside = near !== undefined && path.posix.dirname(near) === path.posix.dirname(file);
      return {
        file,
        line: 1,
        column: 1,
        severity: 'warning',
        message: 'Nothing reads this file.',
        fix: near && `Should it be called ${isBeside ? path.posix.basename(near) : near}?`,
      };
    });
}
