import { quote } from '../core/measure/index.ts';
import type { Pattern } from '../core/project/index.ts';
import { sumFor } from '../core/questions/index.ts';
import type { WrittenAttribute, WrittenWord } from './lesson-text.ts';
import type { Said } from './problem.ts';
import type { WorkedOut } from './project-problems.ts';
import { anyOf, didYouMean } from './wording.ts';

/** Words whose texts may hold sizes in square brackets. */
const withSizes = ['AskChoice', 'AskOrder', 'AskPairs', 'Predict'];

/**
 * What is wrong in a question that is answered by choosing: sizes in its texts that cannot be worked out, answers that
 * stand there twice, edges that the piece has not. Undefined for every other word.
 */
export function choiceProblems(
  { name, attributes }: Pick<WrittenWord, 'name' | 'attributes'>,
  { variants }: WorkedOut,
): Said[] | undefined {
  if (name === 'AskEdge') return edgeProblems(attributes, variants);
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
