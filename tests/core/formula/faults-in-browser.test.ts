import { expect, test } from 'vitest';
import * as brief from '../../../src/core/formula/faults-in-browser.ts';
import * as full from '../../../src/core/formula/faults.ts';
import type { Diagnostic, InText } from '../../../src/core/index.ts';

test('a browser has an answer to every fault that the author is told of', () => {
  for (const kind of ['refusals', 'mismatches'] as const) {
    for (const name of Object.keys(full[kind])) {
      const says = (brief[kind] as unknown as Record<string, () => Diagnostic<InText>>)[name]!;
      expect(says(), name).toMatchObject({
        code: expect.stringMatching(/^\S+$/),
        message: expect.stringMatching(/\.$/),
      });
    }
  }
});

test('what follows from another fault is known by the same code, so that it is not told twice', () => {
  const node = { kind: 'name', name: 'ease', start: 0, end: 4 } as const;
  expect(brief.mismatches.restsOnFault(node).code).toBe(full.mismatches.restsOnFault(node).code);
});

test('a fault is a sentence for the learner, who cannot mend the formula', () => {
  const fault = brief.refusals.empty('');
  expect(fault.message).toBe('This sum has no result at this size.');
  expect(fault.fix).toBeUndefined();
});
