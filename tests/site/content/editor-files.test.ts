/** The schemas that editors read, tried with a validator of JSON Schema that is none of ours. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import Ajv from 'ajv';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { words as lessonWords } from '../../../components/words/index.ts';
import { editorFiles, schemaLine, writeEditorFiles } from '../../../src/site/content/editor-files.ts';
import { readContent } from '../../../src/site/content/read-content.ts';
import { contentFolder } from '../content-folder.ts';

const kit = fileURLToPath(new URL('../../..', import.meta.url));
const files = editorFiles();
const validate = (name: string) => new Ajv().compile(JSON.parse(files.get(`.schema/${name}.json`)!) as object);

const { site, materials, glossary, projects, courses } = readContent(kit);
const written = [
  ['site', site],
  ['materials', materials],
  ['glossary', glossary],
  ...projects.map((project) => ['project', project] as const),
  ...courses.map((course) => ['course', course] as const),
] as const;

test.each(written)('the %s file of the kit holds by its schema, and names it', (name, { file, text }) => {
  expect(text.split('\n')[0]).toBe(schemaLine(file, name));
  const check = validate(name);
  check(parse(text));
  expect(check.errors).toBe(null);
});

test('a misspelt field does not', () => {
  const check = validate('project');
  expect(check({ title: 'Folio', mesures: {}, pieces: {} })).toBe(false);
  expect(check.errors?.map(({ message }) => message)).toContain('should NOT have additional properties');
});

test('each field is explained', () => {
  const schema = JSON.parse(files.get('.schema/course.json')!) as {
    properties: Record<string, { description: string }>;
  };
  expect(schema.properties.level?.description).toBe('Who can follow it: first steps, some experience or experienced.');
});

test('each lesson word is a snippet', () => {
  const snippets = JSON.parse(files.get('.vscode/lesson-words.code-snippets')!) as Record<string, { body: string[] }>;
  expect(Object.keys(snippets)).toEqual(Object.keys(lessonWords).map((name) => `<${name}>`));
  expect(snippets['<Size>']?.body).toEqual([
    '<Size of="${1:A measure, a formula over measures, or “layers of” a step: the most that it leaves in one place}" />',
  ]);
  expect(snippets['<Tip>']?.body).toEqual(['<Tip>', '', '${1:Your words.}', '', '</Tip>']);
});

test('they are written where they are missing or out of date', () => {
  const root = contentFolder({ '.schema/site.json': '{}' });
  writeEditorFiles(root);
  for (const [file, text] of files) {
    expect(existsSync(path.join(root, file))).toBe(true);
    expect(readFileSync(path.join(root, file), 'utf8')).toBe(text);
  }
});
