import type { Pattern } from '../../../src/core/index.ts';
import { layOutAtOnce, startOf } from '../../compute/cutting.ts';
import { oncePerGiven } from '../once.ts';
import type { Attributes } from './word.ts';

/** How the cloth is laid at first, and the layout that a moment finds; empty where nothing is cut from cloth. */
export const view = oncePerGiven((pattern: Pattern, { of }: Attributes) => {
  const start = startOf(pattern, of);
  return start ? { start, laid: layOutAtOnce(pattern, start) } : {};
});
