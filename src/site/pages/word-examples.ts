/** The examples of the lesson words, as lessons that the authoring reference shows with their results. */
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { words as lessonWords } from '../../../components/words/index.ts';

/** Where they are written, from the project's root: the page takes them in like any other lesson text. */
export const EXAMPLES = '.cache/word-examples';

/** Writes the example of each word as a lesson text, where it is missing or no longer true. */
export function writeWordExamples(root: string): void {
  mkdirSync(path.join(root, EXAMPLES), { recursive: true });
  // The pictures that they show lie beside them, as beside a lesson; they are the kit's own, wherever the content lies.
  const pictures = fileURLToPath(new URL('../../../components/words/picture/example', import.meta.url));
  cpSync(pictures, path.join(root, EXAMPLES), { recursive: true });
  for (const [name, { example }] of Object.entries(lessonWords)) {
    const file = path.join(root, EXAMPLES, `${name}.mdx`);
    if (!existsSync(file) || readFileSync(file, 'utf8') !== example) writeFileSync(file, example);
  }
}
