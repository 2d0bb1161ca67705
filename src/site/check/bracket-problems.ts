/** Formulas in square brackets that cannot be worked out, in whatever text they stand. */
import { wordCalled } from '../../../components/words/index.ts';
import { bracketsIn } from '../../core/formula/index.ts';
import { quote } from '../../core/measure/index.ts';
import { layersAsked } from '../../core/project/index.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { JOINER, THING } from '../content/lesson-prose.ts';
import { referenceFault, type Surroundings } from './lesson-references.ts';
import type { Said } from './texts.ts';

const KEEP = 'Write \\[ where a bracket is meant.';

/**
 * What is wrong with the formulas in some texts of a file, each at its place.
 *
 * @param around the project that they are worked out with; undefined for a file that belongs to none
 */
export function bracketProblems(file: string, texts: readonly Said[], around: Surroundings | undefined): Diagnostic[] {
  return texts.flatMap((said) =>
    bracketsIn(said.text).flatMap(({ start, end, formula }): Diagnostic[] => {
      const found = faultOf(said, said.text.slice(start, end), formula, around);
      if (!found) return [];
      const { at, message, fix } = noFormula(said.text, start, end) ?? found;
      const { offset } = said;
      const part = said.part ?? (offset && { start: offset(start), end: offset(end) });
      const before = said.name === undefined ? '' : `${said.name}: `;
      const place = said.place(start + at);
      return [{ file, ...place, severity: 'error', message: `${before}${message}`, fix, ...(part && { part }) }];
    }),
  );
}

/** What stands around or in brackets that were never meant for a formula: a link or a picture, or a lesson word. */
function noFormula(text: string, start: number, end: number): Fault | undefined {
  const inside = text.slice(start + 1, end - 1);
  const spaced = /^[ \t]+\(([^()\s]*[.:/][^()\s]*)\)/u.exec(text.slice(end));
  if (spaced) {
    const message = 'A blank parts the two halves of this link or picture.';
    return { at: 0, message, fix: `Write [${inside}](${spaced[1]}), with nothing between.` };
  }
  if (text[start - 1] === ')' && /[.:/]/u.test(inside)) {
    const words = /\(([^()]*)\)$/u.exec(text.slice(0, start))?.[1] ?? 'words';
    return {
      at: 0,
      message: 'The two halves of this link stand the wrong way round.',
      fix: `Write [${words}](${inside}).`,
    };
  }
  const [word] = /^\p{Lu}\w*(?=\s+[a-z]+=)/u.exec(inside) ?? [];
  if (word === undefined || !wordCalled(word)) return undefined;
  return { at: 0, message: 'A lesson word stands in < and >.', fix: `Write <${inside} />.` };
}

type Fault = { at: number; message: string; fix: string | undefined };

function faultOf(
  { kind, inQuestion }: Said,
  written: string,
  formula: string,
  around: Surroundings | undefined,
): Fault | undefined {
  if (around?.project === undefined) {
    const why = around ? 'there is no project here' : 'this file belongs to no project';
    return { at: 0, message: `${quote(written)} cannot be worked out: ${why}.`, fix: KEEP };
  }
  if (written.includes(JOINER) || written.includes(THING)) {
    const plain = written.replaceAll(JOINER, '').replaceAll(THING, '…');
    return { at: 0, message: `${quote(plain)} holds more than a formula, and stays as it is.`, fix: KEEP };
  }
  const isProse = kind === 'prose' && !inQuestion;
  const fault = referenceFault(isProse ? 'formula or layers' : 'formula', formula, around);
  if (!fault) return undefined;
  if (!isProse && layersAsked(formula) !== undefined) {
    const message = `${quote(written)} stands here, and layers are counted in the prose of a lesson alone, outside of questions.`;
    return { at: 0, message, fix: 'Write “many layers” here, or tell how many in a lesson.' };
  }
  const inside = written.slice(1).search(/\S/u) + 1;
  return {
    at: inside + fault.at,
    message: fault.message,
    fix: fault.fix ?? (/Do you mean/u.test(fault.message) ? undefined : KEEP),
  };
}
