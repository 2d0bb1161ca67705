/** Slips in the signs of Markdown: what reads as it was meant to an author, and shows as something else. */
import { quote } from '../../core/measure/index.ts';
import { JOINER, type Prose } from '../content/lesson-prose.ts';
import type { AtOffset } from '../content/diagnostic.ts';
import type { LessonEntry } from '../content/read-content.ts';

/** Headings that are none, that hold nothing, or that stand beside the title; lists, tables and bold that come to nothing. */
export function markdownProblems({ lesson, text }: LessonEntry): AtOffset[] {
  const headings = lesson.prose.filter(({ kind }) => kind === 'heading');
  return [
    ...headings.flatMap((heading, i) => headingSlips(heading, headings[i + 1], text)),
    ...lesson.prose.flatMap((prose) => (prose.kind === 'paragraph' ? signs(prose) : [])),
  ];
}

const warning = (at: number, message: string, fix: string): AtOffset => ({ at, severity: 'warning', message, fix });

function headingSlips(heading: Prose, next: Prose | undefined, source: string): AtOffset[] {
  const { start } = heading;
  const written = source.slice(start, start + heading.text.length);
  const words = heading.text.replaceAll(JOINER, '').trim();
  if (words === '') return [warning(start, 'This heading has no words.', 'Write them, or take the signs away.')];
  if (levelOf(written) === 1) {
    const fix = `Write ${quote(`## ${words}`)}.`;
    return [warning(start, 'The title of the lesson is the first heading of its page already.', fix)];
  }
  if (!written.startsWith('#') && words.length > LONGEST) {
    const fix = 'Leave a line empty above it, where it is to be a line across the page.';
    return [warning(start, 'A line of --- right below a text makes a heading of it.', fix)];
  }
  const isOver = next === undefined || levelOf(source.slice(next.start)) <= levelOf(written);
  const below = source.slice(start + heading.text.length, next?.start);
  if (!isOver || below.replace(COMMENT, '').trim() !== '') return [];
  return [
    warning(start, `Nothing stands below the heading ${quote(words)}.`, 'Write something there, or take it away.'),
  ];
}

/** A heading of more letters is more likely a text. Common practice, no source. */
const LONGEST = 80;
const COMMENT = /\{\s*\/\*[\s\S]*?\*\/\s*\}/gu;

/** One for # and for a line of === below, two for ## and a line of ---. */
const levelOf = (written: string): number =>
  /^#+/u.exec(written)?.[0].length ?? (/^.*\n=+\s*$/mu.test(written.split('\n').slice(0, 2).join('\n')) ? 1 : 2);

/** Signs at the beginning of a line that lack their blank, or that come from a text program. */
const AT_LINE_START: readonly [sign: RegExp, message: string, fix: (found: RegExpExecArray) => string][] = [
  [
    /(?<=^|\n)(#{2,6})([^#\s][^\n]*)|(?<=^|\n)(#)(\p{Lu}[^\n]*)/u,
    'This is no heading: no blank stands behind its #.',
    (found) => `Write ${quote(`${found[1] ?? '##'} ${(found[2] ?? found[4])!.trim()}`)}.`,
  ],
  [/(?<=^|\n)[•·‣▪●–][ \t]*(?=\S)/u, 'This sign makes no list.', () => 'Begin each line of a list with “- ”.'],
  [/(?<=^|\n)-(?=\p{L})/u, 'This is no list: no blank stands behind its -.', () => 'Write “- ” before each line.'],
  [
    /(?<=^|\n)(\d{1,2})[.)](?=\p{L})/u,
    'This is no list: no blank stands behind its number.',
    (found) => `Write “${found[1]}. ”.`,
  ],
  [
    /(?<=^|\n)[ \t]*\|[^\n]*\|[ \t]*(?=\n|$)/u,
    'This is no table: the line below its heads is missing.',
    () => 'Write a line of dashes there, one for each column: | --- | --- |.',
  ],
];

/** A link or a picture whose address has a blank in it, which ends the address. */
const WITH_BLANKS = /(!?)\[([^\]\n]*)\]\(([^()\n"<>]*[^()\s"<>] [^()\s"<>][^()\n"<>]*)\)/u;

function signs({ start, text }: Prose): AtOffset[] {
  const found = AT_LINE_START.flatMap(([sign, message, fix]) => {
    const at = sign.exec(text);
    return at ? [warning(start + at.index, message, fix(at))] : [];
  });
  const blank = WITH_BLANKS.exec(text);
  if (blank) {
    const [, picture, words = '', address = ''] = blank;
    const message = `This is no ${picture ? 'picture' : 'link'}: its address has a blank in it.`;
    const fix = `Write ${picture}[${words}](${address.trim().replaceAll(' ', '%20')}), or name the file without blanks.`;
    found.push(
      warning(
        start + blank.index,
        message,
        picture || /\.\w+$/u.test(address) ? fix : 'Write the address of a page: ../fold/',
      ),
    );
  }
  const stars = text.search(/\*\*/u);
  if (stars >= 0) {
    const message = 'These stars make nothing bold.';
    found.push(warning(start + stars, message, 'Write **words**, with no blank inside the stars.'));
  }
  return found;
}
