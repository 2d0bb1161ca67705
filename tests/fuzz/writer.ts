/** Writes a file as the kit's commands do, and says what came of it. A program of its own, so that it can be ended. */
import { readFileSync } from 'node:fs';
import { writeAuthorFile } from '../../src/author/write-file.ts';

const { text, before } = JSON.parse(readFileSync(0, 'utf8')) as { text: string; before: string };
console.log(writeAuthorFile(process.argv[2]!, text, { before })?.message ?? 'written');
