/** Every text that an author writes for people, wherever it stands, as the checks read it. */
import { textsIn } from '../../core/project/index.ts';
import type { ProjectFile } from '../../core/project/schema.ts';
import { attributeTexts } from '../content/attribute-texts.ts';
import { isHtml } from '../content/lesson-html.ts';
import { wordCalled } from '../../../components/words/index.ts';
import { placeIn } from '../content/diagnostic.ts';
import type { TextRange } from '../content/lesson-text.ts';
import type { Content, Entry, LessonEntry, RecordingEntry } from '../content/read-content.ts';
import type { CourseFile } from '../content/schemas.ts';

export type Said = {
  kind: 'prose' | 'heading' | 'attribute' | 'text';
  text: string;
  /** The attribute that holds it. */
  name?: string;
  /** Line and column of one of its characters. */
  place: (index: number) => { line: number; column: number };
  /** The same as an offset into the file; of a lesson's text and its attributes. */
  offset?: (index: number) => number;
  /** It stands inside a question, which may come up with other numbers. */
  inQuestion?: boolean;
  /** The lesson word that cannot be shown without it. */
  part?: TextRange;
};

/** The texts of a lesson: its title and summary, its prose, and what its words' attributes say. */
export function textsOfLesson(entry: LessonEntry): Said[] {
  const within = (offset: (index: number) => number) => ({
    offset,
    place: (index: number) => placeIn(entry.text, offset(index)),
  });
  const { prose, words } = entry.lesson;
  const questions = words.filter((word) => !isHtml(word) && wordCalled(word.name)?.group === 'question');
  const inQuestion = (at: number) => questions.some(({ part }) => part.start <= at && at < part.end);
  return [
    ...named(entry, [
      [['title'], entry.value?.title],
      [['summary'], entry.value?.summary],
    ]),
    ...prose.map(({ kind, text, start }): Said => ({
      kind: kind === 'heading' ? 'heading' : 'prose',
      text,
      inQuestion: inQuestion(start),
      ...within((index) => start + index),
    })),
    ...words.flatMap((word) =>
      attributeTexts(word, entry.text).map(({ attribute: name, text, at, part }): Said => ({
        ...{ kind: 'attribute', name, text, part },
        ...within(at),
      })),
    ),
  ];
}

/** The texts of a course: its title, its summary, and what is done in each session. */
export const textsOfCourse = (entry: Entry<CourseFile>): Said[] =>
  named(entry, [
    [['title'], entry.value?.title],
    [['summary'], entry.value?.summary],
    ...(entry.value?.sessions ?? []).map(({ title }, i) => [['sessions', i, 'title'], title] as const),
  ]);

/** The texts that belong to a recording: its title and its corrections. What is said in it is nobody's to check here. */
export const textsOfRecording = ({ settings }: RecordingEntry): Said[] =>
  settings
    ? named(settings, [
        [['title'], settings.value?.title],
        ...(settings.value?.corrections ?? []).map(({ note }, i) => [['corrections', i, 'note'], note] as const),
      ])
    : [];

/** The texts of a project file. */
export const textsOfProject = (entry: Entry<ProjectFile>): Said[] =>
  named(
    entry,
    (entry.value ? textsIn(entry.value) : []).map(({ place, text }) => [place, text]),
  );

/** The texts of the files that belong to no project. */
export function textsOfNoProject({ site, glossary, materials }: Content): [Entry<unknown>, Said[]][] {
  const entries = (of: object | undefined) => Object.entries(of ?? {});
  return [
    [site, named(site, [[['summary'], site.value?.summary]])],
    [
      glossary,
      named(
        glossary,
        entries(glossary.value).map(([term, text]) => [[term], text as string]),
      ),
    ],
    [
      materials,
      named(
        materials,
        entries(materials.value).flatMap(([name, { label, note }]: [string, { label?: string; note?: string }]) => [
          [[name, 'label'], label] as const,
          [[name, 'note'], note] as const,
        ]),
      ),
    ],
  ];
}

type Place = readonly (string | number)[];

const named = (
  { locate }: Entry<unknown>,
  texts: readonly (readonly [place: Place, text: string | undefined])[],
): Said[] =>
  texts.flatMap(([place, text]): Said[] =>
    text === undefined
      ? []
      : [{ kind: 'text', text, place: (index) => locate(place, { start: index, end: text.length }) }],
  );
