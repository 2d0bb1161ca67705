import type { Pattern } from '../../../src/core/index.ts';
import { oncePerGiven } from '../once.ts';
import { buyAtOnce } from '../../compute/cutting.ts';

/** What one maker buys, without spares. */
export const view = oncePerGiven((pattern: Pattern, _: object) => ({
  list: buyAtOnce(pattern, { makers: 1, spares: 0 }, { currency: 'EUR' }),
}));
