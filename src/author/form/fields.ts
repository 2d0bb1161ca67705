/** The boxes of the form: every plain value of a project file, in the file's own order. */
import { isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import type { Pair, Scalar } from 'yaml';
import { verbIn } from '../../core/steps/index.ts';
import { ProjectFile } from '../../core/project/schema.ts';
import { choicesAt, describedAs, knownNames, takesPlain } from '../../site/content/known-names.ts';
import type { Place } from '../../site/content/located-yaml.ts';
import type { FormEntry, FormField, FormSection } from './messages.ts';

/** Groups of which each member is an entry of its own; the rest of the file is about the project as a whole. */
const GROUPS = new Set(['sizes', 'measures', 'materials', 'pieces', 'holds', 'options', 'choices', 'steps']);

/** What the two values of a pair are called. */
const PAIRS: Readonly<Record<string, readonly [string, string]>> = {
  size: ['width', 'height'],
  finished: ['width', 'height'],
  between: ['least', 'most'],
  in: ['least', 'most'],
  mm: ['least', 'most'],
};

/**
 * The form of a project file. Values that stand for others (`*name`) and those that are not written are left to the
 * editor.
 *
 * @param text YAML without a mistake
 * @example
 * sectionsOf('title: Bag\nmeasures: { seam: { in: 1/4 } }\n')[1]?.entries[0]?.fields[0]
 * // => { place: ['measures', 'seam', 'in'], label: 'in', value: '1/4', about: 'Its value in the inch edition.', line: 2 }
 */
export function sectionsOf(text: string): FormSection[] {
  const lines = new LineCounter();
  const { contents } = parseDocument(text, { lineCounter: lines, version: '1.2' });
  if (!isMap(contents)) return [];
  const fieldsIn = (node: unknown, place: Place, from: number): FormField[] => {
    if (isMap(node)) return node.items.flatMap((pair) => fieldsIn(pair.value, [...place, nameOf(pair)], from));
    if (isSeq(node)) return node.items.flatMap((item, i) => fieldsIn(item, [...place, i], from));
    if (!isScalar(node) || node.value === null) return [];
    const about = describedAs(ProjectFile, place);
    const choices = choicesAt(ProjectFile, place);
    return [
      {
        place,
        label: labelOf(place.slice(from)) || 'value',
        value: sourceText(node),
        ...(about !== undefined && { about }),
        ...(choices && { choices }),
        line: lines.linePos(node.range![0]).line,
      },
    ];
  };
  const whole: FormEntry = { place: [], name: '', fields: [], more: moreIn(contents, []) };
  const sections: FormSection[] = [{ name: 'project', entries: [whole] }];
  for (const pair of contents.items) {
    const name = nameOf(pair);
    const group = pair.value;
    if (!GROUPS.has(name) || !(isMap(group) || isSeq(group))) {
      whole.fields.push(...fieldsIn(group, [name], 0));
      continue;
    }
    const about = describedAs(ProjectFile, [name]);
    const entries = isMap(group)
      ? group.items.map((item) => entry([name, nameOf(item)], nameOf(item), item.value))
      : group.items.map((item, i) => entry([name, i], titleOf(item, i), item));
    sections.push({ name, ...(about !== undefined && { about }), entries });
  }
  return sections;

  function entry(place: Place, name: string, node: unknown): FormEntry {
    return { place, name, fields: fieldsIn(node, place, 2), more: moreIn(node, place) };
  }
}

/** What a group may hold as a plain value, and does not yet. */
function moreIn(node: unknown, place: Place): FormEntry['more'] {
  if (!isMap(node)) return [];
  return knownNames(ProjectFile, place).flatMap((name) => {
    if (node.has(name) || !takesPlain(ProjectFile, [...place, name])) return [];
    const about = describedAs(ProjectFile, [...place, name]);
    return [{ name, ...(about !== undefined && { about }) }];
  });
}

const nameOf = ({ key }: Pair): string => (isScalar(key) ? String(key.value) : String(key));

/** A value as its reader sees it: a number with the digits it was written with. */
export const sourceText = (scalar: Scalar): string => scalar.source ?? String(scalar.value);

/** `['between', 'in', 0]` as “least (in)”, `['pleats', 'depth']` as “pleats › depth”. */
function labelOf(place: Place): string {
  const edition = place.length > 1 ? place.find((step) => step === 'in' || step === 'mm') : undefined;
  const words = place.flatMap((step, i) => {
    if (step === edition || (step === 'between' && place.length > 1)) return [];
    return [typeof step === 'string' ? step : (PAIRS[String(place[i - 1])]?.[step] ?? String(step + 1))];
  });
  return words.join(' › ') + (edition === undefined ? '' : ` (${edition})`);
}

/** How a list calls its entry: a step by its id or verb, a thing to hold by what it is. */
function titleOf(item: unknown, index: number): string {
  const word = (key: string) => (isMap(item) && isScalar(item.get(key, true)) ? String(item.get(key)) : undefined);
  const verb = isMap(item) ? verbIn(item.toJSON() as Record<string, unknown>) : undefined;
  return `${index + 1}. ${word('what') ?? word('id') ?? verb ?? ''}`.trim();
}
