/** Numbers as they are said, and as machines write down what was said: whole, with a fraction, with a point. */
import { breaksBefore, type Token } from './tokens.ts';

/** A number found at a token. `sure` is 1 where there is one way to read it. */
export type Amount = {
  value: number;
  kind: 'whole' | 'fraction' | 'mixed' | 'decimal';
  /** The first token behind it. */
  next: number;
  sure: number;
  /** Other values it may have meant. */
  others: number[];
  /** The part below the stroke, where it has one. */
  under?: number;
  /** Its fraction was written with a stroke or a sign, or said with eighths or sixteenths: nothing else is counted so. */
  written?: true;
  /** It began with a, an: an inch, a half. */
  article?: true;
  /** What must be asked, where a part was lost. */
  asks?: string;
};

const small = new Map<string, number>(
  (
    'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen ' +
    'eighteen nineteen'
  )
    .split(' ')
    .map((word, i) => [word, i]),
);
small.set('nought', 0).set('naught', 0);
const tens = new Map<string, number>(
  'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ').map((word, i) => [word, 20 + 10 * i]),
);
tens.set('fourty', 40);

const parts = new Map<string, number>([
  ...['half', 'halves', 'halfs'].map((word) => [word, 2] as const),
  ...['third', 'thirds'].map((word) => [word, 3] as const),
  ...['quarter', 'quarters', 'fourth', 'fourths'].map((word) => [word, 4] as const),
  ...['fifth', 'fifths'].map((word) => [word, 5] as const),
  ...['sixth', 'sixths'].map((word) => [word, 6] as const),
  ...['eighth', 'eighths', 'eigth', 'eigths'].map((word) => [word, 8] as const),
  ...['tenth', 'tenths'].map((word) => [word, 10] as const),
  ...['sixteenth', 'sixteenths'].map((word) => [word, 16] as const),
]);

/** Below the stroke on a ruler, as machines hear it: three eights, five ate. */
const misheardParts = new Map<string, number>([
  ...['eight', 'eights', 'ate', 'ates', 'eighty'].map((word) => [word, 8] as const),
  ...['sixteen', 'sixteens'].map((word) => [word, 16] as const),
]);

/** What stands for “and” before a fraction in machines’ captions: one on one eight, two in a half. */
const joints = new Set(['and', 'plus']);
const misheardJoints = new Set(['on', 'in', 'an', 'end', 'way', 'hand', 'than']);

const isWhole = (token: Token | undefined): token is Token & { value: number } =>
  token?.kind === 'number' && Number.isInteger(token.value);

/** Words stand in one run: nothing but blanks, a hyphen or a comma parts them. */
const together = (token: Token | undefined): token is Token => token !== undefined && !breaksBefore(token);

/** A whole number in words or figures from a token on. */
export function readWhole(tokens: readonly Token[], i: number): Amount | undefined {
  const token = tokens[i];
  if (!token) return undefined;
  if (isWhole(token)) return { value: token.value, kind: 'whole', next: i + 1, sure: 1, others: [] };
  if (token.kind !== 'word') return undefined;
  let at = i;
  let sure = 1;
  const below100 = (): number | undefined => {
    const next = tokens[at];
    if (!next || next.kind !== 'word' || (at > i && breaksBefore(next))) return undefined;
    const ten = tens.get(next.word);
    if (ten !== undefined) {
      at++;
      const unit = tokens[at];
      const one = unit?.kind === 'word' && together(unit) ? small.get(unit.word) : undefined;
      if (one !== undefined && one > 0 && one < 10) {
        at++;
        return ten + one;
      }
      return ten;
    }
    const one = small.get(next.word);
    if (one !== undefined) at++;
    return one;
  };
  const wordAt = (place: number): string => (tokens[place]?.kind === 'word' ? tokens[place].word : '');
  const before1000 = (): number | undefined => {
    let hundreds = 1;
    if (wordAt(at) === 'a' && wordAt(at + 1) === 'hundred') at++;
    else {
      const first = below100();
      if (first === undefined) return undefined;
      if (wordAt(at) !== 'hundred') return hundredLeftOut(first) ?? first;
      hundreds = first;
    }
    at++;
    const mark = at;
    if (wordAt(at) === 'and') at++;
    const rest = startsPart(tokens, at) ? undefined : below100();
    if (rest === undefined) at = mark;
    return hundreds * 100 + (rest ?? 0);
  };
  // One fifty is a hundred and fifty, and four oh five is four hundred and five: so people read millimetres.
  const hundredLeftOut = (first: number): number | undefined => {
    if (first < 1 || first > 9) return undefined;
    if (tens.has(wordAt(at)) || (small.get(wordAt(at)) ?? 0) >= 10) {
      sure = 0.75;
      return first * 100 + below100()!;
    }
    const unit = wordAt(at) === 'oh' || wordAt(at) === 'o' ? small.get(wordAt(at + 1)) : undefined;
    if (unit === undefined || unit < 1 || unit > 9) return undefined;
    at += 2;
    sure = 0.8;
    return first * 100 + unit;
  };
  const first = before1000();
  if (first === undefined) return undefined;
  let value = first;
  if (wordAt(at) === 'thousand') {
    at++;
    value *= 1000;
    const mark = at;
    if (wordAt(at) === 'and') at++;
    const rest = startsPart(tokens, at) ? undefined : before1000();
    if (rest === undefined) at = mark;
    value += rest ?? 0;
  }
  return { value, kind: 'whole', next: at, sure, others: sure < 1 ? [small.get(token.word) ?? value] : [] };
}

/** Whether a fraction in words begins here, so that “a hundred and three quarters” is not 103. */
const startsPart = (tokens: readonly Token[], i: number): boolean => {
  const spoken = readPart(tokens, i);
  return spoken !== undefined && spoken.sure >= 0.9;
};

/**
 * A fraction from a token on: three eighths, a half, quarter, 5/8, ⅝, and as machines hear it, five eights and 3 8.
 * One below the stroke of which could be a number of its own is less sure, and has that number among the others.
 */
export function readPart(tokens: readonly Token[], i: number): Amount | undefined {
  const token = tokens[i];
  if (!token) return undefined;
  if (token.kind === 'fraction') return writtenPart(token, i);
  const article = token.kind === 'word' && (token.word === 'a' || token.word === 'an');
  const bare = partAt(tokens, i);
  if (bare) return spokenPart(1, bare.under, bare.next, { bare: true });
  const numerator = article ? { value: 1, next: i + 1 } : readNumerator(tokens, i);
  if (!numerator) return undefined;
  const { value: over, next } = numerator;
  const below = together(tokens[next]) ? partAt(tokens, next) : undefined;
  if (below) {
    if (over >= below.under) return undefined;
    return { ...spokenPart(over, below.under, below.next, {}), ...(article && { article }) };
  }
  const inner = tokens[next];
  if (article && inner?.kind === 'fraction') {
    const part = writtenPart(inner, next);
    return part && { ...part, article };
  }
  if (!together(inner)) return undefined;
  const heard = inner.kind === 'word' ? misheardParts.get(inner.word) : undefined;
  if (heard !== undefined && over < heard && over % 2 === 1) {
    const plural = /s$/u.test(inner.word);
    const alone = small.get(inner.word) ?? heard;
    return {
      ...{ value: over / heard, kind: 'fraction', next: next + 1, under: heard },
      ...{ sure: plural ? 0.9 : 0.6, others: plural ? [] : [alone], written: true, ...(article && { article }) },
    };
  }
  // 3 8 and three 8: the stroke was lost. What is on no ruler is no fraction; 1 2 1/2 is one of two and a half; a 4 inch
  // square has a whole number, 1 - 2 mm has two.
  const after = together(tokens[next + 1]) ? tokens[next + 1] : undefined;
  const ofAn = after?.word === 'of';
  const ranged =
    inner.gap.includes(' -') || (/[-–—]/u.test(inner.gap) && !ofAn && !/^in(?:ch)?$/u.test(after?.word ?? ''));
  const own = after?.kind === 'fraction' || (article && !ofAn) || ranged;
  if (
    !own &&
    isWhole(inner) &&
    ruler.has(inner.value) &&
    over < inner.value &&
    over % 2 === 1 &&
    !/[,\n]/u.test(inner.gap)
  ) {
    return {
      ...{ value: over / inner.value, kind: 'fraction', next: next + 1, under: inner.value },
      ...{ sure: 0.55, others: [inner.value], written: true, ...(article && { article }) },
    };
  }
  return undefined;
}

const ruler = new Set([2, 4, 8, 16, 32]);

/** Above the stroke: a small whole number. */
function readNumerator(tokens: readonly Token[], i: number): { value: number; next: number } | undefined {
  const token = tokens[i]!;
  const value = token.kind === 'word' ? small.get(token.word) : isWhole(token) ? token.value : undefined;
  return value !== undefined && value > 0 && value < 32 ? { value, next: i + 1 } : undefined;
}

/** A word or an ordinal that stands below the stroke. */
function partAt(tokens: readonly Token[], i: number): { under: number; next: number } | undefined {
  const token = tokens[i];
  if (!token) return undefined;
  if (token.kind === 'ordinal') {
    return ruler.has(token.value!) || token.value === 3 ? { under: token.value!, next: i + 1 } : undefined;
  }
  if (token.kind !== 'word') return undefined;
  const under = parts.get(token.word);
  if (under !== undefined) return { under, next: i + 1 };
  const second = tokens[i + 1];
  if (token.word === 'thirty' && (second?.word === 'second' || second?.word === 'seconds')) {
    return { under: 32, next: i + 2 };
  }
  return undefined;
}

const spokenPart = (over: number, under: number, next: number, { bare = false }): Amount => ({
  ...{ value: over / under, kind: 'fraction', next, sure: 1, others: [], under },
  ...(!bare && under >= 8 && { written: true }),
});

/** Needles are written so, too: 90/14. And where a blank was lost, 47/8 stands for 4 7/8. */
function writtenPart({ over, under, value }: Token, i: number): Amount | undefined {
  if (over === undefined || under === undefined || value === undefined || !Number.isFinite(value) || over === 0)
    return undefined;
  if (![2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64].includes(under)) return undefined;
  const base = { kind: 'fraction', next: i + 1, under, written: true } as const;
  if (over < under) return { ...base, value, sure: 1, others: [] };
  const digits = String(over);
  for (let cut = 1; cut < digits.length; cut++) {
    const [whole, rest] = [Number(digits.slice(0, cut)), Number(digits.slice(cut))];
    if (digits[cut] !== '0' && rest > 0 && rest < under && rest % 2 === 1 && ruler.has(under)) {
      const asks = `Is ${over}/${under} ${whole} ${rest}/${under}? A blank may be lost.`;
      return { ...base, kind: 'mixed', value: whole + rest / under, sure: 0.5, others: [value], asks };
    }
  }
  return { ...base, kind: 'mixed', value, sure: 0.5, others: [] };
}

/** Fractions whose stroke was lost: 2 and 12 in, 5 14 in. */
const strokeless = new Map<number, number>(
  [2, 4, 8, 16].flatMap((under) =>
    Array.from({ length: under / 2 }, (_, i): [number, number] => [
      Number(`${2 * i + 1}${under}`),
      (2 * i + 1) / under,
    ]),
  ),
);

/** What a whole number is as a fraction that lost its stroke; undefined where it is none. @example unstroked(38) // => 3/8 */
export const unstroked = (value: number): number | undefined => strokeless.get(value);

/** A number of any kind from a token on, as much of it as belongs together. */
export function readAmount(tokens: readonly Token[], i: number): Amount | undefined {
  const token = tokens[i];
  if (!token) return undefined;
  if (token.kind === 'number' && !Number.isInteger(token.value)) {
    return { value: token.value!, kind: 'decimal', next: i + 1, sure: 1, others: [] };
  }
  if (token.word === 'point') return readDecimals(tokens, i, 0);
  const part = readPart(tokens, i);
  const whole = readWhole(tokens, i);
  // Five sixteen of an inch is no 516.
  const isOf = part && tokens[part.next]?.word === 'of' && part.next === whole?.next;
  if (part && (!whole || part.next > whole.next || part.kind === 'mixed' || isOf)) return repeated(tokens, part, whole);
  if (!whole) return part;
  const next = tokens[whole.next];
  if (!together(next)) return whole;
  if (next.word === 'point') return readDecimals(tokens, whole.next, whole.value) ?? whole;
  return withPart(tokens, whole) ?? whole;
}

/** A fraction whose number above the stroke may have been the whole of a lost one: 1 3 8 is one and three eighths. */
function repeated(tokens: readonly Token[], part: Amount, whole: Amount | undefined): Amount {
  if (!whole || part.sure >= 0.9 || !together(tokens[whole.next])) return part;
  return withPart(tokens, whole) ?? part;
}

function withPart(tokens: readonly Token[], whole: Amount): Amount | undefined {
  const next = tokens[whole.next]!;
  const joined = next.kind === 'word' && joints.has(next.word);
  const misheard = next.kind === 'word' && misheardJoints.has(next.word);
  // Five and and a half: said twice.
  const twice = joined && tokens[whole.next + 1]?.word === next.word;
  const from = whole.next + (joined || misheard ? 1 : 0) + (twice ? 1 : 0);
  if (!together(tokens[from])) return undefined;
  let part = readPart(tokens, from);
  // One way eight: the article went into the joint.
  if (!part && next.word === 'way') part = heardAlone(tokens, from);
  if (part && part.value < 1 && part.kind === 'fraction')
    return mixed(twice ? { ...whole, sure: 0.8 } : whole, part, { joined, misheard, next, at: tokens[from] });
  const lost = tokens[from];
  if (isWhole(lost) && !misheard) {
    const value = unstroked(lost.value);
    const bothInFigures = tokens[whole.next - 1]?.kind === 'number';
    if (value !== undefined && (joined || bothInFigures) && whole.value < 100) {
      return {
        ...{ value: whole.value + value, kind: 'mixed', next: from + 1, others: [lost.value], under: 8 },
        ...{ sure: joined ? 0.7 : 0.5, asks: `Is ${whole.value} ${lost.value} a number with a fraction?` },
      };
    }
  }
  return undefined;
}

function heardAlone(tokens: readonly Token[], i: number): Amount | undefined {
  const under = tokens[i]?.kind === 'word' ? misheardParts.get(tokens[i].word) : undefined;
  if (under === undefined) return undefined;
  return { value: 1 / under, kind: 'fraction', next: i + 1, sure: 0.5, others: [under], under, written: true };
}

type Joint = { joined: boolean; misheard: boolean; next: Token; at: Token };

function mixed(whole: Amount, part: Amount, { joined, misheard, next, at }: Joint): Amount | undefined {
  const value = whole.value + part.value;
  const base = {
    value,
    kind: 'mixed' as const,
    next: part.next,
    others: [...part.others],
    ...(part.under && { under: part.under }),
  };
  const sure = Math.min(whole.sure, part.sure);
  if (joined) return { ...base, sure: Math.max(sure, part.sure > 0.5 && part.sure < 0.9 ? 0.7 : sure) };
  if (misheard) {
    // “Cut 2 in half” and “three on a quarter” say no mixed number, unless a numerator stands there.
    if (next.word === 'in' && !part.article && at.kind !== 'fraction') return undefined;
    return { ...base, sure: Math.min(sure, 0.6), others: [...base.others, part.value] };
  }
  if (at.kind === 'fraction') return { ...base, sure };
  if (/-/u.test(next.gap)) return { ...base, sure: Math.min(sure, 0.9) };
  // Two three eighths: with a lost “and”, or two of three eighths each.
  if (part.article || (at.kind === 'word' && parts.has(at.word))) return undefined;
  return { ...base, sure: Math.min(sure, 0.55), others: [...base.others, part.value] };
}

/** What follows the word point: figures said one by one. */
function readDecimals(tokens: readonly Token[], point: number, whole: number): Amount | undefined {
  let digits = '';
  let at = point + 1;
  for (; at < tokens.length; at++) {
    const token = tokens[at]!;
    if (breaksBefore(token)) break;
    if (isWhole(token) && digits === '') digits += String(token.value);
    else if (token.kind === 'word' && (small.get(token.word) ?? 10) < 10) digits += String(small.get(token.word));
    else if (token.kind === 'word' && token.word === 'oh') digits += '0';
    else if (token.kind === 'word' && digits === '' && tens.has(token.word)) {
      const read = readWhole(tokens, at)!;
      digits += String(read.value);
      at = read.next;
      break;
    } else break;
  }
  if (digits === '') return undefined;
  return { value: Number(`${whole}.${digits}`), kind: 'decimal', next: at, sure: 1, others: [] };
}
