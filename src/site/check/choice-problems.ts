import { quote } from '../../core/measure/index.ts';
import type { Pattern } from '../../core/project/index.ts';
import { makeUp } from '../../core/project/index.ts';
import { pointAtShowing, sumFor } from '../../core/questions/index.ts';
import type { WrittenAttribute, WrittenWord } from '../content/lesson-text.ts';
import type { Said } from '../content/problem.ts';
import type { WorkedOut } from './project-problems.ts';
import { anyOf, didYouMean } from '../content/wording.ts';

/** Words whose texts may hold sizes in square brackets. */
const withSizes = ['AskChoice', 'AskOrder', 'AskPairs', 'Predict'];

/**
 * What is wrong in a question that is answered by choosing: sizes in its texts that cannot be worked out, answers that
 * stand there twice, edges and folds that the piece has not, and what does not show. Undefined for every other word.
 */
export function choiceProblems(
  { name, attributes }: Pick<WrittenWord, 'name' | 'attributes'>,
  { variants }: WorkedOut,
): Said[] | undefined {
  if (name === 'AskEdge') return edgeProblems(attributes, variants);
  if (name === 'AskFold') return foldProblems(attributes, variants);
  if (name === 'AskSide') return sideProblems(attributes, variants);
  if (!withSizes.includes(name)) return undefined;
  return [
    ...attributes.flatMap((attribute) =>
      sizeProblems(
        attribute,
        variants.map(({ inch }) => inch),
      ),
    ),
    ...twice(name, attributes),
  ];
}

const error = (at: number, message: string, mend?: string): Said => ({ at, severity: 'error', message, mend });

function sizeProblems({ name, value, at }: WrittenAttribute, patterns: readonly Pattern[]): Said[] {
  return textsIn(value).flatMap((text) =>
    [...text.matchAll(/\[([^\][]+)\]/gu)].flatMap(([, of = '']) => {
      // What one choice of options leaves out, another has.
      const [fault, ...others] = patterns.map((pattern) => sumFor(of, pattern));
      return fault && !fault.ok && others.every(({ ok }) => !ok)
        ? [error(at, `${name}: ${fault.fault.message}`, fault.fault.mend)]
        : [];
    }),
  );
}

function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(textsIn);
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(textsIn) : [];
}

/** Two answers alike cannot be told apart. */
function twice(word: string, attributes: readonly WrittenAttribute[]): Said[] {
  const given = attributes.filter(({ name }) => ['right', 'wrong', 'steps', 'guesses', 'terms'].includes(name));
  const all = given.flatMap(({ value, at }) =>
    (Array.isArray(value) ? value : Object.keys(Object(value))).map((text) => ({ text: String(text), at })),
  );
  return all.flatMap(({ text, at }, i) =>
    all.findIndex((other) => other.text === text) < i
      ? [error(at, `<${word}>: ${quote(text)} stands there twice.`, 'Keep one of them.')]
      : [],
  );
}

function edgeProblems(attributes: readonly WrittenAttribute[], variants: WorkedOut['variants']): Said[] {
  const given = (name: string) => attributes.find((attribute) => attribute.name === name);
  const [piece, edges] = [given('piece'), given('edges')];
  if (typeof piece?.value !== 'string') return [];
  const name = piece.value;
  const found = variants.map(({ inch }) => inch.pieces[name]).find((one) => one !== undefined);
  if (!found) return [];
  const names = found.outline.map(({ name }) => name).filter((name) => !name.endsWith(' corner'));
  if (!edges) {
    const sewn = Object.values(found.allowance).some((mm) => mm > 0);
    if (sewn) return [];
    const message = `No edge of ${quote(name)} has a seam allowance.`;
    return [error(piece.at, message, 'Write the edges: edges={["left"]}.')];
  }
  return textsIn(edges.value).flatMap((edge) =>
    names.includes(edge)
      ? []
      : [
          error(
            edges.at,
            `edges: the piece has no edge ${quote(edge)}.`,
            didYouMean(edge, names) ?? `There are: ${anyOf(names)}.`,
          ),
        ],
  );
}

function foldProblems(attributes: readonly WrittenAttribute[], variants: WorkedOut['variants']): Said[] {
  const given = (name: string) => attributes.find((attribute) => attribute.name === name);
  const [piece, fold, kind] = [given('piece'), given('fold'), given('kind')];
  if (fold && kind)
    return [
      error(kind.at, '<AskFold>: it asks for one fold or for a kind, and not for both.', 'Take one of them out.'),
    ];
  if (!fold && !kind) {
    const at = piece?.at ?? attributes[0]?.at;
    return at === undefined ? [] : [error(at, '<AskFold>: which fold?', 'Write fold={3}, or kind="valley".')];
  }
  if (!fold || typeof piece?.value !== 'string' || typeof fold.value !== 'number') return [];
  const name = piece.value;
  const counts = variants.flatMap(({ inch }) => inch.pieces[name]?.pleats?.folds.length ?? []);
  const most = Math.max(0, ...counts);
  if (most === 0 || fold.value <= most) return [];
  return [error(fold.at, `fold: ${quote(name)} has ${most} folds at the lesson’s size.`, `Ask for one of them.`)];
}

function sideProblems(attributes: readonly WrittenAttribute[], variants: WorkedOut['variants']): Said[] {
  const given = (name: string) => attributes.find((attribute) => attribute.name === name);
  const [step, shows, from] = [given('step'), given('shows'), given('from')];
  if (typeof step?.value !== 'string' || typeof shows?.value !== 'string') return [];
  const [id, wanted] = [step.value, shows.value];
  const side = from?.value === 'back' ? 'back' : 'front';
  const pieces = [...new Set(variants.flatMap(({ inch }) => Object.keys(inch.pieces)))];
  const known = ['right side', 'wrong side', ...pieces];
  if (!known.includes(wanted)) {
    const mend = didYouMean(wanted, known) ?? 'Write right side, wrong side, or the name of a piece.';
    return [error(shows.at, `shows: there is no side or piece ${quote(wanted)}.`, mend)];
  }
  const works = variants.flatMap(({ inch }) =>
    makeUp(inch)
      .filter((one) => one.id === id)
      .map(({ after }) => pointAtShowing(after, side, wanted, inch)),
  );
  if (works.length === 0) return [];
  const found = works.find((one) => one !== undefined);
  if (!found) return [error(shows.at, `shows: seen from the ${side}, nothing of it shows after that step.`, OTHER)];
  if (found.spots.every(({ right }) => right))
    return [error(shows.at, `shows: seen from the ${side}, all that shows after that step is right.`, OTHER)];
  return [];
}

const OTHER = 'Ask for another step, or look from the other side.';
