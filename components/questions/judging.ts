/** What judges an answer. Nobody needs it before they answer, so that pages fetch it only then: `import()` it. */
export { hintsFor, judge, readTolerance } from '../../src/core/index.ts';
