/** npm run schema: what helps an editor complete and explain your files. `npm start` writes it, too. */
import { fileURLToPath } from 'node:url';
import { editorFiles, writeEditorFiles } from '../site/content/editor-files.ts';
import { readArguments, tell } from './arguments.ts';

const asked = readArguments({
  name: 'npm run schema',
  about: 'Writes what helps an editor complete and explain your files. npm start writes it, too.',
  choices: {},
});
if (asked.ok) {
  writeEditorFiles(fileURLToPath(new URL('../..', import.meta.url)));
  for (const file of editorFiles().keys()) console.log(file);
} else tell(asked);
