/** Every document of a course: what there is, under which name, and how to make it. */
import { cautions, defersTo } from '../../../components/words/caution/cautions.ts';
import {
  answerKey,
  classPlan,
  clockTime,
  exercisesFor,
  inText,
  cutList,
  isOnPaper,
  plainName,
  pieceSvg,
  projectDocuments,
  resolveProject,
  slug,
  usualSizes,
  wordsAt,
  worksheet,
} from '../../core/index.ts';
import type {
  PaperQuestion,
  CautionWords,
  Edition,
  Exercises,
  Handout,
  HandoutSetting,
  LessonOnPaper,
  PaperName,
  Pattern,
  PlannedLesson,
  Seed,
  Subject,
  UsualSizes,
} from '../../core/index.ts';
import { lessonOnPaper } from '../content/lesson-on-paper.ts';
import type { Content, LessonEntry } from '../content/read-content.ts';
import { recordedIn, viewOf } from '../pages/recorded.ts';
import { classOf, languageTag, type GlossaryFile } from '../content/schemas.ts';

export type HandoutChoice = {
  papers: readonly PaperName[];
  editions: readonly Edition[];
  largePrint: boolean;
  /** The size of projects that have one of this name; that of the lesson if left out. */
  size?: string;
  /** How many makers the class has: the class plan is made for them. Those of site.yaml if left out. */
  makers?: number;
  /** The series of numbers on the worksheets, and how many different sheets of it. */
  series: string;
  sheets: number;
};

export const everything: HandoutChoice = {
  papers: ['A4', 'Letter'],
  editions: ['inch', 'metric'],
  largePrint: false,
  series: 'A',
  sheets: 6,
};

/** One file to write: a document, or the outline of a piece for a cutting machine. */
export type Planned = {
  /** From the folder of all handouts, with forward slashes: `pocket-folio/a4-inch/templates.pdf`. */
  file: string;
  reader: Handout['reader'];
} & ({ kind: 'document'; title: string; make: () => Handout } | { kind: 'outline'; make: () => string });

/** What can be printed for a course. Lessons without a project, and what holds nothing, are left out. */
export function plannedHandouts(content: Content, course: string, choice: HandoutChoice): Planned[] {
  const entry = content.courses.find(({ id }) => id === course)?.value;
  if (!entry) return [];
  const lessons = entry.lessons.flatMap((fileName) =>
    content.lessons.filter((lesson) => lesson.course === course && lesson.fileName === fileName),
  );
  return choice.editions.flatMap((edition): Planned[] => {
    const projects = new Map<string, Resolved>();
    const projectOf = (id: string | undefined): Resolved | undefined => {
      if (id === undefined) return undefined;
      const known = projects.get(id) ?? resolved(content, id, edition, choice.size);
      if (known) projects.set(id, known);
      return known;
    };
    const main = projectOf(entry.project);
    const told = (text: string) => inText(text, main?.pattern);
    const paper = lessons.map((lesson) =>
      onPaper(lesson, projectOf(lesson.value?.project ?? entry.project), content.glossary.value ?? {}, choice),
    );
    return [
      ...[...projects].flatMap(([id, { pattern }]) => outlines(course, id, edition, pattern)),
      ...choice.papers.flatMap((name): Planned[] => {
        const setting: HandoutSetting = {
          paper: name,
          language: languageTag(content.site.value ?? { language: 'en', spelling: 'american' }),
          school: content.site.value?.name ?? '',
          largePrint: choice.largePrint,
        };
        const folder = `${course}/${name.toLowerCase()}-${edition}`;
        const document = (name: string, title: string, reader: Handout['reader'], make: () => Handout): Planned => ({
          kind: 'document',
          title,
          file: `${folder}/${reader === 'teacher' ? 'teacher/' : ''}${name}.pdf`,
          reader,
          make,
        });
        return [
          ...[...projects].flatMap(([id, { pattern }]) => {
            const before = id === entry.project ? '' : `${id}-`;
            return projectDocuments(pattern, { cautions, defersTo, times: () => stepTimes(content, course, id) }).map(
              ({ name, title, make }) => document(before + name, title, 'maker', () => make(setting)),
            );
          }),
          ...paper.flatMap(({ lesson, exercises, pattern, asks }) => {
            if (!exercises || !pattern || !asks) return [];
            const seeds = seedsOf(choice);
            return [
              document(`worksheet-${lesson.name}`, `Worksheet: ${lesson.title}`, 'maker', () =>
                worksheet(lesson, exercises(), seeds, pattern, setting),
              ),
              document(`answer-key-${lesson.name}`, `Answer key: ${lesson.title}`, 'teacher', () =>
                answerKey(lesson, exercises(), seeds, pattern, setting),
              ),
            ];
          }),
          document('class-plan', 'Class plan', 'teacher', () => {
            return classPlan(
              {
                ...{ title: told(entry.title), summary: told(entry.summary), level: entry.level, defersTo },
                sessions: entry.sessions.map((session) => ({ ...session, title: told(session.title) })),
                ...classOf(content.site.value),
                ...(choice.makers !== undefined && { makers: choice.makers }),
                lessons: paper.map(({ planned }) => planned),
              },
              main?.pattern,
              setting,
            );
          }),
        ];
      }),
    ];
  });
}

/**
 * Where a recording of a course shows each step of a project, by the step’s id; of several recordings the first that shows it.
 *
 * @example stepTimes(content, 'pocket-folio', 'swatch-folio')['pleat'] // => 'from 1:35 to 2:10'
 */
export function stepTimes(content: Content, course: string, project: string): Record<string, string> {
  const times: Record<string, string> = {};
  for (const { recording, project: of } of recordedIn(content, course)) {
    if (recording.projectId !== project) continue;
    for (const { step, from, to } of viewOf(recording, of, content.site.value?.edition ?? 'inch').chapters)
      times[step] ??= `from ${clockTime(from)} to ${clockTime(to)}`;
  }
  return times;
}

type Resolved = {
  pattern: Pattern;
  resolve: (values: Record<string, number>) => Pattern;
  measured: (subject: Subject) => UsualSizes | undefined;
};

function resolved(content: Content, id: string, edition: Edition, asked?: string): Resolved | undefined {
  const file = content.projects.find((project) => project.id === id)?.value;
  if (!file) return undefined;
  const materials = content.materials.value ?? {};
  const wanted = asked === undefined ? undefined : plainName(asked);
  const size = Object.keys(file.sizes?.of ?? {}).find((one) => plainName(one) === wanted);
  const settings = { edition, materials, ...(size !== undefined && { size }) };
  const resolve = (values: Record<string, number>) => resolveProject(file, { ...settings, values });
  const measured = (subject: Subject) => usualSizes(subject, { file, settings });
  return { pattern: resolve({}), resolve, measured };
}

const seedsOf = ({ series, sheets }: HandoutChoice): Seed[] =>
  Array.from({ length: sheets }, (_, i) => ({ series, sheet: i + 1 }));

function outlines(course: string, project: string, edition: Edition, pattern: Pattern): Planned[] {
  return Object.values(pattern.pieces).map((piece) => ({
    kind: 'outline',
    file: `${course}/outlines-${edition}/${project}/${slug(piece.name)}.svg`,
    reader: 'maker',
    make: () => pieceSvg(piece),
  }));
}

type OnPaper = {
  lesson: LessonOnPaper;
  planned: PlannedLesson;
  pattern: Pattern | undefined;
  /** Whether it has a question for paper. */
  asks: boolean;
  /** The same numbers for every paper: drawn once, when first asked for. */
  exercises: (() => Exercises) | undefined;
};

function onPaper(
  entry: LessonEntry,
  project: Resolved | undefined,
  glossary: GlossaryFile,
  { series }: HandoutChoice,
): OnPaper {
  const { questions, picks, shows, cautions } = lessonOnPaper(entry.text, {
    glossary,
    ...(project && { pieces: cutList(project.pattern).map(({ piece }) => piece) }),
    measured: (subject) => project?.measured(subject),
  });
  const front = entry.value;
  const pattern = project?.pattern;
  const title = inText(front?.title ?? entry.slug, pattern);
  const said = (words: PaperQuestion['words']) => wordsAt(words, pattern);
  let exercises: Exercises | undefined;
  return {
    lesson: {
      name: entry.slug,
      title,
      picks,
    },
    planned: {
      title,
      summary: inText(front?.summary ?? '', pattern),
      minutes: front?.minutes ?? 0,
      session: front?.session,
      shows: shows.map(said),
      cautions: cautions.map(({ of, words }) => wordsOf(of, said(words))),
    },
    pattern,
    asks: project !== undefined && (picks.length > 0 || questions.some((asked) => isOnPaper(asked, project.pattern))),
    exercises: project && (() => (exercises ??= exercisesFor(questions, project.resolve, series))),
  };
}

/** The lesson's own words first, the usual ones after them, as on the page. */
function wordsOf(of: string | undefined, own: string): CautionWords {
  const usual = of === undefined ? undefined : cautions[of];
  return {
    title: usual?.title ?? 'Caution',
    sentences: [...(own === '' ? [] : [own]), ...(usual?.sentences ?? [])],
  };
}
