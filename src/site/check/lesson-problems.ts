import path from 'node:path';
import type { z } from 'zod';
import { wordCalled, words as lessonWords } from '../../../components/words/index.ts';
import type { Word } from '../../../components/words/word.ts';
import { closest } from '../../core/measure/index.ts';
import { htmlFaults, isHtml } from '../content/lesson-html.ts';
import { texFault } from '../content/katex-plugin.ts';
import { fileProblems } from './file-problems.ts';
import { filesOf } from '../content/files-beside.ts';
import { picturesOf, pictureProblems } from './picture-problems.ts';
import { referenceFault } from './lesson-references.ts';
import type { Surroundings } from './lesson-references.ts';
import type { TextRange, WrittenAttribute, WrittenMaths, WrittenPicture, WrittenWord } from '../content/lesson-text.ts';
import { placeIn } from '../content/diagnostic.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { LessonEntry } from '../content/read-content.ts';
import { explain, mistakesIn } from '../content/wording.ts';

type Say = (at: number, message: string, fix?: string) => void;

/**
 * What is wrong in the text of a lesson: its words, their attributes and what they name, its maths and its pictures.
 *
 * @param root the folder that holds content/
 */
export function lessonProblems(entry: LessonEntry, root: string, surroundings: Surroundings): Diagnostic[] {
  const problems: Diagnostic[] = [];
  const sayer =
    (part?: TextRange, severity: Diagnostic['severity'] = 'error'): Say =>
    (at, message, fix) =>
      problems.push({
        file: entry.file,
        ...placeIn(entry.text, at),
        severity,
        message,
        fix,
        ...(part && { part }),
      });

  const folder = path.resolve(root, path.dirname(entry.file));
  for (const { at, message, fix } of entry.lesson.faults) sayer()(at, message, fix);
  for (const maths of entry.lesson.maths) checkMaths(maths, sayer(maths.part));
  for (const word of entry.lesson.words) {
    if (isHtml(word)) checkHtml(word, sayer(word.part));
    else {
      checkWord(word, surroundings, sayer(word.part));
      for (const { at, file } of picturesOf(word))
        for (const { severity, message, fix } of pictureProblems(encodeURI(file), folder))
          sayer(severity === 'error' ? word.part : undefined, severity)(at, message, fix);
      for (const { at, file } of filesOf(word))
        for (const { severity, message, fix } of fileProblems(file, folder))
          sayer(severity === 'error' ? word.part : undefined, severity)(at, message, fix);
    }
  }
  for (const picture of entry.lesson.pictures) {
    checkPicture(picture, folder, sayer(picture.part), sayer(undefined, 'warning'));
  }
  return problems;
}

function checkMaths({ tex, display, at }: WrittenMaths, say: Say): void {
  const fault = texFault(tex, display);
  if (fault) say(at + fault.at, `This maths cannot be set: ${fault.message}.`);
}

function checkPicture({ address, words, part }: WrittenPicture, folder: string, say: Say, warn: Say): void {
  for (const { severity, message, fix } of pictureProblems(address, folder))
    (severity === 'error' ? say : warn)(part.start, message, fix);
  if (!words.trim())
    warn(part.start, 'This picture has no words for those who cannot see it.', 'Write ![what it shows](…).');
}

function checkHtml(element: WrittenWord, say: Say): void {
  const word = Object.keys(lessonWords).find((one) => one.toLowerCase() === element.name.toLowerCase());
  if (word) say(element.part.start, `A lesson word is written with its capitals: <${word}>.`);
  else for (const { at, message, fix } of htmlFaults(element)) say(at, message, fix);
}

function checkWord(written: WrittenWord, surroundings: Surroundings, say: Say): void {
  const { name, hasText } = written;
  const at = written.part.start;
  const word = wordCalled(name);
  if (!word) {
    const near = closest(name, Object.keys(lessonWords));
    say(
      at,
      `There is no lesson word <${name}>.`,
      near ? `Did you mean <${near}>?` : `There are: ${Object.keys(lessonWords).join(', ')}.`,
    );
    return;
  }
  const { text = 'none', anywhere = false } = word;
  if (text === 'needed' && !hasText) say(at, `<${name}> has no text.`, `Write it between <${name}> and </${name}>.`);
  if (text === 'none' && hasText) say(at, `<${name}> takes no text.`, `Write <${name} /> and let the text follow.`);
  if (!anywhere && surroundings.project === undefined) {
    say(
      at,
      `<${name}> shows the numbers of a project, and this lesson has none.`,
      'Write “project: …” at its top, or in course.yaml.',
    );
    return;
  }
  const attributes = readAttributes(written, word, say);
  if (!attributes) return;
  for (const [attribute, reference] of Object.entries(word.names ?? {})) {
    const found = attributes.get(attribute);
    if (typeof found?.value !== 'string') continue;
    const fault = referenceFault(reference, found.value, surroundings);
    if (fault) say(found.textAt + fault.at, fault.message, fault.fix);
  }
}

/** The attributes by name; undefined where the braces hold something that cannot be understood. */
function readAttributes(
  written: WrittenWord,
  { attributes: schema, text: takesText = 'none' }: Word,
  say: Say,
): Map<string, WrittenAttribute> | undefined {
  const { name, part, spread, attributes } = written;
  if (spread !== undefined) {
    say(spread, `<${name}>: braces cannot stand for attributes.`, 'Write each one by its name.');
    return undefined;
  }
  const byName = new Map<string, WrittenAttribute>();
  for (const attribute of attributes) {
    if (byName.has(attribute.name))
      say(attribute.at, `<${name}> ${attribute.name}: this is given twice.`, 'Keep one of them.');
    byName.set(attribute.name, attribute);
  }
  const unread = attributes.filter((attribute) => attribute.value === undefined);
  for (const attribute of unread) {
    say(
      attribute.at,
      `<${name}> ${attribute.name}: the braces hold no plain value.`,
      'In braces go a number, true or false, or a list with double quotes: ["a", "b"]. A text alone goes in quotes.',
    );
  }
  if (unread.length) return undefined;
  const values = Object.fromEntries(attributes.map((attribute) => [attribute.name, attribute.value]));
  const parsed = schema.safeParse(values, { error: explain, reportInput: true });
  if (!parsed.success) {
    for (const mistake of mistakesIn(parsed.error.issues, schema)) {
      const attribute = String(mistake.key ?? mistake.place[0] ?? '');
      const own = byName.get(attribute);
      const label = mistake.key === undefined && attribute ? `<${name}> ${attribute}` : `<${name}>`;
      const list = /^Write \[(.*)\]\.$/u.exec(mistake.fix ?? '')?.[1];
      const isText = ['text', 'words', 'content'].includes(String(mistake.key)) && takesText !== 'none';
      const fix = list
        ? `Write ${attribute}={[${list
            .split(', ')
            .map((one) => JSON.stringify(one))
            .join(', ')}]}.`
        : isText
          ? `Write the words between <${name}> and </${name}>.`
          : own && isSentence(own.value) && takesText === 'allowed'
            ? `Your own words stand between <${name}> and </${name}>.`
            : mistake.fix;
      say(own?.at ?? part.start, `${label}: ${mistake.message}`, fix ?? inBraces(own, schema));
    }
  }
  return byName;
}

/** Whether an attribute holds words for a reader and not a name. */
const isSentence = (value: unknown): boolean => typeof value === 'string' && /\S+ \S+ \S+/u.test(value);

/** A number in quotes is a text; that is the slip most easily made. */
function inBraces(attribute: WrittenAttribute | undefined, schema: z.ZodObject): string | undefined {
  if (typeof attribute?.value !== 'string') return undefined;
  const plain = Number(attribute.value);
  if (attribute.value.trim() === '' || !Number.isFinite(plain)) return undefined;
  const field = schema.shape[attribute.name] as z.ZodType | undefined;
  return field?.safeParse(plain).success ? `Write ${attribute.name}={${plain}}.` : undefined;
}
