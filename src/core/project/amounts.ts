/** Written values as numbers of one edition, and what is wrong with them. */
import { formatLength, inEdition, quote } from '../measure/index.ts';
import { evaluate } from '../formula/index.ts';
import type { Compiled, CompiledMeasure } from './compile.ts';
import type { CompiledPiece } from './shapes.ts';
import type { Dimension, Quantity, Scope } from '../formula/index.ts';
import type { Diagnostic, Place, Edition, Result } from '../measure/index.ts';
import type { NumberedPart } from './names.ts';
import type { RawValue } from './raw-value.ts';

const kinds = ['a plain number', 'a length', 'an area'] as const;

/** The features that are on, and the size. */
export type Chosen = { on: ReadonlySet<string>; size: string | undefined };

/** Reads what a file says in one edition and with some features on. What names come to is for its kinds to say. */
export abstract class Amounts {
  readonly compiled: Compiled;
  readonly edition: Edition;
  /** The features that are on. */
  readonly on: ReadonlySet<string>;
  readonly size: string | undefined;
  readonly findings: Diagnostic[] = [];
  readonly scope: Scope;
  /** The findings so far, to tell when one comes up again. */
  readonly #said = new Set<string>();

  constructor(compiled: Compiled, edition: Edition, { on, size }: Chosen) {
    this.compiled = compiled;
    this.edition = edition;
    this.on = on;
    this.size = size;
    this.scope = { get: (name) => this.named(name), edition, grid: compiled.grid, known: compiled.names };
  }

  /** What a name comes to; undefined for one that the file does not give. */
  protected abstract named(name: string): Result<Quantity> | undefined;

  /** What stands for a measure: its own value or its size’s, or that of the last feature that is on and changes it. */
  rawValueOf(measure: CompiledMeasure): RawValue | undefined {
    let rawValue = measure.bySize ? measure.bySize.get(this.size ?? '') : measure.rawValue;
    for (const feature of this.compiled.features.values()) {
      if (this.on.has(feature.name)) rawValue = feature.measures.get(measure.name) ?? rawValue;
    }
    return rawValue;
  }

  /** A length in mm. Anything else is reported. */
  length(rawValue: RawValue): number | undefined {
    return this.#of(1, rawValue);
  }

  /** A plain number. Anything else is reported. */
  number(rawValue: RawValue): number | undefined {
    return this.#of(0, rawValue);
  }

  /** A whole number of things, from `least` up. Anything else is reported. */
  count(rawValue: RawValue, least = 1): number | undefined {
    const value = this.number(rawValue);
    if (value === undefined) return undefined;
    const whole = Math.round(value);
    if (Math.abs(value - whole) < 1e-9 && whole >= least && whole <= 1000) return whole;
    const message = `A whole number from ${least} up belongs here, not ${Number(value.toFixed(3))}.`;
    this.report({ severity: 'error', place: rawValue.place, code: 'not-a-count', message });
    return undefined;
  }

  /** What a written value comes to in this edition. A fault is reported, unless it is only the echo of another. */
  quantity(rawValue: RawValue): Quantity | undefined {
    if (rawValue.kind === 'length') {
      return { value: inEdition(rawValue.stated, this.edition, this.compiled.grid), dimension: 1 };
    }
    const found = evaluate(rawValue.formula, this.scope);
    if (found.ok) return found.value;
    const { code, message, start, end, fix } = found.fault;
    if (code === 'rests-on-fault') return undefined;
    const bare =
      code === 'kinds-differ' && fix === undefined ? this.#plainMeasure(rawValue.text.slice(start, end)) : undefined;
    const advice = bare ?? (fix === undefined || message.includes(fix) ? undefined : `Write ${quote(fix)}.`);
    this.report({
      severity: 'error',
      place: rawValue.place,
      start,
      end,
      code,
      message,
      ...(advice && { fix: advice }),
    });
    return undefined;
  }

  /** Keeps a finding; what several numbers stumble over is said once. */
  report(finding: Diagnostic): void {
    const key = JSON.stringify([finding.place, finding.code, finding.message]);
    if (this.#said.has(key)) return;
    this.#said.add(key);
    this.findings.push(finding);
  }

  /** Forgets the findings after the first `count`. */
  forget(count: number): void {
    for (const finding of this.findings.splice(count)) {
      this.#said.delete(JSON.stringify([finding.place, finding.code, finding.message]));
    }
  }

  /** A length as a reader sees it. */
  say(mm: number): string {
    return formatLength(mm, this.edition, { grid: this.compiled.grid });
  }

  /** What a name comes to, or the fault of what rests on a fault. */
  protected found(name: string, value: Quantity | undefined): Result<Quantity> {
    if (value) return { ok: true, value };
    return {
      ok: false,
      fault: { severity: 'error', code: 'rests-on-fault', message: `${quote(name)} has no value.`, start: 0, end: 0 },
    };
  }

  /** Reports a fold or a pocket that a piece does not have. */
  protected reportLacking(piece: CompiledPiece, part: NumberedPart, last: number, place: Place): void {
    const message = `${quote(piece.label)} has only ${last} ${part.what === 'fold' ? 'folds' : 'pockets'}, but number ${part.n} is asked for.`;
    this.report({ severity: 'error', place, code: 'no-such-part', message });
  }

  #of(dimension: Dimension, rawValue: RawValue): number | undefined {
    const found = this.quantity(rawValue);
    if (!found) return undefined;
    if (found.dimension === dimension) return found.value;
    const { place, text } = rawValue;
    const message = `${kinds[dimension].replace(/^a/u, 'A')} belongs here, but ${text === '' ? 'this' : quote(text)} is ${kinds[found.dimension]}.`;
    const fix =
      dimension === 1 && found.dimension === 0
        ? this.#unitFor(rawValue)
        : dimension === 0 && found.dimension === 1
          ? 'If a measure is meant as a number of things, write it as { count: 5 }.'
          : undefined;
    this.report({
      severity: 'error',
      place,
      start: 0,
      end: text.length,
      code: 'wrong-kind',
      message,
      ...(fix && { fix }),
    });
    return undefined;
  }

  /** What to write where a plain number stands and a length belongs: 3/2 in. */
  #unitFor(rawValue: RawValue): string {
    const { text } = rawValue;
    const unit = this.compiled.home === 'inch' ? 'in' : 'mm';
    const number = /^\s*([\d.,]+(?:[/⁄]\d+)?|\d+ \d+[/⁄]\d+|[½¼¾⅛⅜⅝⅞])\s*$/u.exec(text)?.[1];
    if (number !== undefined) return `Write ${quote(`${number} ${unit}`)}.`;
    return (
      (rawValue.kind === 'formula' ? this.#firstPlain(rawValue.formula.names) : undefined) ??
      `Give the numbers a unit, such as ${unit === 'in' ? '1/4 in' : '6 mm'}.`
    );
  }

  #firstPlain(names: readonly string[], depth = 0): string | undefined {
    for (const name of names) {
      const found = this.#plainMeasure(name, depth);
      if (found !== undefined) return found;
    }
    return undefined;
  }

  /** The same for a name whose measure is a plain number; undefined for anything else. */
  #plainMeasure(text: string, depth = 0): string | undefined {
    const measure = this.compiled.measures.get(text.trim());
    const rawValue = measure?.kind === 'formula' ? this.rawValueOf(measure) : undefined;
    if (rawValue?.kind !== 'formula') return undefined;
    // Deeper than a few names nobody follows, and a ring of names has no end.
    if (rawValue.formula.names.length > 0)
      return depth > 8 ? undefined : this.#firstPlain(rawValue.formula.names, depth + 1);
    const unit = this.compiled.home === 'inch' ? 'in' : 'mm';
    const of = rawValue.text.trim();
    const said = /^[\d.,/⁄ ½¼¾⅛⅜⅝⅞]+$/u.test(of) ? `${of} ${unit}` : `(${of}) * 1 ${unit}`;
    return `If ${quote(measure!.name)} is meant as a length, write ${quote(said)} there.`;
  }
}
