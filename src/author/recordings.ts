/**
 * npm run recordings: for each recording its captions in both editions, the steps in it, the text for below it, a
 * transcript, and the recording itself.
 *
 *     npm run recordings -- --course pocket-folio --corrections --to ~/Desktop/recordings
 */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { readContent } from '../site/content/read-content.ts';
import { writeRecordings } from '../site/print/write-recordings.ts';
import { readArguments, tell, type Command } from './arguments.ts';

const COMMAND = {
  name: 'npm run recordings',
  about: 'Writes for each recording its captions, its steps as chapters, the text for below it, and a transcript.',
  choices: {
    course: { takes: 'NAME', about: 'one course, by the name of its folder' },
    corrections: { about: 'with a list for yourself: words that may be misheard, sizes to look at' },
    to: { takes: 'FOLDER', normally: 'dist/recordings', about: 'where to write; dist/recordings if left out' },
  },
} as const satisfies Command;

async function main(): Promise<void> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const asked = readArguments(COMMAND);
  if (!asked.ok) return tell(asked);
  const { values } = asked;
  const { course, corrections } = values;
  const to = path.resolve(root, values.to);
  const content = readContent(root);
  const files = await writeRecordings(content, root, to, { course, corrections });
  const where = course === undefined ? 'content/courses' : `content/courses/${course}/recordings`;
  for (const { said, settings } of content.recordings)
    for (const { file, line, column, message } of [...said.problems, ...(settings?.problems ?? [])])
      console.log(`! ${file}:${line}:${column} ${message}`);
  if (files.length === 0) {
    console.error(`There is no recording in ${where}. Put its captions there, as a .vtt, .srt or .txt file.`);
    process.exitCode = 1;
    return;
  }
  console.log(`${files.length} files are in ${to}`);
  if (corrections) console.log('for-the-author.txt is for you: keep it off a public site.');
}

if (import.meta.main) await main();
