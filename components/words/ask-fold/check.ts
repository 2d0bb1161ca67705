import { quote } from '../../../src/core/index.ts';
import { attributeOf, error } from '../check-texts.ts';
import type { LessonAround, LessonMistake, WordInLesson } from '../word.ts';

/** One fold or a kind is asked for, and a fold that the strip has. */
export function check(written: WordInLesson, { project: { variants } }: LessonAround): LessonMistake[] {
  const [piece, fold, kind] = ['piece', 'fold', 'kind'].map((name) => attributeOf(written, name));
  if (fold && kind) {
    const message = '<AskFold>: it asks for one fold or for a kind, and not for both.';
    return [error(kind.at, message, 'Take one of them out.')];
  }
  if (!fold && !kind) {
    const at = piece?.at ?? written.attributes[0]?.at;
    return at === undefined ? [] : [error(at, '<AskFold>: which fold?', 'Write fold={3}, or kind="valley".')];
  }
  if (!fold || typeof piece?.value !== 'string' || typeof fold.value !== 'number') return [];
  const name = piece.value;
  const counts = variants.flatMap(({ inch }) => inch.pieces[name]?.pleats?.folds.length ?? []);
  const most = Math.max(0, ...counts);
  if (most === 0 || fold.value <= most) return [];
  return [error(fold.at, `fold: ${quote(name)} has ${most} folds at the lesson’s size.`, `Ask for one of them.`)];
}
