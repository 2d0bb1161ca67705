/** The content in parts that are checked one by one: what a project is worked out for serves its part alone. */
import { statSync } from 'node:fs';
import path from 'node:path';
import type { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { placeIn } from '../content/diagnostic.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { Content, Entry, LessonEntry, RecordingEntry } from '../content/read-content.ts';
import { classOf } from '../content/schemas.ts';
import type { CourseFile } from '../content/schemas.ts';
import { bracketProblems } from './bracket-problems.ts';
import { stepsWithoutCaution, toolsWithoutCaution } from './caution-problems.ts';
import { frontProblems } from './course-problems.ts';
import type { ContentReport } from './find-content-problems.ts';
import { lessonProblems } from './lesson-problems.ts';
import { filesOf } from '../content/files-beside.ts';
import { picturesOf } from './picture-problems.ts';
import { markdownProblems } from './markdown-problems.ts';
import { mathsProblems } from './maths-problems.ts';
import { idleMeasures } from './measure-problems.ts';
import { isWhole, projectProblems, workOut, type WorkedOut } from './project-problems.ts';
import { questionProblems } from './question-problems.ts';
import { readingProblems } from './reading-problems.ts';
import { recordingProblems } from './recording-problems.ts';
import { sessionProblems } from './session-problems.ts';
import { unmentionedSteps } from './step-problems.ts';
import { textsOfCourse, textsOfLesson } from './texts.ts';
import { typedNumbersInFile, typedNumbersInLesson } from './typed-numbers.ts';
import { wordProblems } from './word-problems.ts';

/** What has to be looked at together. What names no project, or one that is not there, is a part like any other. */
export type ContentPart = {
  /** The name of the project's folder, as courses and lessons give it. */
  named: string | undefined;
  project: Entry<ProjectFile> | undefined;
  /** The courses that teach it, each with the lessons in its folder. */
  courses: readonly { course: Entry<CourseFile>; own: readonly LessonEntry[] }[];
  /** The lessons that use it, each with its course. */
  lessons: readonly { lesson: LessonEntry; course: Entry<CourseFile> | undefined }[];
  /** The recordings that make it, each with its course. */
  recordings: readonly { recording: RecordingEntry; course: Entry<CourseFile> | undefined }[];
};

/** Every project, course and lesson, each in one part. */
export function partsOf({ projects, courses, lessons, recordings }: Content): ContentPart[] {
  const courseOf = new Map(courses.map((course) => [course.id, course]));
  const lessonsIn = Map.groupBy(lessons, ({ course }) => course);
  const taughtBy = Map.groupBy(courses, ({ value }) => value?.project);
  const usedBy = Map.groupBy(lessons, ({ value, course }) => value?.project ?? courseOf.get(course)?.value?.project);
  const projectOf = new Map(projects.map((project) => [project.id, project]));
  const recordedBy = Map.groupBy(
    recordings,
    ({ settings, course }) => settings?.value?.project ?? courseOf.get(course)?.value?.project,
  );
  return [...new Set([...projectOf.keys(), ...taughtBy.keys(), ...usedBy.keys(), ...recordedBy.keys()])].map(
    (named) => ({
      named,
      project: projectOf.get(named ?? ''),
      courses: (taughtBy.get(named) ?? []).map((course) => ({ course, own: lessonsIn.get(course.id) ?? [] })),
      lessons: (usedBy.get(named) ?? []).map((lesson) => ({ lesson, course: courseOf.get(lesson.course) })),
      recordings: (recordedBy.get(named) ?? []).map((recording) => ({
        recording,
        course: courseOf.get(recording.course),
      })),
    }),
  );
}

/** What a part is checked against beside itself. */
export type AroundParts = {
  root: string;
  ends: boolean;
  materials: MaterialsFile | undefined;
  site: { class: ReturnType<typeof classOf>; edition: 'inch' | 'metric'; language: string };
  /** The folder names of all projects. */
  projects: readonly string[];
};

/** @param root the folder that holds content/ */
export function aroundParts(
  { site, materials, projects }: Content,
  root: string,
  { ends = false }: { ends?: boolean },
): AroundParts {
  const { edition = 'inch', language = 'en' } = site.value ?? {};
  return {
    root,
    ends,
    materials: materials.value,
    site: { class: classOf(site.value), edition, language },
    projects: projects.map(({ id }) => id),
  };
}

/** What is wrong in a part, in no order that matters. */
export function examinePart(part: ContentPart, around: AroundParts): ContentReport {
  const { named, project, courses, lessons, recordings } = part;
  const { root, ends, materials, site, projects } = around;
  const worked = project?.value && workOut(project.value, materials);
  const problems: Diagnostic[] = [];
  if (project && worked) problems.push(...projectProblems(project, worked, ends));
  for (const { course, own } of courses) {
    problems.push(...courseTextProblems(course, worked, projects));
    problems.push(...sessionProblems(course, own, worked, site));
    if (worked) problems.push(...stepsWithoutCaution(course, own, worked));
  }
  if (project) {
    const own = lessons.map(({ lesson }) => lesson);
    problems.push(...unmentionedSteps(project, own), ...idleMeasures(project, own));
  }
  for (const { lesson, course } of lessons) {
    problems.push(...frontProblems(lesson, course, projects));
    const surroundings = {
      // A lesson or course that could not be read may well name one.
      project: named ?? (lesson.value && course?.value ? undefined : ''),
      worked,
      projects,
      recordings: recordings.flatMap(({ recording: { course, name } }) => (course === lesson.course ? [name] : [])),
    };
    const texts = textsOfLesson(lesson);
    problems.push(...lessonProblems(lesson, root, surroundings));
    problems.push(...bracketProblems(lesson.file, texts, surroundings));
    if (worked) problems.push(...typedNumbersInLesson(lesson, texts, worked));
    const said = [
      ...(worked ? wordProblems(lesson, worked) : []),
      ...toolsWithoutCaution(lesson),
      ...questionProblems(lesson),
      ...mathsProblems(lesson),
      ...markdownProblems(lesson),
      ...readingProblems(lesson, site.language),
    ];
    for (const { at, ...rest } of said) {
      problems.push({ file: lesson.file, ...placeIn(lesson.text, at), ...rest });
    }
  }
  for (const { recording, course } of recordings)
    problems.push(...recordingProblems(recording, course, { named, worked, projects }));
  const isUnusable = project && worked && !isWhole(worked);
  return { problems, unusable: new Set(isUnusable ? [project.file] : []) };
}

/** What is wrong in the title, the summary and the sessions of a course. */
function courseTextProblems(
  course: Entry<CourseFile>,
  worked: WorkedOut | undefined,
  projects: readonly string[],
): Diagnostic[] {
  if (!course.value) return [];
  const { project } = course.value;
  const texts = textsOfCourse(course);
  return [
    ...bracketProblems(course.file, texts, { project, worked, projects }),
    ...(worked ? typedNumbersInFile(course, texts, worked) : []),
  ];
}

/** What was found in each part the last time, by the name of its project. */
export type Known = Map<string | undefined, { inputs: readonly unknown[]; found: ContentReport }>;

/** The same, looked up where nothing that it rests on has changed since. */
export function examinePartAgain(part: ContentPart, around: AroundParts, known: Known): ContentReport {
  const inputs = inputsOf(part, around);
  const before = known.get(part.named);
  if (before?.inputs.length === inputs.length && before.inputs.every((input, i) => input === inputs[i]))
    return before.found;
  const found = examinePart(part, around);
  known.set(part.named, { inputs, found });
  return found;
}

/** A file that did not change is the same entry from one reading of the content to the next. */
function inputsOf(
  { project, courses, lessons, recordings }: ContentPart,
  { root, site, materials, projects }: AroundParts,
) {
  const pictures = lessons.flatMap(({ lesson }) =>
    [
      ...lesson.lesson.pictures.map(({ address }) => address),
      ...lesson.lesson.words.flatMap((word) => [...picturesOf(word), ...filesOf(word)]).map(({ file }) => file),
    ].map((address) => {
      const file = path.resolve(root, path.dirname(lesson.file), address);
      return statSync(file, { throwIfNoEntry: false })?.mtimeMs;
    }),
  );
  const entries = [
    ...courses.flatMap(({ course, own }) => [course, ...own]),
    ...lessons.flatMap(({ lesson, course }) => [lesson, course]),
    ...recordings.flatMap(({ recording, course }) => [recording.said, recording.settings, course]),
  ];
  return [project, materials, JSON.stringify([site, projects]), ...pictures, ...entries];
}
