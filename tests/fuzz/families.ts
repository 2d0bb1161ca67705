/** The families of attacks, a line each. */
import { chains } from './chains/family.ts';
import type { Family } from './family.ts';

export const families: readonly Family[] = [chains];
