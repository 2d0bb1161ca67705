/** What a hand-in may say of slips and mistakes: what the kit itself calls them, and no text of anybody's. */
import { slipKinds, type MistakeKind } from '../../src/core/index.ts';
import { isOfPlace, type HandIn } from './hand-in.ts';

/** The kinds of mistakes in pieces that were measured, as a teacher reads them. */
export const mistakes: Record<MistakeKind, string> = {
  'other-allowance': 'another seam allowance',
  'seam-forgotten': 'a seam forgotten',
  'seam-doubled': 'a seam allowance taken twice',
  'cut-at-finished': 'cut at its finished size',
  'cut-one-side': 'an allowance cut at one side only',
  'cut-twice': 'the allowance cut twice',
  'not-sewn': 'not sewn yet',
  exchanged: 'width and height exchanged',
  unit: 'inches and centimetres mixed',
  'not-trimmed': 'not trimmed',
  'trimmed-twice': 'trimmed too far',
  'pocket-forgotten': 'a pocket forgotten',
  'fold-off': 'a fold on the wrong line',
  'measure-left-out': 'a measure left out',
  'measure-halved': 'half of a measure',
  'measure-doubled': 'twice a measure',
  miscounted: 'miscounted',
};

/** A slip by its kind and the measures that it is about, or the lesson's own by its number. */
function isSlip(key: string): boolean {
  const [kind = '', ...names] = key.split(' ');
  const name = names.join(' ');
  if (key === 'near' || key === 'other' || isOfPlace(key)) return true;
  if (kind === 'own') return /^\d{1,3}$/.test(name);
  return slipKinds.some((one) => one === kind) && /^(?:[\p{L}\p{M}\p{N} ,'’_-]|\u200c|\u200d){0,80}$/u.test(name);
}

/** A hand-in without what the kit does not know: a slip becomes another wrong answer, a kind of mistake is left out. */
export function knownOnly(handIn: HandIn): HandIn {
  const slips = (all: readonly string[]) => [...new Set(all.map((key) => (isSlip(key) ? key : 'other')))];
  return {
    ...handIn,
    lessons: handIn.lessons.map((lesson) => ({
      ...lesson,
      answers: lesson.answers.map((answer) => ({
        ...answer,
        slips: slips(answer.slips),
        ...(answer.slip !== undefined && { slip: isSlip(answer.slip) ? answer.slip : 'other' }),
      })),
      ...(lesson.practised && {
        practised: lesson.practised.map((one) => ({ ...one, slips: slips(one.slips) })),
      }),
      ...(lesson.measured && {
        measured: lesson.measured.map((one) => ({
          ...one,
          mistakes: one.mistakes.filter((kind) => Object.hasOwn(mistakes, kind)),
        })),
      }),
    })),
  };
}
