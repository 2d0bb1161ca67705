import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFormula, type Node } from '../../../src/core/index.ts';
import { fixed } from '../fixed.ts';
import { folio, formula, number, length, result, scopeOf, unreadable } from './read.ts';
import { here, lengths, named, names, plainNumbers, sums } from './random.ts';

const known = Object.keys(folio);
const scope = scopeOf(folio);

/** The text of a formula with every part in brackets, to show what belongs together. */
function shape(text: string, given?: Iterable<string>): string {
  const show = (node: Node): string => {
    if (node.kind === 'number' || node.kind === 'length') return String(node.value);
    if (node.kind === 'name') return node.name;
    if (node.kind === 'minus') return `(-${show(node.of)})`;
    if ('left' in node) return `(${show(node.left)} ${node.kind} ${show(node.right)})`;
    if ('to' in node) return `(${node.way} ${show(node.of)} to ${show(node.to)})`;
    if (node.kind === 'pi') return 'pi';
    if (node.kind === 'root') return `(root of ${show(node.of)})`;
    return `${node.kind}(${node.of.map(show).join(', ')})`;
  };
  return show(formula(text, given).tree);
}

describe('numbers and lengths in a formula', () => {
  it.each([
    ['3', number(3)],
    ['2.5', number(2.5)],
    ['2,5', number(2.5)],
    ['.5', number(0.5)],
    ['1/4', number(0.25)],
    ['3 1/4', number(3.25)],
    ['½', number(0.5)],
    ['3½', number(3.5)],
    ['3 1⁄4', number(3.25)],
    ['3 1/4 in', length(82.55)],
    ['3 1/4"', length(82.55)],
    ['1/4 in', length(6.35)],
    ['¼ in', length(6.35)],
    ['6mm', length(6)],
    ['1,5 cm', length(15)],
    ['0.5 m', length(500)],
    ['1 ft 3 in', length(381)],
    ['1\' 3"', length(381)],
    ['1/2 yd', length(457.2)],
  ])('%s', (text, expected) => {
    expect(result(text, scope)).toEqual(expected);
  });
});

describe('what belongs together', () => {
  it.each([
    ['1 + 2 * 3', '(1 + (2 * 3))'],
    ['1 - 2 - 3', '((1 - 2) - 3)'],
    ['8 / 4 / 2', '((8 / 4) / 2)'],
    ['8 / 2 * 4', '((8 / 2) * 4)'],
    ['(1 + 2) * 3', '((1 + 2) * 3)'],
    ['-a * b', '((-a) * b)'],
    ['a - -b', '(a - (-b))'],
    ['2 × -3', '(2 * (-3))'],
    ['6 ÷ 2 · 3 ⋅ 4', '(((6 / 2) * 3) * 4)'],
    ['5 − 2 – 1', '((5 - 2) - 1)'],
    ['3/4 * a', '(0.75 * a)'],
    ['a * 3/4', '(a * 0.75)'],
    ['a / 2 1/4', '(a / 2.25)'],
    ['a / ½', '(a / 0.5)'],
    ['3 / 4', '(3 / 4)'],
    ['min(a, b + 1, 2) * 3', '(min(a, (b + 1), 2) * 3)'],
    ['max (a,b)', 'max(a, b)'],
    ['min(max(1, 2), a)', 'min(max(1, 2), a)'],
    ['round up a / 3 to 1/8 in', '(up (a / 3) to 3.175)'],
    ['round down a + b to 2', '(down (a + b) to 2)'],
    ['round a to b', '(nearest a to b)'],
    ['round up a to 2 + b', '((up a to 2) + b)'],
    ['round up a to (2 + b)', '(up a to (2 + b))'],
    ['2 * round up a to 2', '(2 * (up a to 2))'],
    ['round up round down a to 2 to 3', '(up (down a to 2) to 3)'],
    ['  a\n  + b ', '(a + b)'],
  ])('%s', (text, expected) => {
    expect(shape(text)).toBe(expected);
  });
});

describe('names', () => {
  it('without a list are the words up to the next sign', () => {
    expect(formula('packet width + 2 * ease').names).toEqual(['packet width', 'ease']);
    expect(formula('fold 1 * fold  2 - top_line').names).toEqual(['fold 1', 'fold 2', 'top_line']);
    expect(formula("maker's mark + naïve Größe").names).toEqual(["maker's mark", 'naïve Größe']);
    expect(formula('distance to fold + cut up').names).toEqual(['distance to fold', 'cut up']);
    expect(formula('min width + maximum').names).toEqual(['min width', 'maximum']);
    expect(formula('round flap + roundness').names).toEqual(['round flap', 'roundness']);
    expect(formula('ease + ease').names).toEqual(['ease']);
  });

  it('without a list end at the `to` of a rounding, but not in brackets inside it', () => {
    expect(shape('round up flap width to 1 mm')).toBe('(up flap width to 1)');
    expect(shape('round up (distance to fold) to 1 mm')).toBe('(up distance to fold to 1)');
  });

  it.each([
    ['distance to fold 1 + ease', ['distance to fold 1', 'ease'], '(distance to fold 1 + ease)'],
    ['round up distance to fold to 2 mm', ['distance to fold'], '(up distance to fold to 2)'],
    ['round up strip to 2', ['up strip'], '(nearest up strip to 2)'],
    ['round up up strip to 2', ['up strip'], '(up up strip to 2)'],
    ['fold 1 + fold 12', ['fold 1', 'fold 12'], '(fold 1 + fold 12)'],
    ['ease allowance + ease', ['ease', 'ease allowance'], '(ease allowance + ease)'],
    ['in + 5 in', ['in'], '(in + 127)'],
    ['2 m * m', ['m'], '(2000 * m)'],
    ['top-stitch - 1 mm', ['top', 'stitch', 'top-stitch'], '(top-stitch - 1)'],
    ['top - stitch', ['top', 'stitch', 'top-stitch'], '(top - stitch)'],
    ['width (sewn) * 2', ['width (sewn)', 'width'], '(width (sewn) * 2)'],
    ['min + max(min, 2)', ['min'], '(min + max(min, 2))'],
    ['round * 2', ['round'], '(round * 2)'],
    ['2 ply * 3', ['2 ply'], '(2 ply * 3)'],
    ['packet \u00a0 width', ['packet width'], 'packet width'],
    ['1 + 1', ['1'], '(1 + 1)'],
    ['Größe + ズ', ['Größe', 'ズ'], '(Größe + ズ)'],
  ])('in %j, of %j', (text, given, expected) => {
    expect(shape(text, given)).toBe(expected);
  });

  it('of a list are the only ones; others are faults with the nearest right one', () => {
    expect(unreadable('2 * packet widht', known)).toEqual({
      severity: 'error',
      code: 'unknown-name',
      message: 'There is no measure called “packet widht”. Do you mean “packet width”?',
      start: 4,
      end: 16,
      fix: 'packet width',
    });
    expect(unreadable('ease + elbow', known)).toEqual({
      severity: 'error',
      code: 'unknown-name',
      message: 'There is no measure called “elbow”.',
      start: 7,
      end: 12,
    });
    expect(unreadable('1 + top-stich', ['top-stitch'])).toMatchObject({ start: 4, end: 13, fix: 'top-stitch' });
    expect(unreadable('round up widht to 1 mm', ['width'])).toMatchObject({ start: 9, end: 14, fix: 'width' });
    expect(unreadable('Ease', known)).toMatchObject({ code: 'unknown-name', fix: 'ease' });
  });
});

describe('what cannot be read', () => {
  type Row = [text: string, code: string, at: [number, number], message: string, fixed?: string];
  it.each<Row>([
    ['', 'empty-formula', [0, 0], 'Write a number, a name or a sum.'],
    ['  ', 'empty-formula', [0, 2], 'Write a number, a name or a sum.'],
    ['2 +', 'part-missing', [2, 3], 'A number or a name is missing at the end.'],
    ['2 + * 3', 'part-missing', [4, 5], 'A number or a name is missing before “*”.'],
    ['* 3', 'part-missing', [0, 1], 'A number or a name is missing before “*”.'],
    ['min()', 'part-missing', [4, 5], 'A number or a name is missing before “)”.'],
    ['min(ease, )', 'part-missing', [10, 11], 'A number or a name is missing before “)”.'],
    ['()', 'part-missing', [1, 2], 'A number or a name is missing before “)”.'],
    ['((2)', 'bracket-open', [0, 1], 'This bracket is never closed. Put “)” where it should end.'],
    ['max(2, 3', 'bracket-open', [3, 4], 'This bracket is never closed. Put “)” where it should end.'],
    ['2)', 'bracket-shut', [1, 2], 'This bracket closes nothing. Take it out, or put “(” before it.', '2'],
    ['2 ease', 'sign-missing', [2, 6], 'A sign such as + or * is missing between “2” and “ease”.', '2 * ease'],
    ['2(ease)', 'sign-missing', [1, 2], 'A sign such as + or * is missing between “2” and “(”.', '2* (ease)'],
    ['ease 2', 'sign-missing', [5, 6], 'A sign such as + or * is missing between “ease” and “2”.', 'ease * 2'],
    ['2 in ease', 'sign-missing', [5, 9], 'A sign such as + or * is missing between “in” and “ease”.', '2 in * ease'],
    [
      '(ease) ease',
      'sign-missing',
      [7, 11],
      'A sign such as + or * is missing between “ease)” and “ease”.',
      '(ease) * ease',
    ],
    [
      '(ease ease)',
      'sign-missing',
      [6, 10],
      'A sign such as + or * is missing between “ease” and “ease”.',
      '(ease * ease)',
    ],
    ['1e5', 'sign-missing', [1, 3], 'A sign such as + or * is missing between “1” and “e5”.', '1* e5'],
    ['2 x ease', 'times-sign', [2, 3], 'Write “*” or “×” for times.', '2 * ease'],
    ['ease^2', 'power', [4, 5], 'There are no powers here. Write a product, such as “width * width”.'],
    ['ease²', 'power', [4, 5], 'There are no powers here. Write a product, such as “width * width”.'],
    ['ease $ 3', 'stray-sign', [5, 6], '“$” has no meaning in a formula.'],
    ['🧵 + 1', 'stray-sign', [0, 2], '“🧵” has no meaning in a formula.'],
    ['2, 3', 'stray-sign', [1, 2], '“,” has no meaning in a formula.'],
    ['1/0', 'zero-under-line', [0, 3], '“1/0” has a zero under the line. Write a fraction such as 1/4.'],
    [
      '4 5/4 in',
      'improper-fraction',
      [0, 5],
      'The fraction in “4 5/4” is a whole or more. Do you mean “5 1/4”?',
      '5 1/4 in',
    ],
    [
      '1.234,5 * ease',
      'many-decimal-marks',
      [0, 7],
      'Write “1.234,5” without a mark between thousands: 1234.5.',
      '1234.5 * ease',
    ],
    ['4 4', 'sign-missing', [2, 3], 'A sign such as + or * is missing between “4” and “4”.', '4 * 4'],
    [
      '4-1/2 in',
      'mixed-or-minus',
      [0, 5],
      '“4-1/2” can be read two ways. Write “4 1/2” for the mixed number, or “4 - 1/2” to take away.',
      '4 1/2 in',
    ],
    [
      'ease / 1/4',
      'two-ways-fraction',
      [7, 10],
      '“ease / 1/4” can be read two ways. Put brackets: “(1/4)”.',
      'ease / (1/4)',
    ],
    ['ease/3/4', 'two-ways-fraction', [5, 8], '“ease/3/4” can be read two ways. Put brackets: “(3/4)”.', 'ease/(3/4)'],
    [
      'min(2,5)',
      'two-ways-comma',
      [4, 7],
      '“2,5” can be read two ways. Write “2, 5” for two numbers, or “2.5”.',
      'min(2, 5)',
    ],
    [
      'min(3 * 2,5 cm, 4 cm)',
      'two-ways-comma',
      [8, 11],
      '“2,5” can be read two ways. Write “2, 5” for two numbers, or “2.5”.',
      'min(3 * 2, 5 cm, 4 cm)',
    ],
    ['round ease', 'to-missing', [0, 10], 'Say what to round to, such as “round up width / 3 to 1/8 in”.'],
    ['round up to 2', 'part-missing', [9, 11], 'A number or a name is missing before “to”.'],
    ['200 m', 'huge-length', [0, 5], '“200 m” is more than 100 m, longer than a roll of cloth. Check number and unit.'],
  ])('%j', (text, code, [start, end], message, after) => {
    const fault = unreadable(text, known);
    expect(fault).toMatchObject({ code, start, end, message });
    expect(fault.fix === undefined ? undefined : fixed(text, fault)).toBe(after);
  });

  it('a comma is decimal outside of min and max, and in brackets inside them', () => {
    expect(result('2,5 * 2', scope)).toEqual(number(5));
    expect(result('min((2,5), 3)', scope)).toEqual(number(2.5));
  });

  it('stops at formulas that nobody could read, however they nest', () => {
    const deep = 10_000;
    for (const text of [
      '('.repeat(deep) + '1' + ')'.repeat(deep),
      '('.repeat(deep),
      '-'.repeat(deep) + '1',
      'min('.repeat(deep) + '1',
      'round '.repeat(deep) + '1 to 2',
      'round 1 to '.repeat(deep) + '1',
    ]) {
      expect(unreadable(text, known)).toMatchObject({
        severity: 'error',
        code: 'nested-too-deep',
        message: 'This formula is nested too deep. Give a part of it a name of its own.',
      });
    }
    for (const text of ['1' + ' + 1'.repeat(deep), `max(${'1, '.repeat(deep)}1)`, '1' + ' * 2 / 2'.repeat(deep)]) {
      expect(unreadable(text, known)).toEqual({
        severity: 'error',
        code: 'formula-too-long',
        message: 'This formula is too long. Give a part of it a name of its own.',
        start: 0,
        end: text.length,
      });
    }
    expect(result('('.repeat(50) + '1' + ')'.repeat(50), scope)).toEqual(number(1));
    expect(result('1' + ' + 1'.repeat(200), scope)).toEqual(number(201));
  });
});

describe('whatever is written', () => {
  const scraps = [
    '1',
    '2.5',
    '1/4',
    '½',
    ' ',
    'in',
    'ease',
    'packet width',
    'to',
    'round',
    'up',
    'min',
    '(',
    ')',
    ',',
    '+',
    '-',
    '*',
    '/',
    '"',
    '^',
    'x',
    '🧵',
  ];
  const text = fc.oneof(
    fc.array(fc.constantFrom(...scraps), { maxLength: 14 }).map((list) => list.join('')),
    fc.string({ unit: 'binary', maxLength: 40 }),
  );

  it('is a formula, or a fault inside the text', () => {
    fc.assert(
      fc.property(text, fc.boolean(), (text, listed) => {
        const read = parseFormula(text, listed ? { names: known } : {});
        if (read.ok) return read.value.text === text;
        const { start, end, message } = read.fault;
        return 0 <= start && start <= end && end <= text.length && message.length > 0;
      }),
      { numRuns: 5000 },
    );
  });

  it('has the place of every part: the text there, by itself, is the same part', () => {
    const without = (node: Node) =>
      JSON.stringify(node, (key, value) => (key === 'start' || key === 'end' ? undefined : value));
    const parts = (node: Node): Node[] => [
      node,
      ...('left' in node ? [node.left, node.right] : 'of' in node ? [node.of].flat() : []).flatMap(parts),
    ];
    fc.assert(
      fc.property(sums(fc.oneof(plainNumbers, lengths, named), plainNumbers, 3), (sum) => {
        const { text, tree } = formula(here(sum), names);
        for (const part of parts(tree)) {
          const alone = text.slice(part.start, part.end);
          expect(without(formula(alone, names).tree), `${alone} in ${text}`).toBe(without(part));
        }
      }),
      { numRuns: 500 },
    );
  });
});
