/**
 * What the pages ask for. Everything here reads Astro's shelves (content.config.ts), so it works at build time and in
 * the live preview, and only there; the commands and the tests read the content folder itself (read-content.ts).
 *
 * In the live preview a file with a mistake is missing here, or stands in its last state without one.
 */
import { getCollection, getEntry } from 'astro:content';
import type { CollectionEntry } from 'astro:content';
import type { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { levels, SiteFile } from '../content/schemas.ts';
import type { CourseFile, LessonFront } from '../content/schemas.ts';
import { oncePerBuild } from './build-cache.ts';

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

export type LessonPage = Omit<LessonFront, 'project'> & {
  /** Its part of the address: the file name without its number. */
  id: string;
  url: string;
  /** The project whose numbers it uses: its own, or the course's. */
  project: ProjectPage | undefined;
  /** Folder name of that project, also where the live preview has no state of it that can be shown. */
  projectId: string | undefined;
  /** For `render(entry)` of astro:content, which gives the text and its headings. */
  entry: CollectionEntry<'lessons'>;
};

export type CoursePage = Omit<CourseFile, 'lessons' | 'project'> & {
  id: string;
  url: string;
  project: ProjectPage | undefined;
  /** In the order of course.yaml. */
  lessons: LessonPage[];
};

/** What content/site.yaml says; plain settings stand in where the live preview cannot read it. */
export async function getSite(): Promise<SiteFile> {
  return (await getEntry('site', 'site'))?.data ?? SiteFile.parse({ name: 'Sewing course' });
}

/** All courses, the easiest first, each with its lessons. */
export const getCourses = oncePerBuild(async (): Promise<CoursePage[]> => {
  const [courses, lessons, projects] = await Promise.all([
    getCollection('courses'),
    getCollection('lessons'),
    getProjects(),
  ]);
  const projectOf = new Map(projects.map((project) => [project.id, project]));
  const lessonAt = new Map(lessons.map((entry) => [`${entry.data.course}/${entry.data.fileName}`, entry]));
  return courses
    .map(({ id, data: course }) => ({
      ...course,
      id,
      url: `/courses/${id}/`,
      project: course.project === undefined ? undefined : projectOf.get(course.project),
      lessons: course.lessons
        .map((fileName) => lessonAt.get(`${id}/${fileName}`))
        .filter((entry) => entry !== undefined)
        .map((entry) => lessonPage(entry, entry.data.project ?? course.project, projectOf)),
    }))
    .toSorted((a, b) => levels.indexOf(a.level) - levels.indexOf(b.level) || a.title.localeCompare(b.title));
});

/** All projects by title. In a build all pages share them. */
export const getProjects = oncePerBuild(async (): Promise<ProjectPage[]> => {
  const [entries, materials, { edition }] = await Promise.all([getCollection('projects'), getMaterials(), getSite()]);
  return entries
    .map(({ id, data: file }) => ({ id, url: `/projects/${id}/`, file, materials, edition }))
    .toSorted((a, b) => a.file.title.localeCompare(b.file.title));
});

/** content/materials.yaml, by name. */
export async function getMaterials(): Promise<MaterialsFile> {
  return (await getEntry('materials', 'materials'))?.data ?? {};
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

function lessonPage(
  entry: CollectionEntry<'lessons'>,
  projectId: string | undefined,
  projects: ReadonlyMap<string, ProjectPage>,
): LessonPage {
  const { course, slug, fileName: _, ...front } = entry.data;
  const project = projectId === undefined ? undefined : projects.get(projectId);
  return { ...front, id: slug, url: `/courses/${course}/${slug}/`, project, projectId, entry };
}
