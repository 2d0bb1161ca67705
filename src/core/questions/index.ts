export { slips, type Alteration, type OwnSlip, type Slip, type SlipOptions } from './slips.ts';
export { kindInWords, sayToClass } from './to-class.ts';
export { called, wordingOf } from './sentences.ts';
export { slipKinds, type Partner, type SlipKind } from './edits.ts';
export { sumFor, type Sum } from './sum.ts';
export { readAnswer } from './answer.ts';
export { readTolerance } from './tolerance.ts';
export { isClear, judge, limitsOf, slipsOf, type Judgement, type Limits, type Question } from './judge.ts';
export { hintsFor, type Hint } from './hints.ts';
export {
  fromEasyToHard,
  isDone,
  practise,
  ROUNDS,
  randomFrom,
  rungAt,
  shuffled,
  stepsIn,
  type Difficulty,
  type Exercise,
} from './practice.ts';
export { judgeOrder, judgePairs, judgePicks, sewnEdges, type Picked } from './choices.ts';
export {
  clearMarks,
  pointAtEdges,
  pointAtFolds,
  type FoldQuestion,
  type Pointing,
  type PointingTarget,
} from './pointing.ts';
export { pointAtVisible } from './visible.ts';
export { edgesName, foldsName, sideName } from './default-names.ts';
export {
  explainMeasured,
  usualSizes,
  workTolerance,
  type Explanation,
  type Measured,
  type MeasuredReading,
  type UsualSizes,
} from './measured.ts';
export type { ProjectAtHand, Subject } from './measured-work.ts';
export type { SewingMistake, MistakeKind } from './mistakes.ts';
export type { SizeChange, Remedy } from './remedies.ts';
