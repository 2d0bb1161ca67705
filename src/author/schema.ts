/** npm run schema: what helps an editor complete and explain your files. `npm start` writes it, too. */
import { fileURLToPath } from 'node:url';
import { editorFiles, writeEditorFiles } from '../site/content/editor-files.ts';

writeEditorFiles(fileURLToPath(new URL('../..', import.meta.url)));
for (const file of editorFiles().keys()) console.log(file);
