import { cutList, type Pattern } from '../../../src/core/index.ts';

/** The pieces to cut, a row each; lengths in mm. */
export const view = (pattern: Pattern) => ({ rows: cutList(pattern) });
