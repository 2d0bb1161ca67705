import { wordCalled } from '../../../components/words/index.ts';
import { didYouMean, plainName, quote } from '../../core/measure/index.ts';
import { THING } from '../content/lesson-prose.ts';
import { placeIn } from '../content/diagnostic.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { Content } from '../content/read-content.ts';

/** Terms of the trade that somebody at a first course may not know; from memory. */
const TRADE = [
  'baste',
  'bias',
  'binding',
  'casing',
  'dart',
  'ease',
  'edgestitch',
  'facing',
  'fat quarter',
  'finished size',
  'grain',
  'gusset',
  'interfacing',
  'mitre',
  'mountain fold',
  'nap',
  'notch',
  'pleat',
  'presser foot',
  'raw edge',
  'right side',
  'seam allowance',
  'selvage, selvedge',
  'staystitch',
  'topstitch',
  'tuck',
  'turn of cloth',
  'understitch',
  'valley fold',
  'wrong side',
].map((names) => names.split(', '));

/** A pattern that finds a term in its usual forms: baste, bastes, basted, basting. */
function formsOf(term: string): RegExp {
  const root = term
    .toLowerCase()
    .replace(/(ing|e)$/, '')
    .replace(/\s+/g, '\\s+');
  return new RegExp(`(?<![\\p{L}-])${root}(e|es|s|ed|ing)?(?![\\p{L}])`, 'iu');
}

/** Terms that lessons use and the glossary lacks, and terms of the glossary that nothing uses. */
export function glossaryProblems({ glossary, lessons, projects, courses, materials }: Content): Diagnostic[] {
  if (!glossary.value) return [];
  const problems: Diagnostic[] = [];
  const terms = Object.keys(glossary.value);
  const tells = (term: string) => terms.some((one) => isFormOf(term, one));
  const add = 'Add it to content/glossary.yaml';
  const said = new Set<string>();

  for (const { file, text, lesson } of lessons) {
    for (const { name, attributes } of lesson.words) {
      const names = wordCalled(name)?.names ?? {};
      const asked = attributes.find((attribute) => names[attribute.name] === 'term');
      for (const term of Array.isArray(asked?.value) ? asked.value.map(String) : []) {
        if (terms.includes(term)) continue;
        const message = `<${name}> ${asked!.name}: the glossary does not have ${quote(term)}.`;
        const fix = didYouMean(term, terms) ?? `${add}.`;
        problems.push({ file, ...placeIn(text, asked!.at), severity: 'error', message, fix });
      }
    }
    for (const term of lesson.terms) {
      const name = plainName(term.text);
      if (!isTerm(name) || tells(name) || said.has(name)) continue;
      said.add(name);
      problems.push({
        file,
        ...placeIn(text, term.start),
        severity: 'note',
        message: `${quote(name)} is set in bold like a term, and the glossary does not have it.`,
        fix: didYouMean(name, terms) ?? `${add}, or set it in plain type.`,
      });
    }
  }
  for (const [name = '', ...others] of TRADE) {
    if ([name, ...others].some((one) => tells(one) || said.has(one))) continue;
    const forms = [name, ...others].map(formsOf);
    for (const { file, text, lesson } of lessons) {
      const found = lesson.prose.flatMap(({ start, text }) => {
        const at = forms.map((form) => text.search(form)).find((index) => index >= 0);
        return at === undefined ? [] : [start + at];
      });
      if (found[0] === undefined) continue;
      const message = `${quote(name)} is a term of the trade, and the glossary does not have it.`;
      problems.push({ file, ...placeIn(text, found[0]), severity: 'note', message, fix: `${add}.` });
      break;
    }
  }
  const everything = [...lessons, ...projects, ...courses, materials].map(({ text }) => text).join('\n');
  for (const term of terms) {
    if (formsOf(term).test(everything)) continue;
    problems.push({
      file: glossary.file,
      ...glossary.locate([term]),
      severity: 'note',
      message: `No lesson and no project uses ${quote(term)}.`,
      fix: 'Use it, or take it away.',
    });
  }
  return problems;
}

/** Bold words are a term unless they are a whole sentence, a label with a colon, or hold something that is no text. */
const isTerm = (name: string): boolean =>
  /^\p{L}[\p{L} -]*$/u.test(name) && name.split(' ').length <= 3 && !name.includes(THING);

/** Whether the glossary's term is this one in another form, or the word it ends in: seam allowance is an allowance. */
const isFormOf = (term: string, known: string): boolean => {
  const found = formsOf(known).exec(term);
  return found !== null && found.index + found[0].length === term.length;
};
