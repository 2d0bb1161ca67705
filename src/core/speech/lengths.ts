/** Lengths in what people say at the table, and in what machines write down of it. */
import { quote, type Edition } from '../measure/index.ts';
import { breaksBefore, tokensOf, type Token } from './tokens.ts';
import { editionOf, unitAt, unitNamed, unitSize, type SpokenUnit } from './units.ts';
import { readAmount, readPart, readWhole, unstroked, type Amount } from './numbers.ts';

/** How sure a reading must be to be shown to anybody without asking. */
export const CERTAIN = 0.9;

/** Why a length may have another unit. */
export const NO_UNIT = 'no unit was said';

/** What else a spoken length may have meant, in mm, and why. */
export type OtherReading = { values: number[]; edition: Edition; why: string };

/**
 * A length found in spoken words.
 *
 * `values`, in mm: one; the sides of a `pair` in the order they are said, at times three of them; the least and the
 * greatest of a `range`, however it was said; of `about` what is about right. `edition` is that of the unit, or where
 * none was said the one that is assumed. `sure`, from 0 to 1: from `CERTAIN` on nothing needs to be asked.
 */
export type SpokenLength = {
  /** UTF-16 places in the text, `end` the first behind it. */
  start: number;
  end: number;
  text: string;
  kind: 'one' | 'pair' | 'range' | 'about';
  values: number[];
  edition: Edition;
  /** The unit that was said, or the one that is assumed. */
  unit: SpokenUnit;
  unitSaid: boolean;
  /** Set on a pair or a range of which a part was said to be about right. */
  about?: true;
  sure: number;
  others: OtherReading[];
  /** What the author must be asked, where a part was lost or misheard. */
  asks?: string;
  /** The speaker took it back at once: two and a half, no sorry, three and a half. */
  takenBack?: true;
};

export type SpokenOptions = {
  /** The edition of numbers that are said without a unit; inch if left out. */
  edition?: Edition;
};

/** A length as it is put together from tokens. */
type Part = {
  from: number;
  next: number;
  amounts: { value: number; unit: SpokenUnit }[];
  amount: Amount;
  unit?: SpokenUnit;
  sure: number;
  others: { value: number; unit?: SpokenUnit; why: string }[];
  about: boolean;
  square: boolean;
  dimension: boolean;
  asks?: string;
};

const words = (text: string): ReadonlySet<string> => new Set(text.split(' '));

/** Numbers after these count or name something: step four, size fourteen, needle ninety. */
const labels = words(
  'step steps panel panels size sizes needle needles number numbers piece pieces pocket pockets row rows section sections ' +
    'part parts lesson chapter figure page block version option episode video day week year grade level round fold folds ' +
    'side line class unit pattern sample card tension speed setting temperature heat gear dial length stitch zone exit ' +
    'model point phase stage session group team table machine iron degrees count weight channel take',
);
/** Words that may stand between a label and its number: a needle size of ninety, stitch length is three. */
const labelJoints = words('of is to at on a the number size about around setting length');
/** What a machine or a needle is set to; no fraction behind these is a length. */
const settings = words('stitch zigzag tension speed setting heat gear dial size needle');
const stitched = /^(?:stitch|zigzag)$/u;
/** Labels that have a length after all once a unit or a fraction follows: the side is five and a half. */
const measured = words('take side line length card block piece pocket panel row point fold folds count round');

/** What is counted, timed or weighed, and no length. */
const counted =
  /^(?:times?|minutes?|mins?|hours?|seconds?|secs?|days?|weeks?|months?|years?|oclock|percent|degrees?|dollars?|pounds?|euros?|bucks|cents|grams?|ounces?|oz|lbs?|layers?|stitches|turns?|people|persons?|students?|stars?|ways?|pm|am|rotations?|cups?|litres?|liters?|thousand|million|gsm|wt|needles?|(?:tea|table)spoons?|steps?|past|the|of|to)$/u;
/** What is halved and quartered on the table without being a length: a quarter turn, half square triangles, half way. */
const halved =
  /^(?:turns?|circles?|way|ways|square|squares|past|hour|hours|minute|minutes|second|time|term|dozen|full|done|open|closed|moon|log|hexagons?|triangles?|as|again|hitch|asleep|finished|inside|sewn|dollar|note|sleeve|sleeves|brick|drop|price|pint|cup|through|view|down|up|size|it|them|my|your|that|this|these|those|to|mast|hearted|bobbin|speed|day|of|the|a|an|and|each|fold|folded)$/u;
const seams = words('seam seams allowance allowances hem hems topstitch topstitching foot');
/** Words that only measures have behind them. */
const dimensions = words('wide white width long tall high deep thick across apart square squares seam seams allowance');
const pairDimensions = words('wide white width long length tall high deep across');
const abouts = words('about approximately approx roughly around nearly almost maybe circa say scant generous fat');
/** What is a little more or less. */
const littleMore = /^(?:just|slightly|bit|more|less|hair|smidge|tad|touch|little|thread|barely)$/u;
/** What a thing costs. */
const money = /^(?:dollars?|pounds?|euros?|bucks|cents|pence|quid)$/u;
/** What may stand between “a” and a unit without making it another. */
const oneUnit = /^(?:full|whole|good|scant|generous)$/u;

/** Words between a number and the one that follows it which put the first right. */
const correction =
  /^(?:(?:no|sorry|oops|actually|wait|rather|correction|i|mean|beg|your|pardon|thats|it|is|make|that|not|its|or|well|uh|um|er) ?)+$/u;
const correcting = /\b(?:no|sorry|oops|mean|correction|rather|pardon|wait)\b/u;

/**
 * Finds every length in spoken words, in order: “five and a half inch by three”, “3 8 of an inch”, “half a yard”,
 * “45 or 44 inch”. Numbers that count, time or name something are none: “two rectangles”, “step four”, “needle ninety”.
 *
 * What a machine may have misheard is read as the likeliest, with the other readings beside it and less than `CERTAIN`;
 * where a part is lost, `asks` says what must be asked. Common practice, no source; the forms that tests hold it to are
 * in part from published captions.
 *
 * @example spokenLengths('an eighth of an inch')[0]?.values // => [3.175]
 */
export function spokenLengths(text: string, options: SpokenOptions = {}): SpokenLength[] {
  const { edition = 'inch' } = options;
  const tokens = tokensOf(text);
  const found: SpokenLength[] = [];
  let i = 0;
  while (i < tokens.length) {
    const length =
      fatQuarter(tokens, i, edition) ?? readSpoken(tokens, i, edition) ?? saidAgain(tokens, i, found, edition);
    if (!length) {
      // A number that is none is left behind whole, or its tail would be taken for another.
      i = Math.max(i + 1, skipped(tokens, i));
      continue;
    }
    const { next, ...rest } = length;
    const start = tokens[length.from]!.at;
    const end = tokens[next - 1]!.end;
    const { from, ...said } = rest;
    found.push({ start, end, text: text.slice(start, end), ...said });
    i = Math.max(next, from + 1);
  }
  takeBack(text, found);
  if (edition === 'metric') sameUnits(found);
  return found;
}

/**
 * The edition a speaker measures in, by the units that are said: thrice as many of one as of the other. Cloth is bought by
 * yards and metres whatever the edition; those tell nothing.
 *
 * @param otherwise what is taken where the units do not tell
 */
export function editionSpoken(text: string, otherwise: Edition): Edition {
  const said = { inch: 0, metric: 0 };
  for (const [i, token] of tokensOf(text).entries()) {
    const unit = token.kind === 'word' && token.word !== 'in' ? unitNamed(token.word) : undefined;
    if (i > 0 && unit && unit !== 'yd' && unit !== 'm' && unit !== 'ft') said[editionOf(unit)]++;
  }
  if (said.metric >= 3 * Math.max(1, said.inch)) return 'metric';
  return said.inch >= 3 * Math.max(1, said.metric) ? 'inch' : otherwise;
}

/** As many words may lie between a length and the same number without its unit. */
const SAID_AGAIN = 45;

/** As many words may lie between “the one is ten millimetres” and “the other is six”. */
const SAID_OF_ANOTHER = 12;

/** What is done with a length. */
const worked = /^(?:press|fold|sew|stitch|topstitch|turn|trim)$/u;

/** Behind a number that stands for itself: no thing that is counted comes with these. */
const alone =
  /^(?:no|and|so|then|or|from|but|okay|right|again|now|each|every|is|it|its|itll|i|im|ill|ive|youll|youre|you|we|were|they|theyre|he|she|that|thats|this|the|somebody|someone|nobody|everybody|all|will|would|should|because|cause|if|when|which|on|at|as|up|down|under|over|too|not|just|for|with|under)$/u;

/**
 * A whole number alone that was said with its unit a moment ago: it should be seven inches square, seven each way. And a
 * whole number behind “by” where cloth is turned: press the side under by twelve.
 */
function saidAgain(
  tokens: readonly Token[],
  i: number,
  found: readonly SpokenLength[],
  assumed: Edition,
): Read | undefined {
  const amount = readAmount(tokens, i);
  if (amount?.kind !== 'whole' || amount.value < 2 || amount.others.length > 0) return undefined;
  const topstitched = tokens[i - 1]?.word === 'stitch' && tokens[i - 2]?.word === 'top';
  // “As wide as the panel nineteen”: nobody has so many panels, where nineteen inches were said.
  const named = amount.value > 12 && measured.has(tokens[i - 1]?.word ?? '');
  if (amount.article || (isLabelled(tokens, i) && !topstitched && !named)) return undefined;
  const joint = tokens[amount.next];
  const more =
    joint && /^(?:to|or)$/u.test(joint.word) && !breaksBefore(joint) ? readAmount(tokens, amount.next + 1) : undefined;
  const greatest = more?.kind === 'whole' && more.value > amount.value && isAlone(tokens, more.next) ? more : undefined;
  const next = greatest?.next ?? amount.next;
  const after = tokens[next];
  const isWork = after && worked.test(after.word) && !/^studs?$/u.test(tokens[next + 1]?.word ?? '');
  if (
    after &&
    !breaksBefore(after) &&
    !isWork &&
    (!alone.test(after.word) || (counted.test(after.word) && after.word !== 'the'))
  )
    return undefined;
  const before = tokens[i - 1]?.word ?? '';
  // A waist of thirty inches and hips of forty.
  const last = found.at(-1);
  const place = last ? tokens.findLastIndex(({ at }, k) => k < i && at <= last.start) : -1;
  const parallel = before === 'of' && last?.unitSaid === true && i - place < 8 && tokens[place - 1]?.word === 'of';
  // Somebody at seven, and the two of them.
  if (
    !parallel &&
    /^(?:number|until|till|after|chapter|these|those|all|other|around|you|of|to|count|counting)$/u.test(before)
  )
    return undefined;
  const back = (words: number): number => tokens[Math.max(0, i - words)]!.at;
  // Where something is sewn or folded the number may have been said long before.
  const since = worked.test(before) || before === 'also' || named ? 0 : back(SAID_AGAIN);
  const nearTo = (length: SpokenLength, apart: number): boolean =>
    length.values.some((value) => Math.abs(value / unitSize[length.unit] - amount.value) <= apart);
  const told = /^(?:is|its|be)$/u.test(before);
  const said = found.findLast(
    (length) =>
      (parallel && length === last) ||
      (length.unitSaid && length.end > since && nearTo(length, 1e-6)) ||
      // Seams are ten millimetres, that of the zip is six. It should be 250 wide, if it is 248 never mind.
      (told && length.unitSaid && length.end > back(SAID_OF_ANOTHER) && length.unit !== 'yd') ||
      (told && length.end > back(SAID_AGAIN) && amount.value > 12 && nearTo(length, amount.value / 10)),
  );
  const turned =
    before === 'by' &&
    tokens.slice(Math.max(0, i - 7), i).some(({ word }) => /^(?:fold|press|turn|under|over|trim|cut|in)$/u.test(word));
  if (!said && !turned) return undefined;
  const parts = [amount, ...(greatest ? [greatest] : [])].map((one): Part => ({
    ...{ from: i, next, amounts: [{ value: one.value, unit: 'in' }], amount: one, sure: 0.5, others: [] },
    ...{ about: false, square: false, dimension: false },
  }));
  const read = settle(tokens, { parts, kind: greatest ? 'range' : 'one', next }, undefined, assumed);
  return said ? inUnit(read, said.unit, 0.5) : read;
}

/** A length whose unit was not said, in another unit; what it was read as before is another reading. */
export function inUnit<T extends Pick<SpokenLength, 'unit' | 'values' | 'edition' | 'others' | 'sure'>>(
  length: T,
  unit: SpokenUnit,
  sure: number,
): T {
  if (unit === length.unit) return { ...length, sure: Math.max(sure, length.sure) };
  const factor = unitSize[unit] / unitSize[length.unit];
  const values = length.values.map((value) => exact(value * factor));
  const rest = length.others.filter((other) => other.values.some((value, k) => Math.abs(value - values[k]!) > 1e-3));
  const before = { values: length.values, edition: length.edition, why: NO_UNIT };
  return { ...length, unit, edition: editionOf(unit), values, sure, others: [before, ...rest] };
}

/** A metric number without a unit has that of the same number where one was said: twelve millimetres, and later twelve. */
function sameUnits(found: SpokenLength[]): void {
  const units = new Map<number, SpokenUnit>();
  const said = { mm: 0, cm: 0 };
  for (const { unitSaid, unit, values } of found) {
    if (!unitSaid) continue;
    for (const value of values) units.set(exact(value / unitSize[unit]), unit);
    if (unit === 'mm' || unit === 'cm') said[unit]++;
  }
  // Who says millimetres all the time means them.
  const usual = said.mm >= 3 * Math.max(1, said.cm) ? 'mm' : undefined;
  for (const [k, length] of found.entries()) {
    if (length.unitSaid || length.edition !== 'metric') continue;
    const own = length.values.map((value) => units.get(exact(value / unitSize[length.unit])));
    const unit = own[0];
    if (unit && own.every((one) => one === unit)) found[k] = inUnit(length, unit, 0.7);
    else if (usual && length.values.every((value) => value / unitSize[length.unit] >= 2))
      found[k] = inUnit(length, usual, 0.6);
  }
}

type Read = Omit<SpokenLength, 'start' | 'end' | 'text'> & { from: number; next: number };

/** A cut of a quarter yard, half a width long, and the same of an eighth: sold by name. Common practice, no source. */
function fatQuarter(tokens: readonly Token[], i: number, edition: Edition): Read | undefined {
  const start = /^an?$/u.test(tokens[i]!.word) ? i + 1 : i;
  const [fat, part] = [tokens[start], tokens[start + 1]];
  if (fat?.word !== 'fat' || !part || breaksBefore(part)) return undefined;
  const quarter = /^(?:quarters?|1\/4s?)$/u.test(part.word) || part.value === 1 / 4;
  const eighth = /^(?:eighths?|eights?|e|ate)$/u.test(part.word) || part.value === 1 / 8;
  if (!quarter && !eighth) return undefined;
  // A fat quarter inch is a little more than a quarter of one.
  const unit = unitAt(tokens, start + 2, true) ?? ofAnInch(tokens, start + 2);
  if (unit && unit.unit !== 'yd') return undefined;
  const inch = edition === 'inch';
  const values = inch ? [quarter ? 18 : 9, 22].map((value) => value * unitSize.in) : [quarter ? 500 : 250, 550];
  const heard = eighth && !/^eighths?$/u.test(part.word) && part.kind === 'word';
  return {
    ...{ from: i, next: start + 2, kind: 'pair', values, edition, unit: inch ? 'in' : 'mm', unitSaid: false },
    ...{ about: true, sure: heard ? 0.5 : 0.9, others: [], ...(heard && { asks: 'Is a fat eighth meant?' }) },
  };
}

/** Behind a number that is no length. */
function skipped(tokens: readonly Token[], i: number): number {
  const amount = readAmount(tokens, i);
  if (!amount || enumerates(tokens, i)) return i + 1;
  // After a label only its own number is no length: step two, half an inch.
  return isLabelled(tokens, i) && amount.kind !== 'whole' ? i + 1 : Math.max(i + 1, Math.min(amount.next, i + 3));
}

function readSpoken(tokens: readonly Token[], i: number, edition: Edition): Read | undefined {
  const first = readPartOf(tokens, i);
  if (!first) return undefined;
  const more = pairOf(tokens, first) ?? rangeOf(tokens, first);
  const read = more ?? { parts: [first], kind: 'one' as const, next: first.next };
  const [parts, kind] = [read.parts, read.kind];
  const named = parts.find(({ unit }) => unit) ?? undefined;
  if (!named && !standsWithoutUnit(tokens, read.parts, kind, edition)) return undefined;
  return settle(tokens, read, named?.unit, edition);
}

type Several = { parts: Part[]; kind: 'one' | 'pair' | 'range'; next: number };

/** One number with its unit, and what belongs to it: a yard and a foot, an inch and a quarter. */
function readPartOf(tokens: readonly Token[], i: number): Part | undefined {
  const token = tokens[i]!;
  if (enumerates(tokens, i)) return undefined;
  const lost = lostFraction(tokens, i) ?? someInches(tokens, i) ?? perhapsHalf(tokens, i) ?? misheardNumber(tokens, i);
  if (lost) return lost;
  const article = token.kind === 'word' && /^(?:an?|another)$/u.test(token.word);
  const bare = article || token.kind !== 'word' ? undefined : bareUnit(tokens, i);
  if (bare) return bare;
  let amount = readAmount(tokens, i);
  if (!amount && article) {
    const next = oneUnit.test(tokens[i + 1]?.word ?? '') ? i + 2 : i + 1;
    const unit = unitAt(tokens, next, false);
    if (!unit || unit.plural || partOfName(tokens, unit.next)) return undefined;
    if (isPrice(tokens, i) || isShare(tokens, i)) return undefined;
    // A foot is that of a machine or a maker, unless it is long.
    const dimension = pairDimensions.has(tokens[unit.next]?.word ?? '');
    if (unit.unit === 'ft' && !dimension) return undefined;
    amount = { value: 1, kind: 'whole', next, sure: unit.unit === 'yd' ? unit.sure : 1, others: [], article: true };
  }
  if (!amount) return undefined;
  if (repeatsItself(tokens, amount)) return undefined;
  const setting = tokens.slice(Math.max(0, i - 4), i).some(({ word }) => settings.has(word));
  if (!amount.article && (amount.kind !== 'fraction' || setting) && isLabelled(tokens, i)) {
    // Step two and a half inch: the number belongs to the step. Stitch half an inch from the edge: a length.
    const unit = unitAt(tokens, amount.next, false) ?? (amount.value < 1 ? ofAnInch(tokens, amount.next) : undefined);
    const before = tokens[i - 1]!.word;
    const stitch = tokens.slice(Math.max(0, i - 4), i).some(({ word }) => stitched.test(word));
    const pair = startsPair(tokens, amount.next);
    const isSize = amount.kind === 'mixed' || pair;
    // The finished size is nine by six inches, finished size nine by six.
    const told =
      (before === 'is' && (unit ?? pair)) || (before === 'size' && pair) || (amount.kind === 'fraction' && unit);
    if (stitch ? !unit : !(told || (measured.has(before) && (unit ?? isSize)))) return undefined;
  }
  return withUnit(tokens, i, amount);
}

/** “The bottom one an eighth of an inch from the edge”. */
const isOfSeveral =
  /^(?:top|bottom|left|right|other|first|second|third|last|next|long|short|upper|lower|inner|outer|this|that)$/u;

/** Behind “one a quarter inch from the edge and” another one is counted, and “one three eights” is no mixed number. */
function enumerates(tokens: readonly Token[], i: number): boolean {
  if (
    tokens[i]!.word === 'one' &&
    isOfSeveral.test(tokens[i - 1]?.word ?? '') &&
    /^an?$/u.test(tokens[i + 1]?.word ?? '')
  )
    return true;
  if (tokens[i]!.word !== 'one' || tokens[i - 1]?.word !== 'and' || !readPart(tokens, i + 1)) return false;
  return tokens
    .slice(Math.max(0, i - 20), i)
    .some(({ word }, k, before) => word === 'one' && readPart(tokens, i - before.length + k + 1) !== undefined);
}

/** “Twelve dollars a yard” tells of no yard. */
function isPrice(tokens: readonly Token[], i: number): boolean {
  const before = tokens[i - 1];
  return before !== undefined && (money.test(before.word) || (before.kind === 'number' && /[$£€]/u.test(before.gap)));
}

/** “… of an inch” behind a number that is no part of one: better nothing than a whole inch. */
function isShare(tokens: readonly Token[], i: number): boolean {
  if (i > 0 && readPart(tokens, i - 1)?.next === i) return true;
  return i > 1 && tokens[i - 1]!.word === 'of' && readAmount(tokens, i - 2)?.next === i - 1;
}

/** “Panel ten by seven”: no panel has that number, since another side follows. */
function startsPair(tokens: readonly Token[], i: number): boolean {
  const joint = tokens[i];
  if (!joint || breaksBefore(joint) || !/^(?:by|buy|bye)$/u.test(joint.word)) return false;
  return tokens[i + 1] !== undefined && readAmount(tokens, i + 1) !== undefined;
}

/** An inch ruler, the inch edition, a yard stick. */
const partOfName = (tokens: readonly Token[], i: number): boolean =>
  /^(?:ruler|rulers|stick|sale|edition|tape|side|version|marks?|marking|markings|lines?|grid)$/u.test(
    tokens[i]?.word ?? '',
  ) && !breaksBefore(tokens[i]!);

/** A quarter, a quarter inch: the speaker began anew. */
function repeatsItself(tokens: readonly Token[], { kind, value, next }: Amount): boolean {
  if (kind !== 'fraction') return false;
  const again = readPart(tokens, next);
  return again?.value === value;
}

/** Whether the number at a token names something that stands before it. */
function isLabelled(tokens: readonly Token[], i: number): boolean {
  for (let k = i - 1; k >= 0 && k >= i - 3; k--) {
    const token = tokens[k]!;
    if (breaksBefore(tokens[k + 1]!)) return false;
    const ofStitch = /^(?:length|width)$/u.test(token.word) && stitched.test(tokens[k - 1]?.word ?? '');
    if (stitched.test(token.word) || ofStitch) return true;
    if (labels.has(token.word)) {
      // The panel is five by nine: a size, and no number of the panel.
      return k === i - 1 || !measured.has(token.word);
    }
    if (!labelJoints.has(token.word)) return false;
  }
  return false;
}

function withUnit(tokens: readonly Token[], i: number, amount: Amount): Part {
  const fraction = amount.kind === 'fraction' || amount.kind === 'mixed' || amount.kind === 'decimal';
  let next = amount.next;
  let unit = unitAt(tokens, next, fraction);
  // Five or so inches, fiveish inches; two more inches.
  const loose = afterAbout(tokens, next);
  const more = /^(?:whole|full|more|extra)$/u.test(tokens[next]?.word ?? '') ? next + 1 : loose;
  if (!unit && more > next && !breaksBefore(tokens[more - 1]!)) unit = unitAt(tokens, more, fraction);
  // Five and three sixteenths of an inch: the fraction alone is of one, and what stands before it is said in the same.
  const ofAn = tokens[next]?.word === 'of' && tokens[next + 1]?.word === 'an';
  const lostStroke = ofAn && tokens[next - 1]?.kind === 'number' && unstroked(amount.value) !== undefined;
  if (!unit && (amount.value < 1 || amount.kind === 'mixed' || lostStroke)) unit = ofAnInch(tokens, next);
  const part: Part = {
    ...{ from: i, next: unit?.next ?? next, amounts: [], amount, about: false, square: false, dimension: false },
    ...{ sure: amount.sure * (unit?.sure ?? 1), others: amount.others.map((value) => ({ value, why: 'heard so' })) },
    ...(unit && { unit: unit.unit }),
    ...(amount.asks && { asks: amount.asks }),
    ...(unit && /^yarns?$/u.test(tokens[unit.next - 1]!.word) && { asks: 'Is a yard meant, and how many?' }),
  };
  part.amounts.push({ value: amount.value, unit: unit?.unit ?? 'in' });
  settleHeardEighth(tokens, part, unit?.plural === true);
  if (unit) addSmaller(tokens, part);
  strokeLost(tokens, part);
  wholeLost(tokens, part, unit?.plural === true);
  const loosely = part.unit !== undefined && loose > amount.next && part.next > loose;
  part.about = loosely || isAbout(tokens, part) || /^(?:good|scant|generous)$/u.test(tokens[i + 1]?.word ?? '');
  next = afterAbout(tokens, part.next);
  if (next > part.next) part.about = true;
  behind(tokens, part, next);
  return part;
}

/** “… of an inch”, “half an inch”, “half of one inch”: a unit that a fraction is of. */
function ofAnInch(tokens: readonly Token[], i: number): ReturnType<typeof unitAt> {
  let at = i;
  if (tokens[at]?.word === 'of') at++;
  else if (tokens[at]?.word === 'and' && tokens[at + 1]?.word === 'inch' && tokens[at + 2]?.word !== 'and') {
    // Half and inch.
    const heard = unitAt(tokens, at + 1, true);
    return heard && { ...heard, sure: 0.6 };
  }
  if (!/^(?:an?|one|the)$/u.test(tokens[at]?.word ?? '') || breaksBefore(tokens[at]!)) {
    return at > i ? unitAt(tokens, at, true) : undefined;
  }
  const unit = unitAt(tokens, at + 1, false);
  return unit && !unit.plural ? unit : undefined;
}

/** Eighths that lost their ending are eighths before “of an inch” and one inch, and perhaps eight before inches. */
function settleHeardEighth(tokens: readonly Token[], part: Part, plural: boolean): void {
  const { amount } = part;
  if (amount.kind !== 'fraction' && amount.kind !== 'mixed') return;
  if (amount.others.length === 0 || !part.unit) return;
  const after = tokens[part.next - 2]?.word === 'of' || /^(?:an?|one)$/u.test(tokens[part.next - 2]?.word ?? '');
  if (after) {
    part.sure = Math.max(part.sure, 0.92);
    part.others = [];
    return;
  }
  const whole = amount.others[0]!;
  // No ruler has eighths of a centimetre: an eight centimetre gap; and 3 8 cm may have been 3.8.
  if (amount.kind === 'fraction' && editionOf(part.unit) === 'metric') {
    const pointLost = { value: amount.value * whole + whole / 10, why: 'a point may be lost' };
    part.amounts[0]!.value = whole;
    [part.sure, part.others] = amount.article ? [1, []] : [0.5, [pointLost]];
    return;
  }
  // One 16 inch zip: a count and a size. Nothing of the kind is as small as a fraction of an inch.
  const goods =
    /^(?:zips?|zippers?|squares?|blocks?|rectangles?|borders?|pillows?|cushions?|pads?|forms?|rulers?|mats?|bags?|straps?|circles?|plates?|hoops?)$/u;
  const next = tokens[part.next]?.word ?? '';
  const counts =
    /^(?:squares?|strips?|zips?|zippers?|blocks?|rectangles?|pieces?|strands?|lengths?|borders?|wide|long|tall|by)$/u.test(
      next,
    );
  if (
    amount.kind === 'fraction' &&
    (plural || (counts && whole === 8 && amount.value !== 1 / 8) || (counts && amount.article) || goods.test(next))
  ) {
    part.others = [{ value: amount.value, why: 'an eighth heard as eight' }];
    part.amounts[0]!.value = whole;
    part.sure = 0.5;
  } else if (seams.has(next)) part.sure = Math.max(part.sure, 0.8);
}

/** What is added to a number with its unit: an inch and a quarter, a yard and a foot, one metre twenty. */
function addSmaller(tokens: readonly Token[], part: Part): void {
  for (;;) {
    const joint = tokens[part.next];
    if (!joint || breaksBefore(joint)) return;
    const joined = joint.word === 'and' || joint.word === 'plus';
    const from = joined ? part.next + 1 : part.next;
    const { unit: large } = part.amounts.at(-1)!;
    const article = /^an?$/u.test(tokens[from]?.word ?? '');
    if (/^(?:in|on|an|end)$/u.test(joint.word) && /^an?$/u.test(tokens[from + 1]?.word ?? ''))
      return addMisheard(tokens, part, large);
    const amount = readAmount(tokens, from) ?? (joined && article ? unitAmount(tokens, from) : undefined);
    if (!amount || !tokens[from] || breaksBefore(tokens[from])) return;
    const unit =
      unitAt(tokens, amount.next, amount.kind === 'fraction') ??
      (amount.value < 1 ? ofAnInch(tokens, amount.next) : undefined);
    // A quarter inch and a quarter: said of two folds, and no sum. Half a yard and four inches is one.
    if (part.amount.value < 1 && !(unit && joined)) return;
    if (!unit) {
      if (joined && amount.kind === 'fraction' && amount.value < 1) {
        part.amounts.push({ value: amount.value, unit: large });
        part.next = amount.next;
        part.sure = Math.min(part.sure, amount.sure);
        // Two inches and a quarter seam: added, or a length of its own.
        if (seams.has(tokens[part.next]?.word ?? '')) part.sure = Math.min(part.sure, 0.6);
      } else if (!joined && large === 'm' && amount.kind === 'whole' && amount.value >= 5 && amount.value < 100) {
        part.amounts.push({ value: amount.value, unit: 'cm' });
        part.next = amount.next;
      } else if (!joined && large === 'ft' && amount.value < 12) {
        part.amounts.push({ value: amount.value, unit: 'in' });
        part.next = amount.next;
      }
      return;
    }
    const smaller = unitSize[unit.unit] < unitSize[large] && editionOf(unit.unit) === editionOf(large);
    if (!smaller) return;
    part.amounts.push({ value: amount.value, unit: unit.unit });
    part.next = unit.next;
  }
}

/** What was heard as “in” or “on” may be an “and”: an inch in a half. */
function addMisheard(tokens: readonly Token[], part: Part, unit: SpokenUnit): void {
  const more = readPart(tokens, part.next + 1);
  if (
    !more ||
    more.value >= 1 ||
    unitAt(tokens, more.next, true) ||
    /^(?:turns?|circles?)$/u.test(tokens[more.next]?.word ?? '')
  )
    return;
  if (part.amounts.length === 1) part.others.push({ value: part.amounts[0]!.value, why: 'heard so' });
  part.amounts.push({ value: more.value, unit });
  part.next = more.next;
  part.sure = Math.min(part.sure, more.sure, 0.6);
}

/** “… and an inch”, “… and a foot”, where a larger unit stands before it. */
function unitAmount(tokens: readonly Token[], i: number): Amount | undefined {
  const unit = unitAt(tokens, i + 1, false);
  return unit && !unit.plural
    ? { value: 1, kind: 'whole', next: i + 1, sure: 0.95, others: [], article: true }
    : undefined;
}

/** A seam of 14 inches is a quarter of one whose stroke was lost. */
function strokeLost(tokens: readonly Token[], part: Part): void {
  const { amount } = part;
  if (part.unit !== 'in' || amount.kind !== 'whole' || part.amounts.length > 1) return;
  if (tokens[amount.next - 1]?.kind !== 'number') return;
  const value = unstroked(amount.value);
  if (value === undefined) return;
  const ofAn = tokens[part.next - 2]?.word;
  const after = tokens.slice(part.next, part.next + 3).map(({ word }) => word);
  const seam = seams.has(after[0] ?? '') || (after[0] === 'from' && after.includes('edge')) || after[0] === 'topstitch';
  if (ofAn !== 'an' && !seam) return;
  part.others = [{ value: amount.value, why: 'as it is written' }];
  part.amounts[0]!.value = value;
  part.sure = 0.55;
  part.asks = `Is ${amount.value} a fraction that lost its stroke?`;
}

/** “… and a half inches”, “eighths of an inch”: the number before it was lost, or half an inch would be said. */
function wholeLost(tokens: readonly Token[], part: Part, plural: boolean): void {
  const { amount, from } = part;
  const bare = amount.next === from + 1;
  if (amount.kind !== 'fraction' || !part.unit || !(amount.article || bare)) return;
  const severalParts = bare && /^(?:halves|quarters|fourths|eighths|sixteenths)$/u.test(tokens[from]!.word);
  if (!severalParts && !(plural && tokens[from - 1]?.word === 'and')) return;
  part.sure = Math.min(part.sure, 0.4);
  part.asks = 'A number seems to be lost before the fraction.';
}

/** About, approximately, a scant: what stands before a number and takes its edge away. */
function isAbout(tokens: readonly Token[], { from }: Part): boolean {
  for (let k = from - 1; k >= 0 && k >= from - 3; k--) {
    const { word } = tokens[k]!;
    if (breaksBefore(tokens[k + 1]!)) return false;
    if (abouts.has(word)) return true;
    if (word === 'over' || word === 'under' || word === 'than')
      return littleMore.test(tokens[k - 1]?.word ?? '') && !/^(?:no|not)$/u.test(tokens[k - 2]?.word ?? '');
    if (word === 'good' && tokens[k - 1]?.word === 'a') return true;
    if (!/^(?:an?|like|the|good)$/u.test(word)) return false;
  }
  return false;
}

/** Behind “or so”, “ish”, “give or take”, and a “roughly” that ends a sentence. */
function afterAbout(tokens: readonly Token[], i: number): number {
  const [a, b, c] = [0, 1, 2].map((k) => tokens[i + k]?.word);
  if (a === 'ish') return i + 1;
  const ends = !tokens[i + 1] || breaksBefore(tokens[i + 1]!);
  if (ends && /^(?:roughly|approximately|approx)$/u.test(a ?? '')) return i + 1;
  if (a === 'or' && (b === 'so' || b === 'thereabouts')) return i + 2;
  if (a === 'give' && b === 'or' && c === 'take') return i + 3;
  return i;
}

/** Reads the word behind a length that tells what it measures; it is no part of the length. */
function behind(tokens: readonly Token[], part: Part, i: number): void {
  part.next = i;
  const next = tokens[i];
  if (!next || breaksBefore(next)) return;
  part.dimension = dimensions.has(next.word);
  const trimming = /^(?:up|it|off|the|them)$/u.test(tokens[i + 1]?.word ?? '');
  part.square = (next.word === 'square' && !trimming) || next.word === 'squares';
}

/** “2 ? inches”, “2 and a inch”: something stood there. */
function lostFraction(tokens: readonly Token[], i: number): Part | undefined {
  const amount = readAmount(tokens, i);
  if (amount?.kind !== 'whole') return undefined;
  const sign = tokens[amount.next];
  let at = amount.next;
  if (sign?.kind === 'lost') at++;
  else if (sign?.word === 'and') {
    at++;
    const article = tokens[at]?.word;
    if (tokens[at]?.kind === 'lost') at++;
    else if (article === 'a' && /^(?:inch|inches)$/u.test(tokens[at + 1]?.word ?? '')) at++;
    else if (!/^(?:inch|inches)$/u.test(article ?? '')) return undefined;
    if (tokens[at + 1]?.word === 'and') return undefined; // Two and inch and a half is something else again.
  } else return undefined;
  const unit = unitAt(tokens, at, true);
  if (!unit) return undefined;
  return {
    ...{ from: i, next: unit.next, amounts: [{ value: amount.value, unit: unit.unit }], amount, unit: unit.unit },
    ...{ sure: 0.2, others: [], about: false, square: false, dimension: false },
    asks: `A fraction seems to be lost after ${amount.value}.`,
  };
}

/** A few inches, a couple of inches: no number, and yet about so much. */
function someInches(tokens: readonly Token[], i: number): Part | undefined {
  if (tokens[i]!.word !== 'a') return undefined;
  const word = tokens[i + 1]?.word;
  if (word !== 'few' && word !== 'couple') return undefined;
  const at = tokens[i + 2]?.word === 'of' || tokens[i + 2]?.word === 'more' ? i + 3 : i + 2;
  const unit = unitAt(tokens, at, false);
  if (!unit) return undefined;
  const amount: Amount = { value: word === 'few' ? 3 : 2, kind: 'whole', next: at, sure: 0.4, others: [] };
  return {
    ...{ from: i, next: unit.next, amounts: [{ value: amount.value, unit: unit.unit }], amount, unit: unit.unit },
    ...{ sure: 0.4, about: true, square: false, dimension: false },
    others: word === 'few' ? [{ value: 2, unit: unit.unit, why: 'a few is no number' }] : [],
    asks: `${quote(`a ${word}`)} is no number.`,
  };
}

/** “Have an inch” is what machines hear of half an inch; and “corner inch” of a quarter inch. */
function perhapsHalf(tokens: readonly Token[], i: number): Part | undefined {
  const { word } = tokens[i]!;
  const have = word === 'have' || word === 'half';
  const corner = word === 'corner' || word === 'porter' || word === 'courter';
  if (!(word === 'have' && tokens[i + 1]?.word === 'an') && !corner) return undefined;
  const at = have ? i + 2 : i + 1;
  const unit = tokens[at] && /^inch$/u.test(tokens[at].word) ? unitAt(tokens, at, false) : undefined;
  if (!unit || tokens[unit.next]?.word === 'and') return undefined;
  const value = have ? 1 / 2 : 1 / 4;
  return {
    ...{ from: i, next: unit.next, amounts: [{ value, unit: 'in' }], unit: 'in' },
    amount: { value, kind: 'fraction', next: at, sure: 0.5, others: [] },
    ...{ sure: 0.4, about: false, square: false, dimension: false },
    others: have ? [{ value: 1, unit: 'in', why: 'an inch that somebody has' }] : [],
    asks: `Is ${have ? 'half an inch' : 'a quarter inch'} meant?`,
  };
}

const misheardNumbers = new Map([
  ['won', 1] as const,
  ...['to', 'too'].map((word) => [word, 2] as const),
  ...['for', 'fore'].map((word) => [word, 4] as const),
  ...['ate', 'aight'].map((word) => [word, 8] as const),
  ...['tree', 'free'].map((word) => [word, 3] as const),
]);

/** “For inches wide”: a number that was heard as a little word, right before inches. */
function misheardNumber(tokens: readonly Token[], i: number): Part | undefined {
  const value = misheardNumbers.get(tokens[i]!.word);
  if (value === undefined) return undefined;
  let at = i + 1;
  let whole = value;
  // From centimetres to inches.
  if (i > 0 && unitAt(tokens, i - 1, false)?.plural) return undefined;
  if (tokens[at]?.word === 'and') {
    const part = readPart(tokens, at + 1);
    if (!part || part.value >= 1) return undefined;
    whole += part.value;
    at = part.next;
  }
  const unit = unitAt(tokens, at, whole !== value);
  if (!unit || (whole === value && value > 1 && !unit.plural) || tokens[at]?.word === 'in') return undefined;
  return {
    ...{ from: i, next: unit.next, amounts: [{ value: whole, unit: unit.unit }], unit: unit.unit },
    amount: { value: whole, kind: 'whole', next: at, sure: 0.5, others: [] },
    ...{ sure: 0.5, others: [], about: false, square: false, dimension: false },
    asks: `Is ${quote(tokens[i]!.word)} the number ${value}?`,
  };
}

/** “Inch and a half”: the article was left out. */
function bareUnit(tokens: readonly Token[], i: number): Part | undefined {
  const word = tokens[i]!.word;
  const each = /^(?:every|each|per)$/u.test(tokens[i - 1]?.word ?? '') ? unitAt(tokens, i, false) : undefined;
  const loose = each && !each.plural ? afterAbout(tokens, each.next) : i;
  if (each && loose > each.next) {
    const amount: Amount = { value: 1, kind: 'whole', next: i, sure: 0.9, others: [] };
    return {
      ...{ from: i, next: loose, amounts: [{ value: 1, unit: each.unit }], unit: each.unit, amount, sure: 0.9 },
      ...{ others: [], about: true, square: false, dimension: false },
    };
  }
  if (!/^(?:inch|yard|metre|meter|centimetre|centimeter|foot)$/u.test(word) || tokens[i + 1]?.word !== 'and')
    return undefined;
  const part = readPart(tokens, i + 2);
  if (!part || part.value >= 1 || unitAt(tokens, part.next, true) || ofAnInch(tokens, part.next)) return undefined;
  const before = tokens[i - 1];
  if (before && !breaksBefore(tokens[i]!) && (before.kind !== 'word' || readPart(tokens, i - 1))) return undefined;
  const unit = unitAt(tokens, i, false)!.unit;
  return {
    ...{
      from: i,
      next: part.next,
      amounts: [{ value: 1 + part.value, unit }],
      unit,
      amount: { ...part, kind: 'mixed' },
    },
    ...{ sure: Math.min(part.sure, 0.9), others: [], about: false, square: false, dimension: false },
  };
}

/** Two or three numbers that are one size: five by seven, 17 long and 11 wide, three inches square. */
function pairOf(tokens: readonly Token[], first: Part): Several | undefined {
  const parts = [first];
  let next = first.next;
  while (parts.length < 3) {
    const beyond = pairDimensions.has(tokens[next]?.word ?? '') && !breaksBefore(tokens[next]!) ? next + 1 : next;
    const joint = tokens[beyond];
    if (!joint || breaksBefore(joint)) break;
    const by = /^(?:by|buy|bye)$/u.test(joint.word);
    const and = joint.word === 'and' && beyond > next;
    if (!by && !and) break;
    let at = beyond + 1;
    while (
      /^(?:about|roughly|approximately|around|maybe|the|its|a)$/u.test(tokens[at]?.word ?? '') &&
      !readAmount(tokens, at)
    )
      at++;
    if (!tokens[at]) break;
    const second = readPartOf(tokens, at);
    if (!second) break;
    // Behind inches, “in” is no preposition.
    if (first.unit === 'in' && second.unit === 'in' && !second.asks && second.amounts.length === 1)
      second.sure = Math.max(second.sure, Math.min(first.sure, second.amount.sure));
    if (and && !pairDimensions.has(tokens[second.next]?.word ?? '')) break;
    parts.push(second);
    next = second.next;
    if (and) break;
  }
  if (parts.length > 1) return { parts, kind: 'pair', next };
  return first.square ? { parts: [first, first], kind: 'pair', next } : undefined;
}

/** From the least to the greatest: 8 to 10 inches, 45 or 44 inch, between four and five, an inch or two. */
function rangeOf(tokens: readonly Token[], first: Part): Several | undefined {
  // 42 inches wide or 44.
  const wide = first.unit && pairDimensions.has(tokens[first.next]?.word ?? '') && !breaksBefore(tokens[first.next]!);
  const begin = wide && tokens[first.next + 1]?.word === 'or' ? first.next + 1 : first.next;
  // From 27 down to 18.
  const downTo = /^(?:down|up)$/u.test(tokens[begin]?.word ?? '') && tokens[begin + 1]?.word === 'to';
  const place = downTo ? begin + 1 : begin;
  const joint = tokens[place];
  if (!joint) return undefined;
  const hyphen = /^\s?[-–—]\s?$/u.test(joint.gap) && (joint.kind === 'number' || joint.kind === 'fraction');
  const between = tokens[first.from - 1]?.word === 'between' && joint.word === 'and';
  const word = /^(?:to|or|maybe|perhaps)$/u.test(joint.word) && !breaksBefore(joint);
  if (!hyphen && !between && !word) return undefined;
  let at = hyphen ? place : place + 1;
  while (/^(?:even|maybe|about|perhaps)$/u.test(tokens[at]?.word ?? '')) at++;
  if (!tokens[at]) return undefined;
  const second = readPartOf(tokens, at);
  if (!second) return undefined;
  const both = first.unit && second.unit;
  if (both && downTo) return undefined;
  if (both && editionOf(first.unit!) !== editionOf(second.unit!)) return undefined;
  // Without a unit, whole numbers from one to the other are a time or a count; “an inch or two” is none of them.
  const anInchOrTwo = joint.word === 'or' && first.unit && !second.unit && second.amount.kind === 'whole';
  const measured = first.unit && (wide || downTo);
  const gathered = downTo && first.amount.value >= 2 && isAlone(tokens, second.next);
  if (
    !second.unit &&
    !anInchOrTwo &&
    !measured &&
    !gathered &&
    !(first.amount.kind !== 'whole' && second.amount.kind !== 'whole')
  )
    return undefined;
  // Four maybe five inches: from one to the other, or put right.
  const unsure = joint.word === 'maybe' || joint.word === 'perhaps';
  const greatest = unsure ? { ...second, about: false, sure: Math.min(second.sure, 0.8) } : second;
  return { parts: [first, greatest], kind: 'range', next: second.next };
}

/** Whether nothing that is counted comes next. */
const isAlone = (tokens: readonly Token[], i: number): boolean => {
  const after = tokens[i];
  return !after || breaksBefore(after) || alone.test(after.word) || /^(?:which|with|or)$/u.test(after.word);
};

/** Whether cloth is measured where a token stands. */
const isMeasuring = (tokens: readonly Token[], i: number): boolean =>
  tokens
    .slice(Math.max(0, i - 10), i)
    .some(({ word }) =>
      /^(?:fold|folded|press|turn|sew|stitch|trim|seams?|allowance|hem|hems|width|wide|edge|edges|measure|measures|under)$/u.test(
        word,
      ),
    );

/** A quarter inch and a quarter. */
const isBehindLength = (tokens: readonly Token[], i: number): boolean =>
  tokens[i - 1]?.word === 'and' && unitAt(tokens, i - 2, false) !== undefined;

/** Behind these a quarter is one of an inch: fold a quarter, sew at three quarters. */
const measuring = /^(?:fold|turn|press|sew|trim|leave|add|measure|take|use|at|in|by|another|scant|seam)$/u;

/** What comes behind a number that stands for itself. */
const afterMark = /^(?:no|and|so|then|or|from|fold|cut|but|okay|right|again|now)$/u;

/** Whether numbers without any unit are lengths where they stand. */
function standsWithoutUnit(
  tokens: readonly Token[],
  parts: readonly Part[],
  kind: Several['kind'],
  assumed: Edition,
): boolean {
  const last = parts.at(-1)!;
  const after = tokens[last.next];
  const word = after && !breaksBefore(after) ? after.word : '';
  const before = tokens[parts[0]!.from - 1]?.word ?? '';
  if (kind === 'pair') {
    if (parts.every(({ amount }) => amount.kind === 'whole' && amount.value < 2)) return false; // One by one.
    // Half square triangles are cut from whole ones.
    if (parts[0]!.square && (last.amount.value < 1 || last.amount.kind === 'whole')) return false;
    return !/^(?:grid|grids|layout|rows?|array|inch)$/u.test(word);
  }
  const { amount } = last;
  if (
    kind === 'range' &&
    tokens[last.from - 1]?.word === 'to' &&
    /^(?:down|up)$/u.test(tokens[last.from - 2]?.word ?? '')
  )
    return true;
  if (last.dimension || kind === 'range') {
    // Two long things.
    if (amount.kind === 'whole' && last.dimension && !/^(?:by|and|or)$/u.test(tokens[last.next + 1]?.word ?? ''))
      if (!isAlone(tokens, last.next + 1) && !worked.test(tokens[last.next + 1]?.word ?? '') && !isFigure(tokens, last))
        return false;
    if (amount.kind !== 'whole') return !/^squares?$/u.test(word) || amount.value > 1;
    // Two squares, two seams are counted.
    return /^(?:wide|long|tall|high|deep|thick|apart)$/u.test(word);
  }
  switch (amount.kind) {
    case 'whole':
      return (
        /^(?:at|mark)$/u.test(before) &&
        isMark(tokens, parts[0]!.from) &&
        !counted.test(word) &&
        (word === '' || afterMark.test(word))
      );
    case 'decimal':
      // Centimetres are said so, and prices and settings.
      if (/[$£€]/u.test(tokens[parts[0]!.from]!.gap) || /^(?:by|to|times|point)$/u.test(before)) return seams.has(word);
      return seams.has(word) || (assumed === 'metric' && isAlone(tokens, last.next));
    case 'mixed':
      return !counted.test(word) || word === 'the' || word === 'to';
    case 'fraction':
      // Fold it in quarters.
      if (/^(?:quarters|fourths|thirds|halves)$/u.test(tokens[parts[0]!.from]!.word)) return false;
      if (seams.has(word)) return true;
      if (amount.under === 4 && measuring.test(before) && (word === 'fold' || !halved.test(word))) return true;
      if (amount.under === 4 && isMeasuring(tokens, parts[0]!.from) && toTheMiddle(tokens, last.next)) return true;
      if (counted.test(word) || (amount.under ?? 8) === 3) return false;
      if (amount.written && (amount.under ?? 8) >= 4) return true;
      if (amount.under === 2 && amount.written) return !halved.test(word);
      // Fold a quarter and then a half: a narrow hem.
      if (before === 'and' && readWhole(tokens, parts[0]!.from - 2)) return false;
      if (
        (isMeasuring(tokens, parts[0]!.from) || isBehindLength(tokens, parts[0]!.from)) &&
        (word === '' || /^(?:and|so|then|again|is|or|they)$/u.test(word))
      )
        return amount.article === true || amount.under === 4;
      if (amount.under === 2) return false;
      return (
        amount.article === true && !halved.test(word) && /^(?:from|away|on|inside|along|all|here|there)$/u.test(word)
      );
  }
}

/** An edge is folded three quarters to the centre. */
const toTheMiddle = (tokens: readonly Token[], i: number): boolean =>
  tokens[i]?.word === 'to' &&
  tokens[i + 1]?.word === 'the' &&
  /^(?:centre|center|middle|wrong|back|inside)$/u.test(tokens[i + 2]?.word ?? '');

/** Nobody counts so many long things. */
const isFigure = (tokens: readonly Token[], { from, amount }: Part): boolean =>
  tokens[from]!.kind === 'number' && amount.value >= 100;

/** “Put a mark at 4”: a place on a ruler. */
const isMark = (tokens: readonly Token[], i: number): boolean =>
  tokens.slice(Math.max(0, i - 5), i).some(({ word }) => /^(?:mark|marks|measure|line|ruler|cut|dot)$/u.test(word));

/** Puts the parts together in mm, with what is sure and what else it may have been. */
function settle(
  tokens: readonly Token[],
  { parts, kind, next }: Several,
  said: SpokenUnit | undefined,
  assumed: Edition,
): Read {
  const { unit, guessed } = said ? { unit: said, guessed: [] } : withoutUnit(parts, assumed);
  const sizes = parts.map(({ amounts, unit: own }) =>
    amounts.reduce((sum, amount) => sum + amount.value * unitSize[own ? amount.unit : unit], 0),
  );
  const values = sizes.map(exact);
  if (kind === 'range') values.sort((a, b) => a - b);
  const about = parts.some((part) => part.about);
  let sure = Math.min(...parts.map((part) => part.sure));
  if (!said) sure = Math.min(sure, assumed === 'metric' ? 0.5 : bareSure(parts, kind));
  if (tokens[parts[0]!.from]!.kind === 'fraction' && parts[0]!.from === 0 && kind !== 'one')
    sure = Math.min(sure, 0.85);
  const edition = editionOf(unit);
  const others: OtherReading[] = [...new Set(parts)].flatMap(({ others: heard }, k) =>
    heard.map((other) => ({
      values: values.map((value, at) =>
        at === k || parts[at] === parts[k] ? exact(other.value * unitSize[other.unit ?? unit]) : value,
      ),
      edition,
      why: other.why,
    })),
  );
  for (const other of guessed) {
    const factor = unitSize[other] / unitSize[unit];
    others.push({
      values: values.map((value) => exact(value * factor)),
      edition: editionOf(other),
      why: NO_UNIT,
    });
  }
  const asks = parts.find((part) => part.asks)?.asks;
  return {
    ...{ from: parts[0]!.from, next, kind: kind === 'one' && about ? 'about' : kind, values, edition, unit },
    ...{ unitSaid: said !== undefined, sure: Math.round(sure * 100) / 100, others },
    ...(about && kind !== 'one' && { about: true as const }),
    ...(asks && { asks }),
  };
}

/** Sums of fractions of an inch, to a millionth of a mm. */
const exact = (mm: number): number => Math.round(mm * 1e6) / 1e6;

/** The unit of numbers that were said without one. Eighths are inches whatever the edition. */
function withoutUnit(parts: readonly Part[], assumed: Edition): { unit: SpokenUnit; guessed: SpokenUnit[] } {
  const ruled = parts.some(({ amount }) => (amount.under ?? 1) >= 4 && amount.kind !== 'decimal');
  if (assumed === 'inch' || ruled) return { unit: 'in', guessed: assumed === 'inch' ? [] : ['cm'] };
  const most = Math.max(...parts.map(({ amount }) => amount.value));
  return most > 60 ? { unit: 'mm', guessed: ['cm'] } : { unit: 'cm', guessed: ['mm'] };
}

function bareSure(parts: readonly Part[], kind: Several['kind']): number {
  if (kind === 'pair') return 0.75;
  const { amount, dimension } = parts[0]!;
  if (amount.kind === 'mixed' || amount.written) return 0.8;
  return dimension ? 0.75 : 0.45;
}

/** A length that is put right at once by the next. */
function takeBack(text: string, found: SpokenLength[]): void {
  for (const [k, length] of found.entries()) {
    const after = found[k + 1];
    if (!after) return;
    const between = text
      .slice(length.end, after.start)
      .toLowerCase()
      .replace(/[^\p{L}\s]/gu, '')
      .replace(/\s+/gu, ' ')
      .trim();
    const putRight = between.length <= 40 && correction.test(between) && correcting.test(between);
    // An inch an inch and a half: begun anew. And not five inches but six.
    const anew = after.start - length.end === 1 && after.text.startsWith(`${length.text} `);
    const denied = between === 'but' && /\bnot\s+$/iu.test(text.slice(0, length.start));
    if (!putRight && !anew && !denied) continue;
    length.takenBack = true;
    length.sure = Math.min(length.sure, 0.3);
    length.others.push({ values: after.values, edition: after.edition, why: 'put right at once' });
  }
}
