/** What people say at the table: spoken lengths, words of the trade misheard, and which step is spoken of. */
export {
  CERTAIN,
  editionSpoken,
  spokenLengths,
  type OtherReading,
  type SpokenLength,
  type SpokenOptions,
} from './lengths.ts';
export { sentences, type SpokenSentence } from './sentences.ts';
export {
  lengthsIn,
  spokenSizes,
  type InEditions,
  type LengthInLines,
  type SpokenMeasure,
  type SpokenSize,
} from './sizes.ts';
export type { SpokenLine, SpokenPlace } from './lines.ts';
export type { SpokenUnit } from './units.ts';
export { heardVerbs } from './heard-verbs.ts';
export { saidByTheWay } from './turns-of-phrase.ts';
export { sidesSaid } from './telling.ts';
export { alignSteps, SURE_STEP, type ToldStep } from './align.ts';
export { courseWords, type CourseWords } from './course-words.ts';
export { mend, misheard, type HeardAt, type MendList, type Mishearing } from './misheard.ts';
export { compareSpoken, type Compared, type InRecording, type SpokenFinding } from './compare.ts';
