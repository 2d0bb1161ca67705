/** The drawing of the study, for the page and for the worker, which sets no sums. */
import { drawDrift, type Drift, type Pattern, type Scene } from '../../../src/core/index.ts';
import { low } from '../../compute/fit.ts';
import { FINE } from './sums.ts';

/** A finished width as meant and as sewn. */
export const drawDrifted = (drift: Drift, { edition }: Pick<Pattern, 'edition'>): Scene =>
  drawDrift(drift, { edition, grid: FINE, fit: low(40) });
