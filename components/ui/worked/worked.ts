/**
 * A worked sum on the page: set in KaTeX while the site is built, its numbers in slots whose texts are put in anew
 * whenever the learner's size changes. KaTeX itself never reaches the browser.
 */
import { slotTexts, toWords, type Formula, type LineScope, type Pattern } from '../../../src/core/index.ts';
import { readFormula } from '../../page/quantity.ts';

/** What is worked out, and how. */
export type WorkedFormula = { subject?: string; formula: Formula };

/**
 * The sum behind a formula: for the name of a derived measure, the formula that it is derived by. Undefined where it
 * names something that is left out.
 */
export function workedFormula(text: string, pattern: Pattern): WorkedFormula | undefined {
  const formula = readFormula(text, pattern);
  if (!formula.ok) return undefined;
  const { tree } = formula.value;
  if (tree.kind !== 'name') return { formula: formula.value };
  return { subject: tree.name, formula: pattern.measures[tree.name]?.formula ?? formula.value };
}

/** The same for a reader who hears the page. */
export function inWords(work: WorkedFormula | undefined, scope: LineScope): string {
  if (!work) return 'Your project leaves out what is asked here.';
  const sum = toWords(work.formula, scope);
  return work.subject === undefined ? sum : `${work.subject} is ${sum}`;
}

/**
 * Puts the present numbers into a worked sum. An option can exchange a formula for a longer or shorter one; then the
 * sum as it was set no longer fits, and its words are shown in its place.
 */
export function updateWorked(worked: Element, work: WorkedFormula | undefined, scope: LineScope): void {
  const texts = work ? slotTexts(work.formula, scope) : [];
  const slots = worked.querySelectorAll('[data-slot]');
  worked.toggleAttribute('data-in-words', slots.length !== texts.length);
  // KaTeX keeps the blank that follows in the slot as well, so only its text is exchanged.
  for (const slot of slots)
    setText(slot.querySelector('.text') ?? slot, texts[Number(slot.getAttribute('data-slot'))] ?? '');
  const words = worked.querySelector('[data-words]');
  if (words) setText(words, inWords(work, scope));
}

/** Sets a text only where it differs: what stands still costs nothing. */
export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
