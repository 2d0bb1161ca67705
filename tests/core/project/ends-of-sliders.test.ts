/** What a learner may choose is tried at the ends of the sliders. */
import { describe, expect, it } from 'vitest';
import { checkAll, metIn, resolveProject } from '../../../src/core/project/index.ts';
import { folio, notionsPouch, project, shelf, tableSet } from './files.ts';

const slider = (name: string) => `  ${name}: { in: 4, mm: 100, between: { in: [3, 6], mm: [75, 150] } }\n`;
const file = (measures: string, more: string) => project(`title: T\nmeasures:\n${measures}${more}`);
const told = (...args: Parameters<typeof checkAll>) =>
  checkAll(...args).map((finding) => `${finding.severity} ${metIn(finding)}: ${finding.message}`);

describe('the ends of the sliders', () => {
  const pouch =
    'pieces: { pouch: { size: [wide, tall] } }\nholds: [{ what: a card, size: [2 7/8, 2 7/8], in: pouch }]\n';

  it('are tried, all corners of up to six, and what goes wrong there alone is a warning', () => {
    expect(told(file(slider('wide') + slider('tall'), pouch))).toEqual([]);
    expect(told(file(slider('wide') + slider('tall'), pouch.replace('[2 7/8, 2 7/8]', '[3 1/2, 2 7/8]')))).toEqual([
      'warning inch edition, with “wide” at 3 in: A card does not fit the pouch: it is 1/2 in too wide. It is so in 6 of the 16 choices tried.',
    ]);
  });

  it('name the sliders that have a part in it, and no others', () => {
    const diagonal =
      'pieces: { pouch: { size: [wide + tall, 5] } }\nholds: [{ what: a card, size: [6 1/2, 3], in: pouch }]\n';
    const [one, ...others] = told(file(slider('wide') + slider('tall') + slider('deep'), diagonal));
    expect(others).toEqual([]);
    expect(one).toMatch(/^warning inch edition, with “wide” at 3 in and “tall” at 3 in: /u);
  });

  it('are tried two by two where there are more than six, and a note says what was not', () => {
    const many = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map(slider).join('');
    const pair = 'pieces: { pouch: { size: [a + f, 5] } }\nholds: [{ what: a card, size: [6 1/2, 3], in: pouch }]\n';
    expect(told(file(many, pair))).toEqual([
      'warning inch edition, with “a” at 3 in and “f” at 3 in: A card does not fit the pouch: it is 1/2 in too wide. It is so in 2 of the 196 choices tried.',
      'note : 7 sliders have 128 corners. Each two of them were tried at their ends, 98 choices in each edition; the corners were not.',
    ]);
  });

  it('say nothing again that the lesson’s own sizes have', () => {
    const wrong = pouch.replace('[2 7/8, 2 7/8]', '[5, 2 7/8]');
    expect(told(file(slider('wide') + slider('tall'), wrong))).toEqual([
      expect.stringMatching(/^error : A card does not fit the pouch/u),
    ]);
    expect(
      told(
        file(slider('wide') + slider('tall'), pouch.replace('[2 7/8, 2 7/8]', '[3 1/2, 2 7/8]')),
        undefined,
        undefined,
        {
          ends: false,
        },
      ),
    ).toEqual([]);
  });
});

describe('the demo projects', () => {
  it('can be made at the ends of their sliders', () => {
    for (const demo of [folio, notionsPouch, tableSet]) {
      expect(checkAll(demo(), shelf()).filter(({ severity }) => severity !== 'note')).toEqual([]);
    }
  }, 60_000);

  it('hold the cards that the sliders say', () => {
    const sizes = { 'card width': 152.4, 'card height': 101.6 };
    const { holds } = resolveProject(folio(), { values: sizes });
    for (const { size, fits } of holds) {
      expect(fits).toBe(true);
      expect([size.width, size.height]).toEqual(Object.values(sizes));
    }
  });
});
