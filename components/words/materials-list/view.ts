import { materialsList, type Pattern } from '../../../src/core/index.ts';

/** The materials, a row each. */
export const view = (pattern: Pattern) => ({ rows: materialsList(pattern) });
