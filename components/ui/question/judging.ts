/**
 * What judges answers, makes exercises and explains what somebody's work measures. Nobody needs it before they answer, so
 * that pages fetch it only then: `import()` it.
 */
export {
  explainMeasured,
  hintsFor,
  isDone,
  judge,
  practise,
  readTolerance,
  rungAt,
  sumFor,
} from '../../../src/core/index.ts';
export { questionWithoutSumAt } from '../../words/practice/question-order.ts';
