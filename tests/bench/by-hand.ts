/**
 * A lesson as somebody would type it without the kit: the same sentences, hints and answers as paragraphs and lists, the
 * sizes in figures, and the sums in TeX as the kit sets them.
 */
import { evaluate, formatQuantity, parseFormula, texText, toTex } from '../../src/core/index.ts';
import type { Pattern, Scope } from '../../src/core/index.ts';
import { words as lessonWords } from '../../components/words/index.ts';
import { readLesson } from '../../src/site/content/lesson-text.ts';
import type { WrittenAttribute, WrittenWord } from '../../src/site/content/lesson-text.ts';

/** Words whose formula a page shows worked out. */
const WORKED = ['Working', 'AskSize'];
/** Attributes that say how a word works and not what it says. */
const MUTE = ['id', 'of', 'tolerance', 'takes', 'seams', 'rounds'];

/** @param text a lesson of the kit, which has no fault */
export function byHand(text: string, pattern: Pattern): string {
  const { words } = readLesson(text);
  let typed = '';
  let at = 0;
  for (const word of words.toSorted((a, b) => a.part.start - b.part.start)) {
    const tag = /<\w+(?:"[^"]*"|\{\{[^}]*\}\}|\{[^{}]*\}|[^>"{])*>/y;
    tag.lastIndex = word.part.start;
    if (!tag.test(text)) throw new Error(`<${word.name}> is written in a way that this bench does not read.`);
    typed += text.slice(at, word.part.start) + typedFor(word, pattern);
    at = tag.lastIndex;
  }
  return (typed + text.slice(at)).replace(/<\/[A-Z]\w*>/g, '');
}

function typedFor({ name, attributes }: WrittenWord, pattern: Pattern): string {
  const of = attributes.find((attribute) => attribute.name === 'of')?.value;
  if (name === 'Size') return size(String(of), pattern);
  const sum = WORKED.includes(name) ? worked(String(of), pattern) : [];
  const names = lessonWords[name]?.names ?? {};
  const said = attributes.filter((attribute) => !(attribute.name in names) && !MUTE.includes(attribute.name));
  return [...sum, ...said.flatMap(paragraphs)].map((paragraph) => `${paragraph}\n\n`).join('');
}

function paragraphs({ value }: WrittenAttribute): string[] {
  if (Array.isArray(value)) return [value.map((item) => `- ${String(item)}`).join('\n')];
  if (typeof value === 'object' && value !== null)
    return [
      Object.entries(value)
        .map(([answer, reply]) => `- ${answer}: ${String(reply)}`)
        .join('\n'),
    ];
  return [String(value)];
}

function size(of: string, pattern: Pattern): string {
  const value = evaluate(read(of, pattern), scopeOf(pattern));
  if (!value.ok) throw new Error(`${of}: ${value.fault.message}`);
  return formatQuantity(value.value, { ...pattern, style: 'set' });
}

/** With its names, with the numbers, and the result: three lines, as on a page of the kit. */
function worked(of: string, pattern: Pattern): string[] {
  const asked = read(of, pattern);
  const subject = asked.tree.kind === 'name' ? asked.tree.name : undefined;
  const formula = (subject !== undefined && pattern.measures[subject]?.formula) || asked;
  const { names, numbers, result } = toTex(formula, scopeOf(pattern));
  return [subject === undefined ? names : `${texText(subject)} = ${names}`, `= ${numbers}`, result].map(
    (tex) => `$${tex}$`,
  );
}

function read(text: string, pattern: Pattern) {
  const formula = parseFormula(text, { names: Object.keys(pattern.measures) });
  if (!formula.ok) throw new Error(`${text}: ${formula.fault.message}`);
  return formula.value;
}

const scopeOf = ({ edition, grid, measures }: Pattern): Scope => ({
  edition,
  grid,
  known: Object.keys(measures),
  get: (name) => {
    const measure = measures[name];
    return measure && { ok: true, value: { value: measure.value, dimension: measure.dimension } };
  },
});
