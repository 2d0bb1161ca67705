/** Random sums, written twice: as people write them here, and as a general mathematics library reads them. */
import fc from 'fast-check';

/** Names that hold blanks, digits, and words that mean something in a formula. */
export const names = ['packet width', 'ease', 'fold 1', 'distance to fold 1', 'cut up', 'in', 'min ease'] as const;

export type Sum =
  | { kind: 'leaf'; here: string; there: string; fraction?: boolean }
  | { kind: '+' | '-' | '*' | '/'; left: Sum; right: Sum; sign: string; bracketed: boolean }
  | { kind: 'minus'; of: Sum; sign: string }
  | { kind: 'min' | 'max'; of: Sum[] }
  | { kind: 'round'; way: 'up' | 'down'; of: Sum; to: Sum };

const leaf = (here: string, there: string, fraction = false): Sum => ({ kind: 'leaf', here, there, fraction });

const glyphs = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };

const whole = fc.integer({ min: 1, max: 60 });
const decimal = fc.integer({ min: 1, max: 9999 }).map((hundredths) => (hundredths / 100).toFixed(2));
const part = fc.constantFrom('1/2', '1/4', '3/4', '1/8', '5/8', '3/16', '15/16');
const glyph = fc.constantFrom(...(Object.keys(glyphs) as (keyof typeof glyphs)[]));

/** A number as `here` writes it, and its value as `there` reads it; `unit` is put after both. */
const numbers = (unit: { here: string; there: string }): fc.Arbitrary<Sum> => {
  const written = (here: string, there: string, fraction = false) =>
    leaf(here + unit.here, unit.there ? `((${there}) * ${unit.there})` : `(${there})`, fraction);
  return fc.oneof(
    whole.map((value) => written(`${value}`, `${value}`)),
    decimal.map((value) => written(value, value)),
    part.map((value) => written(value, value, true)),
    fc.tuple(whole, part).map(([value, of]) => written(`${value} ${of}`, `${value} + ${of}`)),
    glyph.map((value) => written(value, glyphs[value])),
    fc.tuple(whole, glyph).map(([value, of]) => written(`${value}${of}`, `${value} + ${glyphs[of]}`)),
  );
};

const digits = numbers({ here: '', there: '' });

/** Numbers in digits, pi and roots. */
export const plainNumbers = fc.oneof(
  { weight: 8, arbitrary: digits },
  { weight: 1, arbitrary: fc.constantFrom('pi', 'π').map((here) => leaf(here, 'pi')) },
  { weight: 1, arbitrary: whole.map((value) => leaf(`root of ${value}`, `sqrt(${value})`)) },
);

export const lengths = fc
  .constantFrom(
    { here: ' in', there: 'inch' },
    { here: '"', there: 'inch' },
    { here: ' ft', there: 'ft' },
    { here: ' mm', there: 'mm' },
    { here: 'cm', there: 'cm' },
  )
  .chain(numbers);

/** The names, which are `n0`, `n1`, … over there. */
export const named = fc.nat(names.length - 1).map((i) => leaf(names[i]!, `n${i}`));

/** Sums of up to `depth` levels over the given ends, rounded here and there to the given steps. */
export function sums(ends: fc.Arbitrary<Sum>, steps: fc.Arbitrary<Sum>, depth = 4): fc.Arbitrary<Sum> {
  const join = (kind: '+' | '-' | '*' | '/', signs: string[], part: fc.Arbitrary<Sum>) =>
    fc.record({
      kind: fc.constant(kind),
      left: part,
      right: part,
      sign: fc.constantFrom(...signs),
      bracketed: fc.boolean(),
    });
  return fc.letrec<{ sum: Sum }>((tie) => {
    const part = tie('sum');
    return {
      sum: fc.oneof(
        { maxDepth: depth, depthSize: 'large', withCrossShrink: true },
        ends,
        join('+', [' + ', '+'], part),
        join('-', [' - ', ' − '], part),
        join('*', [' * ', '*', ' × ', ' · '], part),
        join('/', [' / ', ' ÷ '], part),
        fc.record({ kind: fc.constant('minus' as const), of: part, sign: fc.constantFrom('-', '−', '- ') }),
        fc.record({
          kind: fc.constantFrom('min' as const, 'max' as const),
          of: fc.array(part, { minLength: 1, maxLength: 3 }),
        }),
        fc.record({ kind: fc.constant('round' as const), way: fc.constantFrom('up', 'down'), of: part, to: steps }),
      ),
    };
  }).sum;
}

/** The sums inside a sum. */
export function parts(sum: Sum): Sum[] {
  if (sum.kind === 'leaf') return [];
  if ('left' in sum) return [sum.left, sum.right];
  if (sum.kind === 'round') return [sum.of, sum.to];
  return sum.kind === 'minus' ? [sum.of] : sum.of;
}

const ranks = { '+': 1, '-': 1, '*': 2, '/': 2, minus: 3, round: 3, leaf: 4, min: 4, max: 4 };

/** As people write it here: brackets only where they are needed, and sometimes one more. */
export function here(sum: Sum): string {
  switch (sum.kind) {
    case 'leaf':
      return sum.here;
    case 'minus':
      return sum.sign + within(sum.of, 3);
    case 'min':
    case 'max':
      return `${sum.kind}(${sum.of.map(here).join(', ')})`;
    case 'round':
      return `round ${sum.way} ${here(sum.of)} to ${within(sum.to, 4)}`;
    default: {
      const rank = ranks[sum.kind];
      // `a / 1/4` is refused, because nobody can tell what it divides by.
      const guard = sum.kind === '/' && sum.right.kind === 'leaf' && sum.right.fraction;
      const right = guard ? `(${here(sum.right)})` : within(sum.right, rank + 1);
      const text = within(sum.left, rank) + sum.sign + right;
      return sum.bracketed ? `(${text})` : text;
    }
  }
}

const within = (sum: Sum, rank: number) =>
  ranks[sum.kind] < rank && !('bracketed' in sum && sum.bracketed) ? `(${here(sum)})` : here(sum);

/** As the library reads it: every part in brackets, so that it has no say in what belongs together. */
export function there(sum: Sum): string {
  switch (sum.kind) {
    case 'leaf':
      return sum.there;
    case 'minus':
      return `(-${there(sum.of)})`;
    case 'min':
    case 'max':
      return `${sum.kind}(${sum.of.map(there).join(', ')})`;
    case 'round': {
      // As the kit has it, what is less than a billionth past a step is on it.
      const [round, hair] = sum.way === 'up' ? ['ceil', '-'] : ['floor', '+'];
      return `(${round}(${there(sum.of)} / ${there(sum.to)} ${hair} 1e-9 / ${there(sum.to)}) * ${there(sum.to)})`;
    }
    default:
      return `(${there(sum.left)} ${sum.kind} ${there(sum.right)})`;
  }
}
