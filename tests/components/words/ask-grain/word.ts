/** A made-up question: which way the grain of a piece runs. Its folder and a line in the registry are all there is of it. */
import { z } from 'zod';
import { quote, type Pattern } from '../../../../src/core/index.ts';
import { textIn } from '../../../../components/words/given.ts';
import type {
  AttributeValues,
  SavedRecord,
  LessonAround,
  LessonMistake,
  Word,
  WordInLesson,
} from '../../../../components/words/word.ts';

const attributes = z.strictObject({
  piece: z.string().describe('A piece of the project.'),
  runs: z.enum(['up', 'across']).describe('Which way its grain runs.'),
});
type Attributes = z.infer<typeof attributes>;

const kept = ({ piece }: AttributeValues): SavedRecord => ({ as: 'answer', name: `grain of ${textIn(piece) ?? ''}` });

function check({ attributes }: WordInLesson, { project }: LessonAround): LessonMistake[] {
  const piece = attributes.find(({ name }) => name === 'piece');
  const [{ inch }] = project.variants;
  if (typeof piece?.value !== 'string' || inch.pieces[piece.value]) return [];
  const message = `The lesson’s own size has no ${quote(piece.value)}.`;
  return [{ at: piece.at, severity: 'warning', message }];
}

export const AskGrain: Word = {
  group: 'question',
  about: 'A question for the grain of a piece.',
  attributes,
  example: '<AskGrain piece="flap" runs="up">\n\nWhich way does it run?\n\n</AskGrain>',
  names: { piece: 'piece' },
  text: 'needed',
  view: (_: Pattern, { piece, runs }: Attributes) => ({ name: kept({ piece }).name, piece, runs }),
  check,
  paper: (given, words) => ({
    picks: [{ kind: 'choice', id: kept(given).name, words, right: [textIn(given.runs) ?? ''], wrong: ['askew'] }],
  }),
  saves: kept,
  inSets: 'as it is',
};
