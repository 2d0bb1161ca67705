import { describe, expect, it } from 'vitest';
import { checkAll, metIn, MOST_COMBINATIONS } from '../../../src/core/project/index.ts';
import { folio, lines, project, shelf } from './files.ts';
import { panels } from './steps.ts';

const met = (yaml: string): string[] => {
  const found = checkAll(project(yaml));
  const told = lines(found);
  return found.map((one, i) => `${metIn(one)}: ${told[i]!}`);
};

describe('a project in all its ways', () => {
  it('has the folio without a fault', () => {
    expect(lines(checkAll(folio(), shelf(), undefined, { ends: false }))).toEqual([]);
  });

  it('tells in which edition a fault is met', () => {
    const strap = '  strap: { size: [{ mm: 100, in: 3 7/8 }, 20 mm] }\n  panel: { size: [{ mm: 100, in: 4 }, 80 mm] }';
    const yaml = panels(
      '- { join: [panel, strap], at: [top, bottom] }\n- { lay: front, on: back }\n- { lay: back, on: panel }',
      strap,
    );
    expect(met(yaml)).toEqual([
      'inch edition: error steps > 0 > at: edges-differ: On the stitch line the top of “panel” is 4 in, the bottom of “strap” is 3 7/8 in. ' +
        'They differ by 1/8 in. Make both alike, or gather the longer one first. A little can be eased in: “eased: true”.',
    ]);
  });

  it('tries every combination, and tells of a fault with the fewest options changed', () => {
    const options = `options:
  pocket: { adds: [back], default: true }
  strap: {}
  loop: {}`;
    const steps =
      '- { join: [front, back], at: [top, bottom], when: strap }\n- { press: front }\n- { lay: back, on: front, unless: strap, when: pocket }';
    expect(met(panels(steps, options))).toEqual([
      'with “strap” and without “pocket”: error steps > 0 > join > 1: option-breaks-step: Without “pocket” there is no “back” for this step. ' +
        'Add “when: pocket” to this step.',
      'with “strap” and without “pocket”: note steps > 1 > press: left-out: This step cannot be done, because “front” is missing since step 1.',
    ]);
  });

  it('samples when there are too many, and says so', () => {
    const names = Array.from({ length: 7 }, (_, k) => `  feature ${k}: {}`).join('\n');
    const steps = '- { join: [front, back], at: [top, bottom] }';
    expect(met(panels(steps, `options:\n${names}`))).toEqual([
      `: note options: sampled: 7 options make 128 combinations. ${MOST_COMBINATIONS} of them were tried.`,
    ]);
  });
});
