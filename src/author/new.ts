/** npm run new: a course, a project or a lesson to begin with. It asks for what it is not told. */
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline/promises';
import { fileURLToPath } from 'node:url';
import GithubSlugger from 'github-slugger';
import { capital, closest, type Edition } from '../core/measure/index.ts';
import { ProjectFile } from '../core/project/schema.ts';
import { readYaml } from '../site/content/located-yaml.ts';
import { schemaLine, writeEditorFiles } from '../site/content/editor-files.ts';
import { readContent } from '../site/content/read-content.ts';
import type { Content, Entry } from '../site/content/read-content.ts';
import type { CourseFile } from '../site/content/schemas.ts';
import { recordedFrom } from '../site/pages/recorded.ts';
import { readArguments, tell, type Command } from './arguments.ts';
import { courseFile, lessonFile, projectFile } from './blanks.ts';
import { draftLesson, draftProject } from './from-recording.ts';
import { refusalFor, writeAuthorFile, type Refusal } from './write-file.ts';
import { withEntry, withValue } from './yaml-edit.ts';

export type NewRequest = {
  kind: 'course' | 'project' | 'lesson';
  /** Name of its folder or file, or its title. */
  name: string;
  title?: string | undefined;
  /** Of a course: the project its lessons make. Of a project: the one it starts from. */
  project?: string | undefined;
  /** Of a lesson. */
  course?: string | undefined;
  /** Of a lesson: the recording of its course that it is drafted from. */
  recording?: string | undefined;
};

/** Files written anew, files with one more line, and the sentence to go on with; or why nothing was done. */
export type Made = { ok: true; written: string[]; changed: string[]; next: string } | { ok: false; why: string };

/**
 * Writes a course, a project or a lesson. Nothing that is there already is written over.
 *
 * @param root the folder that holds content/
 */
export function make(root: string, wish: NewRequest): Made {
  const content = readContent(root);
  const id = addressed(wish.name);
  if (id === '') return { ok: false, why: 'A name belongs there, with letters from a to z.' };
  const title = wish.title ?? (id === wish.name ? capital(id.replaceAll('-', ' ')) : wish.name);
  if (wish.kind === 'project') return makeProject(root, content, id, title, wish.project);
  if (wish.kind === 'course') return makeCourse(root, content, id, title, wish.project);
  return makeLesson(root, content, wish.course ?? '', id, title, wish.recording);
}

const addressed = (name: string): string =>
  new GithubSlugger()
    .slug(name.normalize('NFKD').replace(/\p{M}/gu, ''))
    .replace(/[^a-z0-9-]/g, '')
    .replace(/-+/g, '-')
    .replace(/^-|-$/g, '');

/** The one that is called so, or a sentence that says which there are. */
function found<T extends { id: string }>(kind: string, id: string, all: readonly T[]): T | string {
  const one = all.find((entry) => entry.id === id);
  if (one) return one;
  const ids = all.map((entry) => entry.id);
  const near = closest(id, ids);
  const fix = near ? `Did you mean “${near}”?` : ids.length ? `There are: ${ids.join(', ')}.` : 'Make one first.';
  return `There is no ${kind} “${id}”. ${fix}`;
}

function makeProject(root: string, content: Content, id: string, title: string, from: string | undefined): Made {
  const file = `content/projects/${id}/project.yaml`;
  let text = projectFile(id, title, content.site.value?.edition ?? 'inch', content.materials.value);
  if (from !== undefined) {
    const source = found('project', from, content.projects);
    if (typeof source === 'string') return { ok: false, why: source };
    const copy = withValue(source.text, ['title'], title);
    if (copy === undefined) return { ok: false, why: `${source.file} has no title. Mend it first.` };
    text = copy;
  }
  return written(root, new Map([[file, text]]), new Map(), `Open ${file} and put in your own numbers.`);
}

function makeCourse(root: string, content: Content, id: string, title: string, projectId: string | undefined): Made {
  const project = projectId === undefined ? undefined : found('project', projectId, content.projects);
  if (typeof project === 'string') return { ok: false, why: project };
  const file = `content/courses/${id}/course.yaml`;
  const lesson = '01-first-lesson.mdx';
  const first = `content/courses/${id}/${lesson}`;
  const edition = content.site.value?.edition ?? 'inch';
  return written(
    root,
    new Map([
      [file, courseFile(id, { title, project: project?.id, lesson })],
      [first, lessonFile('First lesson', project?.value, edition)],
    ]),
    new Map(),
    `Open ${file} for its name and summary, and ${first} for the lesson.`,
  );
}

function makeLesson(
  root: string,
  content: Content,
  courseId: string,
  id: string,
  title: string,
  recordingName: string | undefined,
): Made {
  const course = found('course', courseId, content.courses);
  if (typeof course === 'string') return { ok: false, why: course };
  const own = content.lessons.filter((lesson) => lesson.course === courseId);
  const twin = own.find(({ slug }) => slug === id);
  if (twin) return { ok: false, why: `${twin.file} is there already. Give the lesson another name.` };
  const number = Math.max(0, ...own.map(({ fileName }) => parseInt(fileName, 10) || 0)) + 1;
  const fileName = `${String(number).padStart(2, '0')}-${id}.mdx`;
  const file = `content/courses/${courseId}/${fileName}`;
  const listed = withEntry(course.text, ['lessons'], fileName);
  if (listed === undefined) return { ok: false, why: `${course.file} has no list of lessons. Mend it first.` };
  const lines = new Map([[course.file, { before: course.text, after: listed }]]);
  const edition = content.site.value?.edition ?? 'inch';
  if (recordingName !== undefined) {
    const drafted = fromRecording(content, course, recordingName, title, edition);
    if (typeof drafted === 'string') return { ok: false, why: drafted };
    const { lesson, project } = drafted;
    const next = `Open ${file}: the words are yours, and each comment that says “decide” waits for you.`;
    return written(
      root,
      new Map([[file, lesson], ...(project?.files ?? [])]),
      lines,
      project ? `${next} The sizes that were said are in ${project.file}, with what is missing asked.` : next,
    );
  }
  const project = content.projects.find((entry) => entry.id === course.value?.project)?.value;
  return written(
    root,
    new Map([[file, lessonFile(title, project, edition)]]),
    lines,
    `Open ${file} and write round the words that are there.`,
  );
}

/** The draft of a lesson, and of a project where the recording has none; or why there is neither. */
function fromRecording(
  content: Content,
  course: Entry<CourseFile>,
  name: string,
  title: string,
  edition: Edition,
): { lesson: string; project?: { files: [string, string][]; file: string } } | string {
  const own = content.recordings.filter((one) => one.course === course.id);
  const entry = found(
    'recording',
    name,
    own.map((one) => ({ ...one, id: one.name })),
  );
  if (typeof entry === 'string') return `${entry} It lies in content/courses/${course.id}/recordings.`;
  const recording = recordedFrom(entry, course.value);
  if (!recording) return `${entry.said.file} has a mistake. Mend it first: npm run check tells where.`;
  const materials = content.materials.value ?? {};
  const { lines, projectId } = recording;
  const of = { title, name, lines, edition, glossary: Object.keys(content.glossary.value ?? {}) };
  if (projectId !== undefined) {
    const project = content.projects.find(({ id }) => id === projectId);
    if (!project?.value) return `The project ${projectId} cannot be read. Mend it first: npm run check tells where.`;
    const named = projectId === course.value?.project ? undefined : projectId;
    return { lesson: draftLesson({ ...of, project: { file: project.value, materials, named } }) };
  }
  const file = `content/projects/${name}/project.yaml`;
  if (content.projects.some(({ id }) => id === name))
    return `${file} is there already. Name it in the course or beside the recording: project: ${name}.`;
  const text = draftProject(name, title, lines, edition);
  const read = readYaml(text, ProjectFile, file).value;
  const files: [string, string][] = [[file, text]];
  // The recording has to know its project, too.
  const settings = `content/courses/${course.id}/recordings/${name}.yaml`;
  if (!entry.settings) files.push([settings, `${schemaLine(settings, 'recording')}\nproject: ${name}\n`]);
  return {
    lesson: draftLesson({ ...of, project: read && { file: read, materials, named: name } }),
    project: { files, file },
  };
}

type Changes = Map<string, { before: string; after: string }>;

function written(root: string, files: Map<string, string>, changes: Changes, next: string): Made {
  const there = [...files.keys()].find((file) => existsSync(path.join(root, file)));
  if (there) return { ok: false, why: `${there} is there already, and stays as it is. Choose another name.` };
  const all = [...[...files].map(([file, after]) => [file, { before: undefined, after }] as const), ...changes];
  const made: string[] = [];
  for (const [file, { before, after }] of all) {
    const full = path.join(root, file);
    const refusal = folderFor(full, made) ?? writeAuthorFile(full, after, { before });
    if (!refusal) {
      if (before === undefined) made.push(full);
      continue;
    }
    // The last made goes first: a folder is empty by then.
    for (const one of made.toReversed()) rmSync(one, { recursive: true, force: true });
    return { ok: false, why: `${refusal.message} ${refusal.fix}` };
  }
  return { ok: true, written: [...files.keys()], changed: [...changes.keys()], next };
}

/** Makes the folder of a file, and notes the topmost that was not there before. */
function folderFor(file: string, made: string[]): Refusal | undefined {
  try {
    const first = mkdirSync(path.dirname(file), { recursive: true });
    if (first !== undefined) made.push(first);
    return undefined;
  } catch (error) {
    return refusalFor(file, error);
  }
}

type Ask = (question: string, choices?: readonly string[]) => Promise<string>;

const COMMAND = {
  name: 'npm run new',
  about: 'Writes a course, a project or a lesson to begin with. It asks for what it is not told.',
  names: 'project|course <name>, or lesson <course> <name>',
  choices: {
    title: { takes: 'TITLE', words: true, about: 'what learners read; the name if left out' },
    project: { takes: 'NAME', about: 'of a course: the project that its lessons make' },
    from: { takes: 'NAME', about: 'of a project: the one that it starts from' },
    'from-recording': { takes: 'NAME', about: 'of a lesson or project: the recording that it is drafted from' },
  },
  examples: [
    'npm run new -- project tote --title "Tote bag"',
    'npm run new -- project wide-folio --from swatch-folio',
    'npm run new -- course totes --title "Totes" --project tote',
    'npm run new -- lesson totes "Cut the panels"',
    'npm run new -- lesson totes --from-recording whole-tote',
  ],
} as const satisfies Command;

type Given = Pick<Extract<ReturnType<typeof readArguments<typeof COMMAND.choices>>, { ok: true }>, 'values' | 'names'>;

/** The words after the command; not what they leave open. */
export const readWords = (given?: string[], environment?: NodeJS.ProcessEnv) =>
  readArguments(COMMAND, given, environment);

/** Asks for what the words leave open. */
export async function requestFrom({ values, names }: Given, content: Content, ask: Ask): Promise<NewRequest> {
  const isNamed = names.length > 0;
  const [given, ...rest] = names;
  const kind = isKind(given) ? given : await askKind(ask);
  const projects = content.projects.map(({ id }) => id);
  if (kind === 'lesson') {
    const course =
      rest[0] ??
      (await ask(
        'To which course does it belong?',
        content.courses.map(({ id }) => id),
      ));
    const recording = values['from-recording'];
    const name = rest[1] ?? recording ?? (await ask('What is the lesson called?'));
    return { kind, course, name, title: values.title, ...(recording !== undefined && { recording }) };
  }
  const name = rest[0] ?? (await ask(`What is the ${kind} called?`));
  const chosen = values.from ?? values.project;
  if (chosen !== undefined || isNamed || projects.length === 0)
    return { kind, name, title: values.title, project: chosen };
  const question = kind === 'course' ? 'Which project do its lessons make?' : 'Which project does it start from?';
  const project = await ask(`${question} Leave it empty for none.`, projects);
  return { kind, name, title: values.title, project: project || undefined };
}

const isKind = (text: string | undefined): text is NewRequest['kind'] =>
  text === 'course' || text === 'project' || text === 'lesson';

async function askKind(ask: Ask): Promise<NewRequest['kind']> {
  for (;;) {
    const kind = await ask('What shall it be?', ['project', 'course', 'lesson']);
    if (isKind(kind)) return kind;
  }
}

/** Asks in the terminal; a number chooses from a list. */
function asker(): { ask: Ask; close: () => void } {
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  const lines = terminal[Symbol.asyncIterator]();
  return {
    close: () => terminal.close(),
    async ask(question, choices = []) {
      console.log(question);
      for (const [i, choice] of choices.entries()) console.log(`  ${i + 1}  ${choice}`);
      const { value, done } = await lines.next();
      if (done) throw new Error('Nothing was written.');
      const answer = value.trim();
      return choices[Number(answer) - 1] ?? answer;
    },
  };
}

async function main(): Promise<void> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const words = readWords();
  if (!words.ok) return tell(words);
  const { ask, close } = asker();
  try {
    const made = make(root, await requestFrom(words, readContent(root), ask));
    if (!made.ok) throw new Error(made.why);
    writeEditorFiles(root);
    for (const file of made.written) console.log(`Written: ${file}`);
    for (const file of made.changed) console.log(`One line more: ${file}`);
    console.log(made.next);
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  } finally {
    close();
  }
}

if (import.meta.main) await main();
