/** The texts of a project say their sizes at the learner's own, in both editions. Sums by hand beside them. */
import { expect, test } from 'vitest';
import { cutList, makeUp, materialsList, resolveProject, textsIn } from '../../../src/core/project/index.ts';
import { hintsFor, judge } from '../../../src/core/questions/index.ts';
import { project, resolved } from './files.ts';

const SLEEVE = `
title: A sleeve [width] wide
summary: With [pockets] pockets and [2 * seam] for both seams.
measures:
  width: { in: 6, mm: 150, between: { in: [4, 8], mm: [100, 200] }, note: 'Half of it is [width / 2].' }
  pockets: { count: 3, between: [2, 4] }
  seam: { in: 1/4, mm: 6 }
materials:
  outer: { use: cotton, note: 'Buy more than [width].' }
pieces:
  front: { from: outer, size: [width + 2 * seam, 4 in], note: 'Mark [seam] at each side.' }
  back: { from: outer, like: front }
  tab: { from: outer, size: [2 in, 2 in] }
options:
  tab: { adds: [tab], default: true, note: 'It is [tab width] wide.' }
steps:
  - { sew round: [front, back], open: top, makes: sleeve, says: 'Sew round at [seam]', note: 'Leave the top open: [width].' }
`;
const plain = (text: string | undefined) => (text ?? '').replace(/\u202f/gu, ' ');

test('title, summary and notes follow the learner', () => {
  // 2 × 1/4 = 1/2 in; of the own width of 5 in the half is 2 1/2.
  const own = resolved(SLEEVE, { values: { width: 5 * 25.4, pockets: 4 } });
  expect(plain(own.title)).toBe('A sleeve 5 in wide');
  expect(plain(own.summary)).toBe('With 4 pockets and ½ in for both seams.');
  expect(plain(own.measures['width']!.note)).toBe('Half of it is 2½ in.');
  expect(plain(own.pieces['front']!.note)).toBe('Mark ¼ in at each side.');
  expect(plain(own.options['tab']!.note)).toBe('It is 2 in wide.');
  expect(plain(own.materials['outer']!.note)).toBe('Buy more than 5 in.');
  expect(own.findings).toEqual([]);
  const metric = resolved(SLEEVE, { edition: 'metric' });
  expect(plain(metric.title)).toBe('A sleeve 150 mm wide');
  expect(plain(metric.summary)).toBe('With 3 pockets and 12 mm for both seams.');
  // The file itself stays as it was written.
  const file = project(SLEEVE);
  resolveProject(file);
  expect(file.title).toBe('A sleeve [width] wide');
});

test('so do steps, the cutting list and the shopping list', () => {
  const own = resolved(SLEEVE, { edition: 'metric', values: { width: 120 } });
  const [step] = makeUp(own);
  expect(plain(step!.title)).toBe('Sew round at 6 mm');
  expect(plain(step!.note)).toBe('Leave the top open: 120 mm.');
  expect(cutList(own).flatMap(({ notes }) => notes.map(plain))).toContain('Mark 6 mm at each side.');
  expect(materialsList(own).map(({ note }) => plain(note))).toContain('Buy more than 120 mm.');
});

const LABELS = `
title: Labels
measures:
  width: { in: 6, mm: 150, between: { in: [4, 8], mm: [100, 200] }, label: 'Width, at most [2 * width]' }
  'odd [name]': 20 mm
materials:
  outer: { use: cotton, label: 'Cotton for [width]' }
pieces:
  front:
    label: 'Front of [width]'
    from: outer
    size: [width, 4 in]
    notches: [{ on: top, at: middle, label: 'middle of [width]' }]
    folds: [{ at: 1 in, label: 'fold at [width / 6]' }]
  tiny: { label: 'Tiny [width]', from: outer, size: [0.5 mm, width] }
options:
  wide: { measures: { width: { in: 7, mm: 180 } }, label: 'As wide as [width]' }
holds: [{ what: 'a card of [width - 1 in]', size: [3 in, 3 in], in: front }]
`;

test('labels follow the learner, wherever they are read', () => {
  const own = resolved(LABELS, { values: { width: 5 * 25.4 } });
  expect(plain(own.measures['width']!.label)).toBe('Width, at most 10 in');
  expect(plain(own.measures['front width']!.label)).toBe('Front of 5 in, cut width');
  expect(plain(own.measures['front width']!.spoken)).toBe('cut width of the front of 5 in');
  expect(plain(own.materials['outer']!.label)).toBe('Cotton for 5 in');
  expect(plain(own.pieces['front']!.label)).toBe('Front of 5 in');
  expect(plain(own.pieces['front']!.notches[0]!.label)).toBe('middle of 5 in');
  expect(plain(own.pieces['front']!.folds[0]!.label)).toBe('fold at ≈ 13⁄16 in');
  expect(plain(own.options['wide']!.label)).toBe('As wide as 5 in');
  expect(plain(own.holds[0]!.sentence)).toMatch(/^A card of 4 in fits the front/u);
  expect(plain(cutList(own)[0]!.label)).toBe('Front of 5 in');
  // What is wrong is told by the label as it reads, and a name with brackets is no formula.
  expect(own.findings.map(({ message }) => plain(message))).toContain(
    '“Tiny 5 in” is only ≈ 0 in wide. Nobody can cut less than 1 mm.',
  );
  expect(own.measures['odd [name]']!.label).toBe('odd [name]');
  expect(plain(resolved(LABELS, { edition: 'metric' }).pieces['front']!.label)).toBe('Front of 150 mm');
  expect(textsIn(project(LABELS)).map(({ place }) => place.join(' '))).toEqual([
    'title',
    'measures width label',
    'materials outer label',
    'pieces front label',
    'pieces front notches 0 label',
    'pieces front folds 0 label',
    'pieces tiny label',
    'options wide label',
    'holds 0 what',
  ]);
});

test('every text of a file is told with its place', () => {
  expect(textsIn(project(SLEEVE)).map(({ place }) => place.join(' '))).toEqual([
    'title',
    'summary',
    'measures width note',
    'materials outer note',
    'pieces front note',
    'options tab note',
    'steps 0 says',
    'steps 0 note',
  ]);
});

test('what is said to a wrong sum, and a hint, have the numbers of the learner', () => {
  const asked = {
    of: 'width + 2 * seam',
    hints: ['Each seam takes [seam].'],
    slips: [{ is: 'width', say: 'You forgot [2 * seam].' }],
    reword: { 'one-side': 'That is [seam] only.' },
  };
  const inch = resolved(SLEEVE);
  const metric = resolved(SLEEVE, { edition: 'metric' });
  expect(plain(hintsFor(asked, inch)[0]!.sentence)).toBe('Each seam takes ¼ in.');
  expect(plain(hintsFor(asked, metric)[0]!.sentence)).toBe('Each seam takes 6 mm.');
  expect(plain(judge('6', asked, inch).sentence)).toBe('You forgot ½ in.');
  expect(plain(judge('150', asked, metric).sentence)).toBe('You forgot 12 mm.');
  expect(plain(judge('156', asked, metric).sentence)).toBe('That is 6 mm only.');
});
