/**
 * Published worked examples against the sums of a project file: patchwork, cushions, bags, garment parts, curtains, table
 * linen, bindings. The rule of each source is written as an author would write it, worked out as a measure, and must come
 * to what the source prints. The rows and their sources stand in published-rows.ts.
 */
import { describe, expect, test } from 'vitest';
import { publishedRows } from './published-rows.ts';
import { resolved } from '../core/project/files.ts';

const measures = publishedRows.map(({ sum }, i) => `  row ${i}: { is: ${sum} }`).join('\n');
const file = `title: Published\nunits: inch\nmeasures:\n${measures}\npieces: {}\n`;
const patterns = { inch: resolved(file), metric: resolved(file, { edition: 'metric' }) };
/** An edition rounds what is stated in the other one to its own marks: each row is worked out in the edition it is in. */
const patternOf = (sum: string) => (/\d [cm]?m\b/u.test(sum) ? patterns.metric : patterns.inch);
const MM = { in: 25.4, cm: 10, mm: 1, m: 1000, number: 1 };

test('every sum can be read and worked out', () => {
  for (const { findings } of Object.values(patterns))
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(publishedRows.length).toBeGreaterThan(220);
});

describe('published examples', () => {
  test.each(publishedRows.map((row, i) => ({ ...row, i })))('$id: $what', (row) => {
    const { i, unit, published, within = 0.0005, misprint } = row;
    const measure = patternOf(row.sum).measures[`row ${i}`]!;
    expect(measure.dimension).toBe(unit === 'number' ? 0 : 1);
    const ours = measure.value / MM[unit];
    if (misprint) {
      // The source’s own rule does not come to what it prints.
      expect(Math.abs(ours - misprint.right)).toBeLessThan(0.001);
      expect(Math.abs(ours - published)).toBeGreaterThan(0.01);
    } else expect(Math.abs(ours - published)).toBeLessThan(within + 1e-9);
  });
});
