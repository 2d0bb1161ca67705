/** What is written for each recording: captions, chapters, the text for below it, and a transcript. */
import { createHash } from 'node:crypto';
import { inCaption, lineFor, partsFor } from '../../../components/words/recording/follow.ts';
import { inEditions, type RecordingFiles, type RecordingView } from '../../../components/words/recording/view.ts';
import { paragraphsOf } from '../../../components/words/recording/paragraphs.ts';
import {
  clockTime,
  cutList,
  formatLength,
  inText,
  materialsList,
  misheard,
  courseWords,
  spokenSizes,
} from '../../core/index.ts';
import type { Edition, Pattern } from '../../core/index.ts';
import type { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import type { Content } from '../content/read-content.ts';
import { languageTag } from '../content/schemas.ts';
import { recordedIn, viewOf } from '../pages/recorded.ts';

/** The margin of the site's own pages on paper; the page allows this style alone. */
const PAPER = '@page{margin:12mm}';
const PAPER_HASH = createHash('sha256').update(PAPER).digest('base64');

/** A file to write, from the folder of all recordings: `pocket-folio/whole/captions-inch.vtt`. */
export type WrittenFile = { file: string; text: string };

type Of = { file: ProjectFile; materials: MaterialsFile };

export type RecordingsWish = {
  /** One course, by the name of its folder; all if left out. */
  course?: string | undefined;
  /** With the list of what the author may put right. */
  corrections?: boolean;
};

/** Every text that is made from the recordings of a content folder. */
export function recordingTexts(content: Content, { course, corrections = false }: RecordingsWish = {}): WrittenFile[] {
  const edition = content.site.value?.edition ?? 'inch';
  const language = languageTag(content.site.value ?? { language: 'en', spelling: 'american' });
  return recordedIn(content, course).flatMap(({ recording, project }) => {
    const view = viewOf(recording, project, edition);
    const patterns = project && inEditions(project.file, project.materials);
    const title = recording.title ?? patterns?.[edition].title ?? recording.name;
    const file = (name: string, text: string): WrittenFile => ({
      file: `${recording.course}/${recording.name}/${name}`,
      text,
    });
    return [
      ...(['inch', 'metric'] as const).map((of) => file(`captions-${of}.vtt`, captions(view, patterns?.[of]))),
      ...(view.chapters.length > 0 ? [file('chapters.vtt', chapters(view))] : []),
      file('below.txt', below(title, recording, view, patterns, edition)),
      file('index.html', transcript(title, language, recording, view, patterns?.[edition])),
      ...(corrections ? [file('for-the-author.txt', forTheAuthor(title, recording, project, content))] : []),
    ];
  });
}

/** A time as WebVTT writes it. @example stamp(83.5) // => '00:01:23.500' */
export function stamp(seconds: number): string {
  const thousandths = Math.round(seconds * 1000);
  const two = (n: number) => String(Math.floor(n)).padStart(2, '0');
  const [h, m, s] = [thousandths / 3_600_000, (thousandths / 60_000) % 60, (thousandths / 1000) % 60];
  return `${two(h)}:${two(m)}:${two(s)}.${String(thousandths % 1000).padStart(3, '0')}`;
}

const cues = (all: readonly { from: number; to: number; text: string }[]): string =>
  ['WEBVTT', ...all.map(({ from, to, text }) => `${stamp(from)} --> ${stamp(to)}\n${inCaption(text)}`)]
    .join('\n\n')
    .concat('\n');

/** As it was said, with the edition's own size behind what is said in the other. */
const captions = ({ lines }: RecordingView, pattern: Pattern | undefined): string =>
  cues(lines.map((line) => ({ ...line, text: pattern ? lineFor(line, pattern, '') : line.text })));

const chapters = (view: RecordingView): string =>
  cues(view.chapters.map(({ from, to, title }) => ({ from, to, text: title })));

function below(
  title: string,
  { corrections }: RecordingFiles,
  { chapters }: RecordingView,
  patterns: Record<Edition, Pattern> | undefined,
  edition: Edition,
): string {
  const parts = [title];
  if (chapters.length > 0) {
    const times = chapters.map(({ from, title }) => `${clockTime(from)} ${title}`);
    // A program that reads the times off such a text wants the first at the start.
    if ((chapters[0]?.from ?? 0) >= 1) times.unshift('0:00 The start');
    parts.push(['Steps', ...times].join('\n'));
  }
  if (patterns) {
    const materials = materialsList(patterns[edition]).map(
      ({ label, material, count }) =>
        `- ${label}${material === label ? '' : `: ${material}`}${count ? ` (${count})` : ''}`,
    );
    if (materials.length > 0) parts.push(['Materials', ...materials].join('\n'));
    const other = new Map(cutList(patterns.metric).map((row) => [row.piece, row]));
    const pieces = cutList(patterns.inch).map(({ piece, label, count, size }) => {
      const metric = other.get(piece)?.size;
      const both = [across(size, patterns.inch), ...(metric ? [across(metric, patterns.metric)] : [])];
      return `- ${label}${count > 1 ? `, ${count}` : ''}: ${both.join(' or ')}`;
    });
    if (pieces.length > 0) parts.push(['Cut, with the seam allowance', ...pieces].join('\n'));
  }
  if (corrections.length > 0) {
    const notes = corrections.map(({ at, note }) => {
      if (!patterns) return `${clockTime(at)} ${inText(note, undefined)}`;
      const both = [...new Set((['inch', 'metric'] as const).map((of) => inText(note, patterns[of])))];
      return `${clockTime(at)} ${both.length === 1 ? both[0] : `${both[0]} Metric: ${both[1]}`}`;
    });
    parts.push(['Corrections', ...notes].join('\n'));
  }
  return `${parts.join('\n\n')}\n`;
}

const across = ({ width, height }: { width: number; height: number }, { edition, grid }: Pattern): string =>
  [width, height].map((mm) => formatLength(mm, edition, { grid })).join(' × ');

const html = (text: string): string => inCaption(text).replaceAll('"', '&quot;');

/** A page of its own that loads nothing and runs nothing. */
function transcript(
  title: string,
  language: string,
  { corrections, address }: RecordingFiles,
  { lines, chapters }: RecordingView,
  pattern: Pattern | undefined,
): string {
  const said = paragraphsOf(lines, chapters, corrections).map(({ from, steps, lines: numbers, corrections }) => {
    const heads = steps.map((i) => `<h2>${html(chapters[i]!.title)}</h2>\n`).join('');
    const words = numbers.map((i) => {
      const line = lines[i]!;
      if (!pattern) return html(line.text);
      return partsFor(line, pattern)
        .map(({ text, own }) => html(own === undefined ? text : `${text} (${own})`))
        .join('');
    });
    const notes = corrections.map(
      ({ at, note }) => `<p><strong>Put right at ${clockTime(at)}:</strong> ${html(inText(note, pattern))}</p>\n`,
    );
    return `${heads}<p><time datetime="PT${Math.floor(from)}S">${clockTime(from)}</time> ${words.join(' ')}</p>\n${notes.join('')}`;
  });
  const link =
    address === undefined
      ? ''
      : `<p><a href="${html(address)}" rel="noreferrer">The recording, where it is published</a></p>\n`;
  return `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="content-security-policy" content="default-src 'none'; style-src 'sha256-${PAPER_HASH}'">
<style>${PAPER}</style>
<title>What is said: ${html(title)}</title>
</head>
<body>
<main>
<h1>What is said: ${html(title)}</h1>
${link}${said.join('')}</main>
</body>
</html>
`;
}

/** What the author may put right: words that sound wrong, and sizes that cannot be told. */
function forTheAuthor(title: string, recording: RecordingFiles, project: Of | undefined, content: Content): string {
  const parts = [`For the author of “${title}”`];
  const patterns = project && inEditions(project.file, project.materials);
  if (patterns) {
    const heard = misheard(recording.lines, courseWords(patterns.inch, Object.keys(content.glossary.value ?? {})));
    const words = heard.map(
      ({ heard, meant, where }) =>
        `- “${heard}” for “${meant}”? ${where.map(({ from, before, after }) => `${clockTime(from)} … ${before} ${heard} ${after} …`).join('; ')}`,
    );
    parts.push(['Words that may be misheard', ...(words.length > 0 ? words : ['- none'])].join('\n'));
    const asked = spokenSizes(recording.lines, patterns).flatMap(({ text, from, asks, certain }) =>
      asks !== undefined || !certain ? [`- ${clockTime(from)} “${text}”${asks === undefined ? '' : `: ${asks}`}`] : [],
    );
    parts.push(['Sizes to look at', ...(asked.length > 0 ? asked : ['- none'])].join('\n'));
  }
  return `${parts.join('\n\n')}\n`;
}
