/**
 * npm run recordings: for each recording its captions in both editions, the steps in it, the text for below it, a
 * transcript, and the recording itself.
 *
 *     npm run recordings -- --course pocket-folio --corrections --to ~/Desktop/recordings
 */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { readContent } from '../site/content/read-content.ts';
import { writeRecordings } from '../site/print/write-recordings.ts';

const USAGE = `npm run recordings -- [choices]

  --course NAME     one course, by the name of its folder
  --corrections     with a list for yourself: words that may be misheard, sizes to look at
  --to FOLDER       where to write; dist/recordings if left out`;

async function main(): Promise<void> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  let values;
  try {
    ({ values } = parseArgs({
      options: {
        course: { type: 'string' },
        corrections: { type: 'boolean', default: false },
        to: { type: 'string', default: 'dist/recordings' },
        help: { type: 'boolean', default: false },
      },
    }));
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`);
    process.exitCode = 1;
    return;
  }
  if (values.help) {
    console.log(USAGE);
    return;
  }
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
