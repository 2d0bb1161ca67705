/** Addresses that ask for sizes, and sizes that a browser kept, whatever they hold. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { askedChoices, keptChoices, moved, refusal, writeChoices } from '../../components/page/choices.ts';
import { MaterialsFile, ProjectFile, resolveProject } from '../../src/core/project/index.ts';
import type { Edition, Pattern } from '../../src/core/index.ts';
import type { Chance } from './chance.ts';
import { count, family, SLIP } from './family.ts';
import { mutated, ODD, piecesOf } from './texts.ts';

const content = (file: string): unknown =>
  parse(readFileSync(new URL(`../../content/${file}`, import.meta.url), 'utf8'));

/** Every kind of size, names that are words of an address or of a program, and steps that are no short decimals. */
const KINDS = `
title: Kinds
measures:
  edition: { in: 3, mm: 80, between: { in: [2, 5], mm: [50, 120] }, step: { in: 1/16, mm: 1 }, label: Edition }
  to string: { in: 1 1/3, mm: 33, between: { in: [1/3, 2], mm: [10, 50] }, step: { in: 1/3, mm: 0.5 }, label: 'Size' }
  Wide Side: { in: 30, mm: 762, between: { in: [10, 90], mm: [254, 2286] }, step: { in: 1/2, mm: 7.62 }, label: 'Size' }
  pockets: { count: 4, between: [1, 12], label: Pockets }
  fullness: { number: 1.5, between: [1.2, 2.5], step: 0.1, label: Fullness }
  third: { number: 1, between: [0, 3], step: 1/3, label: A third }
options:
  wide side lined: { label: Lined }
  flap: { label: Flap, default: false }
pieces:
  panel: { from: outer, size: [Wide Side, edition + to string] }
`;

type Tried = { name: string; lessonIn: (edition: Edition) => Pattern };

function worksOut(): Tried[] {
  const materials = MaterialsFile.parse(content('materials.yaml'));
  const files = ['swatch-folio', 'notions-pouch', 'table-set'].map((id) => [
    id,
    content(`projects/${id}/project.yaml`),
  ]);
  return [...files, ['kinds', parse(KINDS)]].map(([name, file]) => {
    const project = ProjectFile.parse(file);
    const [inch, metric] = (['inch', 'metric'] as const).map((edition) =>
      resolveProject(project, { edition, materials }),
    );
    return { name: String(name), lessonIn: (edition) => (edition === 'inch' ? inch! : metric!) };
  });
}

let tried: Tried[] | undefined;
/** Worked out when the first is wanted: other families are listed beside this one. */
const projects = (): Tried[] => (tried ??= worksOut());

type Case = { project: number; edition: Edition; query: string; kept: string };

const WORDS = [
  ...[
    'yes',
    'no',
    'inch',
    'metric',
    '1 1/2 in',
    '105 mm',
    '-4',
    '0',
    '1/0',
    '1e9',
    '999999 m',
    '4,5',
    '3in',
    '%',
    '%ff',
  ],
  ...['+', '&', '=', '#', '', ' ', '½', '1⅛ in', '≈ 4 in', '4 in 4 in', 'null', '[]', '<script>', 'x'.repeat(5000)],
  ...ODD,
];

const EDITIONS = ['inch', 'metric'] as const;

/** Sizes that can be chosen, as the page itself writes them into an address. */
function soundQuery(from: Chance, pattern: Pattern): URLSearchParams {
  const query = new URLSearchParams();
  writeChoices(query, soundChoices(from, pattern), pattern);
  return query;
}

function soundChoices(from: Chance, { measures, options, edition }: Pattern) {
  const values = Object.values(measures).flatMap(({ name, adjustable: range }) => {
    if (!range || from.often(0.4)) return [];
    const steps = Math.floor((range.max - range.min) / range.step + 1e-6);
    return [[name, { value: range.min + from.below(steps + 1) * range.step, edition }] as const];
  });
  return {
    values: Object.fromEntries(values),
    options: Object.fromEntries(
      Object.keys(options).flatMap((name) => (from.often(0.5) ? [[name, from.often(0.5)] as const] : [])),
    ),
  };
}

function makes(from: Chance): Case {
  const project = from.below(projects().length);
  const [edition, other] = [from.of(EDITIONS), from.of(EDITIONS)];
  const { lessonIn } = projects()[project]!;
  const query = soundQuery(from, lessonIn(from.of(EDITIONS)));
  for (const key of [...query.keys()])
    if (from.often(0.3)) query.set(key, from.of([...WORDS, piecesOf(from, WORDS, 3)]));
  if (from.often(0.3)) query.append(from.of([...query.keys(), ...WORDS]), from.of(WORDS));
  const kept = JSON.stringify(soundChoices(from, lessonIn(other)));
  return {
    ...{ project, edition },
    query: from.often(0.4) ? mutated(query.toString(), from, WORDS) : query.toString(),
    kept: from.often(0.5)
      ? mutated(kept.replaceAll(',', ',\n'), from, ['0', '{}', '[]', 'null', '"inch"', ...ODD])
      : kept,
  };
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
const came = new Map<string, number>();

export const addresses = family<Case>(
  {
    name: 'addresses',
    makes,
    broken({ project, edition, query, kept }) {
      const { lessonIn } = projects()[project]!;
      const pattern = lessonIn(edition);
      const given = new URLSearchParams(query);
      const before = keptChoices(parsed(kept), lessonIn, edition);
      const lines: string[] = [];

      const mine = askedChoices(given, pattern, before);
      const { values, options, taken, refused } = mine;
      for (const { value } of Object.values(values)) count(came, Number.isFinite(value) ? 'a size' : 'no number');
      count(came, refused.length > 0 ? 'something refused' : 'all taken');
      for (const [name, chosen] of [...Object.entries(values), ...Object.entries(before.values)]) {
        if (!Object.hasOwn(pattern.measures, name)) lines.push(`takes ${name}, which is no measure`);
        const trouble = refusal(lessonIn(chosen.edition), name, chosen.value);
        if (trouble) lines.push(`takes ${name} at ${chosen.value}: ${trouble}`);
        for (const of of EDITIONS) {
          const there = refusal(lessonIn(of), name, moved(name, chosen, lessonIn(of)));
          if (there) lines.push(`moves ${name} from ${chosen.value} to where it cannot be: ${there}`);
        }
      }
      for (const name of Object.keys(options))
        if (!Object.hasOwn(pattern.options, name)) lines.push(`takes ${name}, which is no option`);
      // What is not named by the address stays; what is named is taken or told, each once.
      for (const sentence of refused) if (SLIP.test(sentence)) lines.push(`says “${sentence}”`);
      if (new Set(refused).size < refused.length) lines.push(`says twice: ${refused.join(' ')}`);
      for (const [name, chosen] of Object.entries(before.values))
        if (!same(values[name], chosen) && !taken.includes(name) && refused.length === 0)
          lines.push(`loses ${name} without a word`);

      // Written into an address and read again, it is the same; what stood there for others stays.
      const address = new URLSearchParams([['seen', 'x'], ...given]);
      writeChoices(address, mine, pattern);
      const again = askedChoices(new URLSearchParams(address.toString()), pattern, { values: {}, options: {} });
      if (again.refused.length > 0)
        lines.push(`writes ${address.toString()} and does not take it: ${again.refused.join(' ')}`);
      for (const [name, chosen] of Object.entries(values)) {
        const [was, is] = [moved(name, chosen, pattern), again.values[name]?.value];
        if (is === undefined || Math.abs(is - was) > 1e-6) lines.push(`writes ${name} as ${was} and reads ${is}`);
      }
      if (!same(Object.entries(again.options).sort(), Object.entries(options).sort()))
        lines.push(`writes ${JSON.stringify(options)} and reads ${JSON.stringify(again.options)}`);
      if (address.get('seen') !== 'x') lines.push('takes away what stands in the address for others');

      // What is kept and found again is the same.
      const kept2 = keptChoices(parsed(JSON.stringify(mine)), lessonIn, edition);
      if (!same(kept2.values, values) && !same(Object.entries(kept2.values).sort(), Object.entries(values).sort()))
        lines.push(`keeps ${JSON.stringify(values)} and finds ${JSON.stringify(kept2.values)}`);
      return lines;
    },
  },
  came,
);
