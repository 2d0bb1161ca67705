import type { Pattern } from '../../../src/core/index.ts';
import { cautions, defersTo } from './cautions.ts';
import type { Attributes } from './word.ts';

/** The title, the usual sentences for the tool, and what goes before them. */
export function view(_: Pattern | undefined, { of }: Attributes) {
  const usual = of === undefined ? undefined : cautions[of];
  return {
    title: usual ? `Caution: ${usual.title.toLowerCase()}` : 'Caution',
    usual: usual?.sentences.join(' '),
    defersTo,
  };
}
