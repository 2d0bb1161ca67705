/** What helps a text editor complete and explain the files of content/, written from the schemas and the lesson words. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { words as lessonWords } from '../../../components/words/index.ts';
import type { Word } from '../../../components/words/word.ts';
import { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { CourseFile, GlossaryFile, RecordingFile, SiteFile } from './schemas.ts';

const SCHEMAS = {
  project: ProjectFile,
  materials: MaterialsFile,
  glossary: GlossaryFile,
  course: CourseFile,
  site: SiteFile,
  recording: RecordingFile,
} as const;

export type SchemaName = keyof typeof SCHEMAS;

const FOLDER = '.schema';
const SNIPPETS = '.vscode/lesson-words.code-snippets';

/**
 * The first line of a YAML file, by which editors find its schema.
 *
 * @param file from the project's root
 * @example
 * schemaLine('content/site.yaml', 'site') // => '# yaml-language-server: $schema=../.schema/site.json'
 */
export function schemaLine(file: string, name: SchemaName): string {
  const up = '../'.repeat(file.split('/').length - 1);
  return `# yaml-language-server: $schema=${up}${FOLDER}/${name}.json`;
}

/** Every file for editors, by its path from the project's root. */
export function editorFiles(): Map<string, string> {
  const schemas = Object.entries(SCHEMAS).map(([name, schema]): [string, string] => {
    // Draft 7 is what editors understand best.
    const json = z.toJSONSchema(schema, { io: 'input', target: 'draft-7' });
    return [`${FOLDER}/${name}.json`, `${JSON.stringify(json, null, 2)}\n`];
  });
  const snippets = Object.entries(lessonWords).map(([name, word]) => [
    `<${name}>`,
    { scope: 'mdx,markdown', prefix: [name, `<${name}`], description: word.about, body: snippetOf(name, word) },
  ]);
  return new Map([...schemas, [SNIPPETS, `${JSON.stringify(Object.fromEntries(snippets), null, 2)}\n`]]);
}

/** Writes them where they are missing or no longer true. */
export function writeEditorFiles(root: string): void {
  for (const [file, text] of editorFiles()) {
    const full = path.join(root, file);
    if (existsSync(full) && readFileSync(full, 'utf8') === text) continue;
    mkdirSync(path.dirname(full), { recursive: true });
    writeFileSync(full, text);
  }
}

/** A lesson word with the places to fill in, in the snippet syntax that editors share: ${1:what belongs here}. */
function snippetOf(name: string, { attributes, text = 'none' }: Word): string[] {
  const json = z.toJSONSchema(attributes, { io: 'input' });
  const fields = Object.entries(json.properties ?? {}) as [string, { description?: string; enum?: string[] }][];
  // What must be there, and what has a choice of words.
  const shown = fields.filter(([field, { enum: words }]) => json.required?.includes(field) || words);
  const written = shown.map(([field, { description = field, enum: words }], i) => {
    const place = words ? `|${words.join(',')}|` : `:${description.replace(/\..*$/, '').replace(/[\\$}]/g, '\\$&')}`;
    return ` ${field}="\${${i + 1}${place}}"`;
  });
  const open = `<${name}${written.join('')}`;
  return text === 'none' ? [`${open} />`] : [`${open}>`, '', `\${${shown.length + 1}:Your words.}`, '', `</${name}>`];
}
