import { expect, test } from 'vitest';
import * as brief from '../../../src/core/project/remarks-in-browser.ts';
import * as full from '../../../src/core/project/remarks.ts';
import type { Diagnostic } from '../../../src/core/index.ts';

test('a browser knows every remark, and makes none', () => {
  expect(Object.keys(brief).sort()).toEqual(Object.keys(full).sort());
  const told = (remarks: Pick<typeof full, 'noteNapAcross'>) => {
    const findings: Diagnostic[] = [];
    remarks.noteNapAcross('flap', { nap: 'up', grain: 'crosswise' }, [], { home: 'inch', names: [], findings });
    return findings.map(({ code }) => code);
  };
  expect(told(full)).toEqual(['nap-across']);
  expect(told(brief)).toEqual([]);
});
