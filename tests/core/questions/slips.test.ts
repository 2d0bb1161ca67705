import { describe, expect, test } from 'vitest';
import { parseFormula, type Formula } from '../../../src/core/formula/index.ts';
import { scopeOf } from '../../../src/core/project/index.ts';
import { slips, type Slip } from '../../../src/core/questions/index.ts';
import { patternOf } from './demo.ts';

const inches = (value: number) => value * 25.4;

const measures = patternOf(
  {
    'card width': inches(4.25),
    'card height': inches(3),
    ease: inches(1 / 8),
    seam: inches(1 / 4),
    depth: inches(2),
    lift: inches(0.5),
  },
  'inch',
  { pockets: 5 },
  { seam: 'Seam allowance', pockets: 'Number of pockets', 'card width': 'Width of your cards' },
);
const scope = scopeOf(measures);
const label = (name: string) => measures.measures[name]?.label;

function formula(text: string): Formula {
  const read = parseFormula(text, { names: scope.known! });
  if (!read.ok) throw new Error(read.fault.message);
  return read.value;
}

/** As if the pieces told it: a seam at both side edges, or at top and bottom. */
const edgesOf = (text: string) => (name: string) =>
  name === 'seam' ? (text.includes('height') ? 'ends' : 'sides') : undefined;

const of = (text: string, asked?: string) => slips(formula(text), scope, { label, asked, edges: edgesOf(text) });

function find(text: string, key: string, asked?: string): Slip {
  const found = of(text, asked).find((slip) => slip.key === key);
  if (!found)
    throw new Error(
      `no ${key} among ${of(text, asked)
        .map((slip) => slip.key)
        .join(', ')}`,
    );
  return found;
}

describe('what is altered, what comes of it, and what is said', () => {
  // The values are worked out by hand, in inches.
  test.each([
    [
      'card width + 2 * ease + 2 * seam',
      'left-out seam',
      'card width + 2 * ease',
      4.5,
      'You left out the seam allowance. Both side edges take it.',
    ],
    [
      'card width + 2 * ease + 2 * seam',
      'alone card width',
      'card width',
      4.25,
      'That is the card width alone. The rest of the sum is missing.',
    ],
    [
      'card width + 2 * ease + 2 * seam',
      'one-side seam',
      'card width + 2 * ease + seam',
      4.75,
      'You added the seam allowance on one side only. Both side edges take it.',
    ],
    [
      'card width + 2 * ease + 2 * seam',
      'one-side ease',
      'card width + ease + 2 * seam',
      4.875,
      'You counted the ease only once. It counts twice.',
    ],
    [
      'card width + 2 * ease + 2 * seam',
      'twice seam',
      'card width + 2 * ease + 4 * seam',
      5.5,
      'You added the seam allowance twice at each side. Once at each side is enough.',
    ],
    [
      'card width + 2 * ease + 2 * seam',
      'wrong-sign ease',
      'card width - 2 * ease + 2 * seam',
      4.5,
      'You took away the ease. It is added here.',
    ],
    [
      'card width - 2 * seam',
      'wrong-sign seam',
      'card width + 2 * seam',
      4.75,
      'You added the seam allowance. It is taken away here.',
    ],
    [
      'card width - 2 * seam',
      'one-side seam',
      'card width - seam',
      4,
      'You took away the seam allowance on one side only. Both side edges take it.',
    ],
    [
      'card height + 2 * seam',
      'one-side seam',
      'card height + seam',
      3.25,
      'You added the seam allowance at one edge only. Top and bottom both take it.',
    ],
    [
      'card width + 2 * ease',
      'width-height card width',
      '(card height) + 2 * ease',
      3.25,
      'You used the card height. The sum needs the card width.',
    ],
    [
      'lift + 2 * pockets * depth',
      'one-side depth',
      'lift + pockets * depth',
      10.5,
      'You counted the depth 5 times. It counts 10 times.',
    ],
    [
      '(pockets - 1) * depth',
      'one-too-many depth',
      '(pockets) * depth',
      10,
      'You counted the depth one time too many.',
    ],
    [
      '(pockets - 1) * depth',
      'one-too-few depth',
      '(pockets - 2 * 1) * depth',
      6,
      'You counted the depth one time too few.',
    ],
    ['pockets * depth', 'one-too-few depth', '(pockets - 1) * depth', 8, 'You counted the depth one time too few.'],
    ['3 * depth + lift', 'one-too-few depth', '2 * depth + lift', 4.5, 'You counted the depth one time too few.'],
    ['depth / 2', 'whole depth', 'depth', 2, 'You took the whole of the depth. Half of it is wanted.'],
    ['1/2 * depth', 'whole depth', 'depth', 2, 'You took the whole of the depth. Half of it is wanted.'],
    [
      '2 * (lift + seam)',
      'brackets lift',
      '2 * lift + seam',
      1.25,
      'You multiplied or divided the lift alone. The whole sum in the brackets is meant.',
    ],
    [
      'max(lift, seam)',
      'smaller-for-larger lift',
      'min(lift, seam)',
      0.25,
      'You took the smaller size. The larger one is wanted here.',
    ],
    [
      'round up card width to 1 in',
      'rounded-down card width',
      'round down (card width) to (1 in)',
      4,
      'You rounded down. Here you round up to 1 in.',
    ],
    [
      'round up card width to 1 in',
      'not-rounded card width',
      'card width',
      4.25,
      'You did not round. Here you round up to 1 in.',
    ],
    [
      'round card width to 1 in',
      'rounded-up card width',
      'round up (card width) to (1 in)',
      5,
      'You rounded up. The nearest 1 in is wanted.',
    ],
    [
      '1.4142 * depth',
      'rough-constant',
      '(1.4) * depth',
      2.8,
      'You took 1.4 for the square root of 2. Use more digits, such as 1.4142.',
    ],
    ['depth + 1/2 in', 'left-out', 'depth', 2, 'You left out “1/2 in”. It is added here.'],
  ])('%s: %s', (text, key, altered, value, sentence) => {
    const slip = find(text, key);
    expect(slip.formula.text).toBe(altered);
    expect(slip.value / 25.4).toBeCloseTo(value, 9);
    expect(slip.sentence).toBe(sentence);
  });

  test('a number of things', () => {
    const all = of('2 * pockets');
    expect(all.map(({ key, value, sentence }) => [key, value, sentence])).toEqual([
      ['one-side pockets', 5, 'You counted the number of pockets only once. It counts twice.'],
      ['one-too-many pockets', 12, 'You counted one too many. Look again at the number of pockets.'],
      ['one-too-few pockets', 8, 'You counted one too few. Look again at the number of pockets.'],
      ['whole', 20, 'That is twice as much as is wanted.'],
    ]);
  });

  test('one unit read as another', () => {
    const all = of('card width + 2 * seam').filter((slip) => slip.kind === 'unit');
    // 4 3/4 in is 12.065 cm and 120.65 mm by the exact inch of 25.4 mm.
    expect(all.map((slip) => [slip.key, Number((slip.value / 25.4).toFixed(4))])).toEqual([
      ['unit centimetres as inches', 12.065],
      ['unit millimetres as inches', 120.65],
      ['unit inches as centimetres', 1.8701],
      ['unit inches as millimetres', 0.187],
    ]);
    expect(all[0]!.sentence).toBe('Your number is right in centimetres, but it was read as inches. Check the unit.');
  });

  test('names tell the finished size from the cut size', () => {
    const piece = patternOf({ 'flap width': 120, 'flap finished width': 108, 'flap height': 90, seam: 7 });
    const read = parseFormula('flap finished width + 2 * seam', { names: Object.keys(piece.measures) });
    if (!read.ok) throw new Error(read.fault.message);
    const all = slips(read.value, scopeOf(piece), { asked: 'flap width' });
    const said = all.filter((slip) => slip.value === 108 || slip.value === 90);
    // The finished width is the sum without its seams: said once, as what happened.
    expect(said.map((slip) => slip.key)).toEqual(['left-out seam', 'width-height']);
    expect(said[1]!.sentence).toBe('That is the flap height. You are asked for the flap width.');
  });
});

test('the examples in the comments hold', () => {
  const read = parseFormula('width + 2 * seam');
  if (!read.ok) throw new Error(read.fault.message);
  expect(
    slips(read.value)
      .map((slip) => slip.key)
      .slice(0, 2),
  ).toEqual(['left-out width', 'left-out seam']);
  expect(slips(read.value, scopeOf(patternOf({ width: 90, seam: 7 })))[2]!.sentence).toBe(
    'You counted the seam only once. It counts twice.',
  );
});

test('without a scope there are the same slips, save those that need values', () => {
  expect(slips(formula('depth + 2 * seam')).map((slip) => slip.key)).toEqual([
    'left-out depth',
    'left-out seam',
    'one-side seam',
    'twice depth',
    'twice seam',
    'wrong-sign seam',
    'half',
    'whole',
  ]);
});

test('a slip that changes nothing, and one in other words, are left out', () => {
  // Rounding down what is on the mark already, and the larger of two equals, come to the right answer anywhere.
  expect(of('max(seam, seam)').filter((slip) => slip.kind === 'smaller-for-larger')).toEqual([]);
  // Half of `2 * depth` is the depth counted once.
  expect(of('2 * depth').filter((slip) => Math.abs(slip.value - inches(2)) < 1e-9)).toHaveLength(1);
});

test('the altered part is shown at its place', () => {
  const text = 'card width + 2 * (ease + seam)';
  const slip = find(text, 'left-out seam');
  expect(text.slice(slip.node.start, slip.node.end)).toBe('(ease + seam)');
  expect(slip.names).toEqual(['seam']);
});

test('the most common come first, and an author’s own before all', () => {
  const all = slips(formula('card width + 2 * seam'), scope, {
    own: [{ is: 'card width + 3 * seam', say: 'Count the edges.' }],
  });
  expect(all[0]).toMatchObject({ key: 'own 1', kind: 'own', rank: 0, sentence: 'Count the edges.' });
  expect(all.map((slip) => slip.rank)).toEqual(all.map((slip) => slip.rank).toSorted((a, b) => a - b));
});

test('an author’s slip stands in the place of the one that the sum gives', () => {
  const own = [{ is: 'seam + card width', say: 'Two edges, two seams.' }];
  const all = slips(formula('card width + 2 * seam'), scope, { own });
  expect(all.filter((slip) => Math.abs(slip.value - inches(4.5)) < 1e-9).map((slip) => slip.sentence)).toEqual([
    'Two edges, two seams.',
  ]);
});
