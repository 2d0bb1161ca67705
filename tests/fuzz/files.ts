/** Project files with something changed in them, read and checked: every finding has its place and its sentence. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { MaterialsFile, ProjectFile } from '../../src/core/project/schema.ts';
import { projectProblems, workOut } from '../../src/site/check/project-problems.ts';
import { isError, type Diagnostic } from '../../src/site/content/diagnostic.ts';
import { readYaml } from '../../src/site/content/located-yaml.ts';
import { count, family, SLIP } from './family.ts';
import { mutated } from './texts.ts';

const content = fileURLToPath(new URL('../../content', import.meta.url));
const FILE = 'content/projects/folio/project.yaml';
const sound = [
  ...readdirSync(`${content}/projects`).map((id) => readFileSync(`${content}/projects/${id}/project.yaml`, 'utf8')),
  readFileSync(new URL('../fixtures/sound/content/projects/folio/project.yaml', import.meta.url), 'utf8'),
];
const materials = readYaml(readFileSync(`${content}/materials.yaml`, 'utf8'), MaterialsFile, '').value;
const words = [
  ...[
    '0',
    '-1',
    '1e9',
    '1/0',
    '.inf',
    '.nan',
    'null',
    '~',
    'yes',
    'true',
    '[]',
    '{}',
    '""',
    '!!binary x',
    '!x y',
    '1_000',
    '0o17',
  ],
  ...[
    '[[[[[[[[',
    '{a: {b: ',
    '&a [*a]',
    '*a',
    '<<: *a',
    '? [a]: b',
    '- - - -',
    '| ',
    '> ',
    "'",
    '"',
    '#',
    ': ',
    '---',
    '...',
    '%YAML 9.9',
  ],
  ...[
    'seam',
    'card width',
    'card width * 2',
    'card width * card width',
    'seam + nothing',
    '3 1/2 in',
    '90 mm',
    '1000 m',
    '(seam',
  ],
  ...[
    'outer',
    'lining',
    'top',
    'left',
    'hem',
    'join',
    'pieces',
    'steps',
    'measures',
    'panel',
    '__proto__',
    'constructor',
  ],
];
const came = new Map<string, number>();

export const files = family<string>(
  {
    name: 'files',
    makes: (from) => mutated(from.of(sound), from, words),
    broken(text) {
      const read = readYaml(text, ProjectFile, FILE);
      const problems = read.value
        ? projectProblems({ file: FILE, id: 'folio', text, ...read }, workOut(read.value, materials))
        : read.problems;
      count(came, read.value ? (problems.some(isError) ? 'read, with mistakes' : 'read') : 'not read');
      if (!read.value && !problems.some(isError)) return ['is not read, and nothing is said'];
      return problems.flatMap((one) => unlocated(one, text));
    },
    tells: (text) => text,
  },
  came,
);

/** What is amiss with a finding itself. */
function unlocated({ file, line, column, message, fix = '' }: Diagnostic, text: string): string[] {
  const last = text.split(/\r\n|\r|\n/u).length;
  const lines: string[] = [];
  if (file !== FILE) lines.push(`“${message}” names the file ${file}`);
  if (!Number.isInteger(line) || line < 1 || line > last) lines.push(`“${message}” stands in line ${line} of ${last}`);
  if (!Number.isInteger(column) || column < 1) lines.push(`“${message}” stands in column ${column}`);
  // YAML’s own words for what is no number may stand in the file, and are then quoted.
  if (message === '' || (!SLIP.test(text) && !/\.(?:inf|nan)/iu.test(text) && SLIP.test(`${message} ${fix}`)))
    lines.push(`says “${message} ${fix}”`);
  return lines;
}
