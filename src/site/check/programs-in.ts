import { realpathSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';
import { parse } from 'yaml';
import { wordCalled } from '../../../components/words/index.ts';
import { picturesOf } from './picture-problems.ts';
import { placeIn, type AtOffset } from '../content/diagnostic.ts';
import { BESIDE, htmlFaults, isHtml, isLink, isOwn, isPicture, RUNS } from '../content/lesson-html.ts';
import { topOf } from '../content/lesson-top.ts';
import { readLesson, TEXT_IN_BRACES, type WrittenWord } from '../content/lesson-text.ts';

/**
 * What in the text of a lesson could run, or load something of another host. It asks the text alone and lists what may
 * stand there, so that a text without a fault is nothing but a text, whatever else is wrong in it. The marks of the live
 * preview may stand there, too.
 */
export function programsIn(text: string): AtOffset[] {
  const { faults, words, pictures, links } = readLesson(text);
  const error = (at: number, message: string, fix?: string): AtOffset => ({ at, severity: 'error', message, fix });
  return [
    ...faults.filter(({ code }) => code !== TEXT_IN_BRACES),
    ...(namesLayout(text) ? [error(0, 'The top of a lesson names no layout.', 'Leave it out.')] : []),
    ...words.flatMap((word) => {
      if (isMark(word)) return [];
      if (isHtml(word)) return htmlFaults(word);
      return isPlain(word) ? [] : [error(word.part.start, `<${word.name}> is no lesson word with plain values.`)];
    }),
    ...pictures
      .filter(({ address }) => !isOwn(address) || !isPicture(address))
      .map(({ part }) => error(part.start, 'This is no picture beside the lesson.', BESIDE)),
    ...words
      .flatMap(picturesOf)
      .filter(({ file }) => !isOwn(encodeURI(file)) || !isPicture(encodeURI(file)))
      .map(({ at }) => error(at, 'This is no picture beside the lesson.', BESIDE)),
    ...links.filter(({ address }) => !isLink(address)).map(({ part }) => error(part.start, RUNS.message, RUNS.fix)),
  ];
}

/** Whether the top asks for a layout, which is a program, or cannot be read. */
function namesLayout(text: string): boolean {
  const { yaml } = topOf(text);
  if (yaml === undefined) return false;
  try {
    const top: unknown = parse(yaml, { logLevel: 'silent' });
    return typeof top === 'object' && top !== null && 'layout' in top;
  } catch {
    return /layout/i.test(yaml);
  }
}

/** As `lessonToShow` writes them. */
const isMark = ({ name, attributes, spread }: WrittenWord): boolean =>
  name === 'mark' &&
  spread === undefined &&
  attributes.length === 1 &&
  attributes[0]!.name === 'data-mistake' &&
  typeof attributes[0]!.value === 'string';

function isPlain({ name, attributes, spread }: WrittenWord): boolean {
  const shape = wordCalled(name)?.attributes.shape;
  if (!shape || spread !== undefined) return false;
  return attributes.every((attribute) => Object.hasOwn(shape, attribute.name) && attribute.value !== undefined);
}

/**
 * Refuses to compile a lesson that is more than a text. The check has said so before; this holds where a file changes
 * while the site is being built, or is asked for before the live preview has looked at it.
 *
 * @param root the folder that holds content/; its pages and examples are the kit's own
 */
export function onlyTexts(root: string): Plugin {
  const own = ['src', '.cache'].map((folder) => path.join(realpathSync(root), folder) + path.sep);
  return {
    name: 'lessons-are-texts',
    enforce: 'pre',
    transform: {
      filter: { id: /\.mdx$/ },
      handler(text, id) {
        if (own.some((folder) => path.normalize(id).startsWith(folder))) return;
        const [fault] = programsIn(text);
        if (!fault) return;
        const { line, column } = placeIn(text, fault.at);
        this.error({
          message: `${fault.message} Nothing of this lesson is shown.`,
          id,
          loc: { file: id, line, column },
        });
      },
    },
  };
}
