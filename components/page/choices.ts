/**
 * What a learner may choose, as an address or the browser gives it and as an address names it again: plain values, so that
 * whatever comes in can be judged without a page.
 */
import { formatChosen, isOnStep, MM_PER_INCH, parseLength, readPlainNumber, toGrid } from '../../src/core/index.ts';
import type { Adjustable, Edition, Pattern } from '../../src/core/index.ts';
import { asRecord } from './storage.ts';

/** A size the learner chose: as chosen, in the edition it was chosen in, so that going there and back loses nothing. */
export type Chosen = { value: number; edition: Edition };

/**
 * What differs from the lesson, by the names of measures, options and choices, and the size. Values go on from the size:
 * they are those of sliders that were moved since.
 */
export type Choices = { values: Record<string, Chosen>; options: Record<string, boolean | string>; size?: string };

/** What the size is called among names of measures and options, none of which begins with a blank. */
export const SIZE_CHOSEN = ' size';

/** A project at the lesson's own size, in each edition. */
export type LessonIn = (edition: Edition) => Pattern;

/** How the size is named in the address. */
const SIZE = 'size';

const isAlike = (one: string, other: string): boolean => inAddress(one) === inAddress(other);

/**
 * How a measure or option is named in the address: `packet width` as `packet-width`. One that is called `edition` keeps out
 * of the way of the page's own edition, and one that is called `size` out of that of the size, where there are several.
 */
function inAddress(name: string, { sizes }: Pick<Pattern, 'sizes'> = {}): string {
  const word = name.trim().toLowerCase().replace(/\s+/g, '-');
  return word === 'edition' || (sizes && word === SIZE) ? `${word}-` : word;
}

/** What a size gives is no longer what a slider of before says. */
export function withoutSized(values: Record<string, Chosen>, { sizes }: Pattern): Record<string, Chosen> {
  return Object.fromEntries(Object.entries(values).filter(([name]) => !sizes?.measures.includes(name)));
}

/** Why a value cannot be taken for a measure, as a sentence for the learner; undefined if it can. */
export function refusal({ measures, edition }: Pattern, name: string, value: number): string | undefined {
  const measure = measures[name];
  const range = measure?.adjustable;
  if (!measure || !range) return `This project has no size called “${name}” to change.`;
  const show = (v: number) => formatChosen(v, range.kind, edition, { style: 'set' });
  const close = 1e-6;
  if (!Number.isFinite(value) || value < range.min - close || value > range.max + close)
    return `${measure.label} can be from ${show(range.min)} to ${show(range.max)}.`;
  if (!isOnStep(value, range, 1e-4))
    return `${measure.label} goes in steps of ${show(range.step)} from ${show(range.min)}.`;
  return undefined;
}

/** A chosen size in another edition: moved to that edition's marks, and never past its range. */
export function moved(name: string, chosen: Chosen, { edition, measures }: Pattern): number {
  if (chosen.edition === edition) return chosen.value;
  const range = measures[name]?.adjustable;
  if (!range || range.kind !== 'length') return chosen.value;
  const steps = Math.round((toGrid(chosen.value, edition) - range.min) / range.step);
  return Math.min(range.max, Math.max(range.min, range.min + steps * range.step));
}

/** What the browser kept, as far as it can be taken: anything may lie there. */
export function keptChoices(kept: unknown, lessonIn: LessonIn, edition: Edition): Choices {
  const { values: keptValues, options: keptOptions, size } = asRecord(kept) ?? {};
  const [sizes, switches] = [asRecord(keptValues) ?? {}, asRecord(keptOptions) ?? {}];
  const values: Record<string, Chosen> = {};
  const options: Choices['options'] = {};
  const pattern = lessonIn(edition);
  for (const { name, adjustable } of Object.values(pattern.measures)) {
    const before = adjustable && asRecord(sizes[name]);
    if (typeof before?.value !== 'number' || (before.edition !== 'inch' && before.edition !== 'metric')) continue;
    const { value, edition } = before;
    if (!refusal(lessonIn(edition), name, value)) values[name] = { value, edition };
  }
  for (const [name, option] of Object.entries(pattern.options)) {
    const on = switches[name];
    if (typeof on === 'boolean' && on !== option.default) options[name] = on;
  }
  for (const [name, choice] of Object.entries(pattern.choices)) {
    const one = switches[name];
    if (typeof one === 'string' && Object.hasOwn(choice.of, one) && one !== choice.default) options[name] = one;
  }
  const isSize = typeof size === 'string' && pattern.sizes?.of.includes(size) && size !== pattern.sizes.default;
  return { values, options, ...(isSize && { size }) };
}

/**
 * What an address asks for; of what it does not name, what was there before.
 *
 * @param pattern at the lesson's own size, in the edition that the page shows
 * @returns also the names that were asked for and could be taken, and a sentence for each that could not
 */
export function askedChoices(
  query: URLSearchParams,
  pattern: Pattern,
  before: Choices,
): Choices & { taken: string[]; refused: string[] } {
  const { edition, sizes } = pattern;
  let values = { ...before.values };
  const options = { ...before.options };
  const taken: string[] = [];
  const refused: string[] = [];
  let { size } = before;
  const wanted = sizes && query.get(SIZE);
  if (sizes && typeof wanted === 'string') {
    const found = sizes.of.find((one) => isAlike(one, wanted));
    if (found === undefined) {
      const all = sizes.of.map((one) => `“${one}”`).join(', ');
      refused.push(`The address asks for a size that there is not. There are ${all}.`);
    } else {
      if (found !== (size ?? sizes.default)) values = withoutSized(values, pattern);
      size = found === sizes.default ? undefined : found;
      taken.push(SIZE_CHOSEN);
    }
  }
  for (const { name, label, adjustable } of Object.values(pattern.measures)) {
    const asked = query.get(inAddress(name, pattern));
    if (!adjustable || asked === null) continue;
    delete values[name];
    const read = adjustable.kind === 'length' ? lengthIn(asked, edition) : numberIn(asked, adjustable.kind);
    const trouble =
      read === undefined ? `The address gives no size that can be read for ${label}.` : refusal(pattern, name, read);
    if (read === undefined || trouble) refused.push(`${trouble} The lesson’s size is kept.`);
    else {
      values[name] = { value: read, edition };
      taken.push(name);
    }
  }
  for (const [name, option] of Object.entries(pattern.options)) {
    const asked = query.get(inAddress(name, pattern));
    if (asked === null) continue;
    const on = asked === 'yes' ? true : asked === 'no' ? false : options[name];
    if (asked !== 'yes' && asked !== 'no') refused.push(`The address says neither yes nor no for “${option.label}”.`);
    else taken.push(name);
    delete options[name];
    if (on !== undefined && on !== option.default) options[name] = on;
  }
  for (const [name, choice] of Object.entries(pattern.choices)) {
    const asked = query.get(inAddress(name, pattern));
    if (asked === null) continue;
    const one = Object.keys(choice.of).find((key) => isAlike(key, asked));
    if (one === undefined) {
      const all = Object.values(choice.of).map(({ label }) => `“${label}”`);
      refused.push(`The address asks for a “${choice.label}” that there is not. There are ${all.join(', ')}.`);
      continue;
    }
    taken.push(name);
    delete options[name];
    if (one !== choice.default) options[name] = one;
  }
  // Two sizes of one label may be refused alike.
  return { values, options, ...(size !== undefined && { size }), taken, refused: [...new Set(refused)] };
}

/**
 * Writes what was chosen into an address; what stands there for others stays.
 *
 * @param lesson at the lesson's own size, in the edition that the page shows
 */
export function writeChoices(query: URLSearchParams, { values, options, size }: Choices, lesson: Pattern): void {
  const differs = Object.keys(values).length + Object.keys(options).length > 0 || size !== undefined;
  // Values go on from the size: a reader who opens the address may have chosen another before.
  if (lesson.sizes && differs) query.set(SIZE, inAddress(size ?? lesson.sizes.default));
  else if (lesson.sizes) query.delete(SIZE);
  for (const { name, adjustable } of Object.values(lesson.measures)) {
    if (!adjustable) continue;
    const chosen = values[name];
    if (!chosen) query.delete(inAddress(name, lesson));
    else query.set(inAddress(name, lesson), written(moved(name, chosen, lesson), adjustable.kind, lesson));
  }
  for (const name of Object.keys(lesson.options)) {
    const on = options[name];
    if (on === undefined) query.delete(inAddress(name, lesson));
    else query.set(inAddress(name, lesson), on === true ? 'yes' : 'no');
  }
  for (const name of Object.keys(lesson.choices)) {
    const one = options[name];
    if (one === undefined) query.delete(inAddress(name, lesson));
    else query.set(inAddress(name, lesson), inAddress(String(one)));
  }
  if (differs) query.set('edition', lesson.edition);
}

/** As people write it, where that says all of it: a size between two marks, shown as `≈ 41 mm`, stands in decimals. */
function written(value: number, kind: Adjustable['kind'], { edition, grid }: Pattern): string {
  const text = formatChosen(value, kind, edition, { grid });
  const read = kind === 'length' ? lengthIn(text, edition) : numberIn(text, kind);
  if (read !== undefined && Math.abs(read - value) < 1e-6) return text;
  const decimals = (of: number) => String(Number(of.toFixed(9)));
  if (kind !== 'length') return decimals(value);
  return edition === 'inch' ? `${decimals(value / MM_PER_INCH)} in` : `${decimals(value)} mm`;
}

function lengthIn(text: string, edition: Edition): number | undefined {
  const read = parseLength(text, edition);
  return read.ok ? read.value : undefined;
}

/** How many, or a plain number. */
const numberIn = (text: string, kind: 'count' | 'number'): number | undefined =>
  kind === 'number' || /^\d{1,3}$/.test(text.trim()) ? readPlainNumber(text) : undefined;
