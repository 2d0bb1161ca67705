import { anyOf, didYouMean, quote } from '../../../src/core/index.ts';
import { attributeOf, error } from '../check-texts.ts';
import { allTextsIn } from '../given.ts';
import type { LessonAround, LessonMistake, WordInLesson } from '../word.ts';

/** Edges that the piece has not; a piece without allowances needs its edges named. */
export function check(written: WordInLesson, { project: { variants } }: LessonAround): LessonMistake[] {
  const [piece, edges] = [attributeOf(written, 'piece'), attributeOf(written, 'edges')];
  if (typeof piece?.value !== 'string') return [];
  const name = piece.value;
  const found = variants.map(({ inch }) => inch.pieces[name]).find((one) => one !== undefined);
  if (!found) return [];
  const names = found.outline.map(({ name }) => name).filter((name) => !name.endsWith(' corner'));
  if (!edges) {
    if (Object.values(found.allowance).some((mm) => mm > 0)) return [];
    const message = `No edge of ${quote(name)} has a seam allowance.`;
    return [error(piece.at, message, 'Write the edges: edges={["left"]}.')];
  }
  return allTextsIn(edges.value).flatMap((edge) => {
    if (names.includes(edge)) return [];
    const message = `edges: the piece has no edge ${quote(edge)}.`;
    return [error(edges.at, message, didYouMean(edge, names) ?? `There are: ${anyOf(names)}.`)];
  });
}
