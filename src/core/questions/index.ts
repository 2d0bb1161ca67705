export { slips, type Alteration, type OwnSlip, type Slip, type SlipOptions } from './slips.ts';
export { slipKinds, type Partner, type SlipKind } from './edits.ts';
export { scopeOf, sumFor, type Sum } from './sum.ts';
export { readAnswer } from './answer.ts';
export { judge, limitsOf, slipsOf, type Judgement, type Limits, type Question } from './judge.ts';
export { hintsFor, solutionOf, type Hint, type Solution } from './hints.ts';
export { isDone, practise, randomFrom, shuffled, stepsIn, type Difficulty, type Exercise } from './practice.ts';
export { judgeOrder, judgePairs, judgePicks, sewnEdges, type Picked } from './choices.ts';
