/**
 * What the pages ask for, at build time and in the live preview; the commands and the tests read the content folder
 * itself (read-content.ts).
 *
 * A file is read when a page asks for it. In the live preview one with a mistake is missing here, or stands in its last
 * state without one.
 */
import { statSync } from 'node:fs';
import path from 'node:path';
import type { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { FOLDER as FILES } from '../content/files-beside.ts';
import { topOf } from '../content/lesson-top.ts';
import { slugOf } from '../content/read-content.ts';
import { levels, SiteFile } from '../content/schemas.ts';
import type { CourseFile, GlossaryFile, LessonFront } from '../content/schemas.ts';
import { oncePerBuild, oncePerBuildBy } from './build-cache.ts';
import { content } from './content.ts';
import { recorded, type Recorded } from './recorded.ts';

/** A project as a page carries it: everything that `resolveProject` needs. */
export type ProjectPage = {
  /** Name of its folder. */
  id: string;
  /** From the site's root; a link needs `pageUrl(url)`. */
  url: string;
  file: ProjectFile;
  materials: MaterialsFile;
  /** The edition that a new visitor sees. */
  edition: SiteFile['edition'];
};

/** A project in a list of many. */
export type ListedProject = Pick<ProjectPage, 'id' | 'url'> & {
  title: string;
  summary: string | undefined;
  /** For what shows its sizes; worked out when it is read. */
  readonly project: ProjectPage | undefined;
};

export type LessonPage = Omit<LessonFront, 'project'> & {
  /** Its part of the address: the file name without its number. */
  id: string;
  url: string;
  /** From the root. */
  file: string;
  /** As written, below its top. */
  text: string;
  /** Folder name of the project whose numbers it uses: its own, or the course's. */
  projectId: string | undefined;
  /** That project; undefined where the live preview has no state of it that can be shown. */
  readonly project: ProjectPage | undefined;
};

export type CoursePage = Omit<CourseFile, 'lessons' | 'project'> & {
  id: string;
  url: string;
  /** The last parts of its lessons' addresses, in the order of course.yaml. */
  lessonIds: string[];
  /** The same lessons, read when they are asked for. */
  readonly lessons: LessonPage[];
  readonly project: ProjectPage | undefined;
};

/** What content/site.yaml says; plain settings stand in where the live preview cannot read it. */
export const getSite = (): SiteFile => content.site() ?? SiteFile.parse({ name: 'Sewing course' });

/** The recordings of a course, with what was misheard mended. */
export const getRecordings = oncePerBuildBy((course): Recorded[] =>
  content.recordings(course).map((one) => recorded(one, content.course(course), pageUrl)),
);

/** A file that lies beside the lessons of a course: its address in the site, and how large it is. */
export function fileBeside(course: string, name: string): { address: string; bytes: number } {
  const file = path.join(process.cwd(), 'content/courses', course, name);
  const bytes = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  return { address: pageUrl(`/${FILES}/${course}/${encodeURIComponent(name)}`), bytes };
}

/** content/materials.yaml, by name. */
export const getMaterials = (): MaterialsFile => content.materials();

/** content/glossary.yaml, by term. */
export const getGlossary = (): GlossaryFile => content.glossary();

/** All courses, the easiest first. */
export const getCourses = oncePerBuild((): CoursePage[] =>
  content
    .courses()
    .flatMap((id) => getCourse(id) ?? [])
    .toSorted((a, b) => levels.indexOf(a.level) - levels.indexOf(b.level) || a.title.localeCompare(b.title)),
);

export const getCourse = oncePerBuildBy((id): CoursePage | undefined => {
  const course = content.course(id);
  if (!course) return undefined;
  const files = content.lessonsOf(id);
  let lessons: LessonPage[] | undefined;
  return {
    ...course,
    id,
    url: `/courses/${id}/`,
    lessonIds: files.map(slugOf),
    get lessons() {
      return (lessons ??= files.flatMap((fileName) => lessonPage(id, course, fileName) ?? []));
    },
    get project() {
      return course.project === undefined ? undefined : getProject(course.project);
    },
  };
});

/** All projects by title. */
export const getProjects = oncePerBuild((): ListedProject[] =>
  content
    .projects()
    .flatMap((id): ListedProject[] => {
      const top = content.projectTop(id);
      if (!top) return [];
      const { title, summary } = top;
      return [
        {
          ...{ id, url: `/projects/${id}/`, title, summary },
          get project() {
            return getProject(id);
          },
        },
      ];
    })
    .toSorted((a, b) => a.title.localeCompare(b.title)),
);

/** The addresses of the pages of projects, as `getStaticPaths` wants them. */
export const projectPaths = () => content.projects().map((project) => ({ params: { project } }));

const projectPages = new Map<string, ProjectPage>();

/** A project whose sizes can be shown; the same one as long as nothing of it changes. */
export function getProject(id: string): ProjectPage | undefined {
  const before = projectPages.get(id);
  if (import.meta.env.PROD && before) return before;
  const file = content.project(id);
  if (!file) return undefined;
  const [materials, { edition }] = [getMaterials(), getSite()];
  if (before?.file === file && before.materials === materials && before.edition === edition) return before;
  const page = { id, url: `/projects/${id}/`, file, materials, edition };
  projectPages.set(id, page);
  return page;
}

/**
 * What a page was looked up by its address for. Where the live preview cannot show it, the page that says so comes before
 * (live/problem-page.ts).
 */
export function found<T>(page: T | undefined): T {
  if (page === undefined) throw new Error('A mistake in the content keeps this page from being shown.');
  return page;
}

/**
 * The address of a page or file, wherever the site is published.
 *
 * @param url from the site's root: `/courses/pleats/`
 * @example
 * pageUrl('/courses/pleats/') // => '/sewing/courses/pleats/' where the site is published below /sewing/
 */
export function pageUrl(url: string): string {
  return import.meta.env.BASE_URL.replace(/\/$/, '') + url;
}

function lessonPage(courseId: string, course: CourseFile, fileName: string): LessonPage | undefined {
  const shown = content.lesson(courseId, fileName);
  if (!shown) return undefined;
  const { project = course.project, ...front } = shown.front;
  const slug = slugOf(fileName);
  return {
    ...front,
    id: slug,
    url: `/courses/${courseId}/${slug}/`,
    file: `content/courses/${courseId}/${fileName}`,
    text: topOf(shown.text).body,
    projectId: project,
    get project() {
      return project === undefined ? undefined : getProject(project);
    },
  };
}
