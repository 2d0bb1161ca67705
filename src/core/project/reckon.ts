/**
 * Works out the numbers of a project in one edition.
 *
 * Measures, sizes of pieces and pleats may rest on each other in any order, so nothing is worked out before it is asked
 * for, and everything once. What goes round in a ring is reported where the ring closes; what rests on something that
 * has a fault is left out without a word, because the fault itself is reported.
 */
import { formatLength, inEdition, LONGEST, quote } from '../measure/index.ts';
import { bounds } from '../geometry/index.ts';
import { drawLines, boxIsSum, type Lines } from './lines.ts';
import { evaluate } from '../formula/index.ts';
import { explainPleats } from './explain.ts';
import { partName } from './names.ts';
import { planFolds, planPleats } from './pleats.ts';
import type { Compiled, CompiledMeasure } from './compile.ts';
import type { CompiledPiece, Edges } from './shapes.ts';
import type { Dimension, Quantity, Scope } from '../formula/index.ts';
import type { Diagnostic, Place, Edition, Result } from '../measure/index.ts';
import type { Pattern } from './pattern.ts';
import type { Part } from './names.ts';
import type { PleatPlan } from './pleats.ts';
import type { Written } from './written.ts';

/** No measure and no piece is longer than a roll of cloth, in mm: 100 m, as for a length that is typed. */
export const LARGEST = LONGEST;
/** Nor is any piece smaller. */
export const SMALLEST = 1;

/** Nobody can follow more measures that rest on each other in a row, and the stack of calls has an end, too. */
const DEEPEST = 200;

/** The learner's numbers and options that hold for one reckoning. */
export type Choices = { values: ReadonlyMap<string, number>; on: ReadonlySet<string> };

export type Sides = { bottom: number; right: number; top: number; left: number };

const none: Sides = { bottom: 0, right: 0, top: 0, left: 0 };

const kinds = ['a plain number', 'a length', 'an area'] as const;

export class Reckoning {
  readonly compiled: Compiled;
  readonly edition: Edition;
  readonly choices: Choices;
  readonly findings: Diagnostic[] = [];
  readonly scope: Scope;
  /** Worked out already; undefined for what has a fault. */
  readonly #done = new Map<string, unknown>();
  /** The findings so far, to tell when one comes up again. */
  readonly #said = new Set<string>();
  /** Being worked out now, outermost first. */
  readonly #open: { key: string; name: string; place: Place }[] = [];

  constructor(compiled: Compiled, edition: Edition, choices: Choices) {
    this.compiled = compiled;
    this.edition = edition;
    this.choices = choices;
    this.scope = { get: (name) => this.#get(name), edition, grid: compiled.grid, known: compiled.names };
  }

  /** The value of a measure as the learner's choices and the options make it. */
  measure(measure: CompiledMeasure): Quantity | undefined {
    return this.#once(`measure ${measure.name}`, measure.name, measure.place, () => {
      const written = this.writtenOf(measure);
      if (!written) return undefined;
      const chosen = this.choices.values.get(measure.name);
      if (chosen !== undefined) return { value: chosen, dimension: measure.kind === 'count' ? 0 : 1 };
      const found = this.quantity(written);
      return found && this.#sensible(found, measure, written) ? found : undefined;
    });
  }

  /** What stands for a measure: its own value, or that of the last option that is on and changes it. */
  writtenOf(measure: CompiledMeasure): Written | undefined {
    let written = measure.written;
    for (const option of this.compiled.options.values()) {
      if (this.choices.on.has(option.name)) written = option.measures.get(measure.name) ?? written;
    }
    return written;
  }

  /** A number that a piece gives, by what formulas call it. */
  part(piece: string, part: Part): number | undefined {
    const of = this.compiled.pieces.get(piece)!;
    const name = partName(piece, part);
    return this.#once(name, name, of.place, () => this.#partOf(of, part));
  }

  /** How a piece is pleated; undefined for a piece without pleats and for pleats that do not go. */
  plan(piece: CompiledPiece): PleatPlan | undefined {
    if (!piece.pleats) return undefined;
    return this.#once(`plan ${piece.name}`, `the pleats of ${piece.name}`, piece.place, () => this.#planOf(piece));
  }

  /** The stitch line and the cut line of a piece. */
  lines(piece: CompiledPiece): Lines | undefined {
    return this.#once(`lines ${piece.name}`, `the shape of ${piece.name}`, piece.place, () => drawLines(this, piece));
  }

  /** Seam allowances at the four sides of a piece that is no free outline. */
  sides(piece: CompiledPiece): Sides | undefined {
    const { shape } = piece;
    if (!piece.allowance && shape?.kind === 'like' && !shape.inset) {
      return this.#once(`sides ${piece.name}`, piece.name, piece.place, () =>
        this.sides(this.compiled.pieces.get(shape.piece)!),
      );
    }
    return this.edges(piece.allowance);
  }

  /** The lengths at the four sides. */
  edges(edges: Edges | undefined): Sides | undefined {
    if (!edges) return none;
    const side = (name: keyof Sides) => {
      const written = edges.byName.get(name) ?? edges.others;
      return written ? this.#notNegative(written) : 0;
    };
    const [bottom, right, top, left] = [side('bottom'), side('right'), side('top'), side('left')];
    if (bottom === undefined || right === undefined || top === undefined || left === undefined) return undefined;
    return { bottom, right, top, left };
  }

  /** A length in mm. Anything else is reported. */
  length(written: Written): number | undefined {
    return this.#of(1, written);
  }

  /** A plain number. Anything else is reported. */
  number(written: Written): number | undefined {
    return this.#of(0, written);
  }

  /** A whole number of things, from `least` up. Anything else is reported. */
  count(written: Written, least = 1): number | undefined {
    const value = this.number(written);
    if (value === undefined) return undefined;
    const whole = Math.round(value);
    if (Math.abs(value - whole) < 1e-9 && whole >= least && whole <= 1000) return whole;
    const message = `A whole number from ${least} up belongs here, not ${Number(value.toFixed(3))}.`;
    this.report({ severity: 'error', place: written.place, code: 'not-a-count', message });
    return undefined;
  }

  /** What a written value comes to in this edition. A fault is reported, unless it is only the echo of another. */
  quantity(written: Written): Quantity | undefined {
    if (written.kind === 'length') {
      return { value: inEdition(written.stated, this.edition, this.compiled.grid), dimension: 1 };
    }
    const found = evaluate(written.formula, this.scope);
    if (found.ok) return found.value;
    const { code, message, start, end, fix } = found.fault;
    if (code === 'rests-on-fault') return undefined;
    const bare =
      code === 'kinds-differ' && fix === undefined ? this.#plainMeasure(written.text.slice(start, end)) : undefined;
    const advice = bare ?? (fix === undefined || message.includes(fix) ? undefined : `Write ${quote(fix)}.`);
    this.report({
      severity: 'error',
      place: written.place,
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

  #get(name: string): Result<Quantity> | undefined {
    const measure = this.compiled.measures.get(name);
    const part = measure ? undefined : this.compiled.parts.get(name);
    if (!measure && !part) return undefined;
    const length = part && this.part(part.piece, part.part);
    const found = measure
      ? this.measure(measure)
      : length === undefined
        ? undefined
        : { value: length, dimension: 1 as const };
    if (found) return { ok: true, value: found };
    return {
      ok: false,
      fault: { severity: 'error', code: 'rests-on-fault', message: `${quote(name)} has no value.`, start: 0, end: 0 },
    };
  }

  #of(dimension: Dimension, written: Written): number | undefined {
    const found = this.quantity(written);
    if (!found) return undefined;
    if (found.dimension === dimension) return found.value;
    const { place, text } = written;
    const message = `${kinds[dimension].replace(/^a/u, 'A')} belongs here, but ${text === '' ? 'this' : quote(text)} is ${kinds[found.dimension]}.`;
    const fix =
      dimension === 1 && found.dimension === 0
        ? this.#unitFor(written)
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
  #unitFor(written: Written): string {
    const { text } = written;
    const unit = this.compiled.home === 'inch' ? 'in' : 'mm';
    const number = /^\s*([\d.,]+(?:[/⁄]\d+)?|\d+ \d+[/⁄]\d+|[½¼¾⅛⅜⅝⅞])\s*$/u.exec(text)?.[1];
    if (number !== undefined) return `Write ${quote(`${number} ${unit}`)}.`;
    return (
      (written.kind === 'formula' ? this.#firstPlain(written.formula.names) : undefined) ??
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
    const written = measure?.kind === 'formula' ? this.writtenOf(measure) : undefined;
    if (written?.kind !== 'formula') return undefined;
    // Deeper than a few names nobody follows, and a ring of names has no end.
    if (written.formula.names.length > 0)
      return depth > 8 ? undefined : this.#firstPlain(written.formula.names, depth + 1);
    const unit = this.compiled.home === 'inch' ? 'in' : 'mm';
    const of = written.text.trim();
    const said = /^[\d.,/⁄ ½¼¾⅛⅜⅝⅞]+$/u.test(of) ? `${of} ${unit}` : `(${of}) * 1 ${unit}`;
    return `If ${quote(measure!.name)} is meant as a length, write ${quote(said)} there.`;
  }

  /** The length of an allowance or an inset. */
  #notNegative(written: Written): number | undefined {
    const value = this.length(written);
    if (value === undefined || value >= 0) return value;
    const message = `This comes to ${this.say(value)}, which is less than nothing.`;
    this.report({ severity: 'error', place: written.place, code: 'negative', message, amount: -value });
    return undefined;
  }

  /** Works something out once; asking for it while it is being worked out is a ring. */
  #once<T>(key: string, name: string, place: Place, work: () => T | undefined): T | undefined {
    if (this.#done.has(key)) return this.#done.get(key) as T | undefined;
    const ring = this.#open.findIndex((open) => open.key === key);
    if (ring >= 0) {
      const names = [...this.#open.slice(ring).map((open) => open.name), name].map(quote);
      const message =
        names.length === 2
          ? `${names[0]!} is worked out from itself.`
          : `${names[0]!} needs ${names.slice(1).join(', which needs ')} again.`;
      const { place } = this.#open[ring]!;
      this.report({ severity: 'error', place, code: 'cycle', message, fix: 'Give one of them a value of its own.' });
      return undefined;
    }
    if (this.#open.length >= DEEPEST) {
      const message = `${quote(name)} rests on too many others, one on the next.`;
      this.report({
        severity: 'error',
        place,
        code: 'too-deep',
        message,
        fix: 'Give one of them a value of its own.',
      });
      return undefined;
    }
    this.#open.push({ key, name, place });
    const found = work();
    this.#open.pop();
    this.#done.set(key, found);
    return found;
  }

  /** Whether a measure can be meant seriously. */
  #sensible({ value, dimension }: Quantity, measure: CompiledMeasure, written: Written): boolean {
    const place = written.place;
    if (measure.kind === 'count') {
      if (dimension === 0 && Number.isInteger(value) && value >= 0 && value <= 1000) return true;
      const message = `${quote(measure.name)} counts things, so a whole number belongs here.`;
      this.report({ severity: 'error', place, code: 'not-a-count', message });
      return false;
    }
    if (dimension !== 1) return true;
    if (value < -1e-9) {
      const message = `${quote(measure.name)} comes to ${this.say(value)}, which is less than nothing.`;
      this.report({ severity: 'error', place, code: 'negative', message, amount: -value });
      return false;
    }
    if (value > LARGEST) {
      const message = `${quote(measure.name)} comes to ${this.say(value)}. That is more than 100 m, longer than a roll of cloth.`;
      this.report({
        severity: 'error',
        place,
        code: 'too-large',
        message,
        fix: 'Check the unit.',
        amount: value - LARGEST,
      });
      return false;
    }
    return true;
  }

  #partOf(piece: CompiledPiece, part: Part): number | undefined {
    switch (part.what) {
      case 'width':
        return this.#width(piece);
      case 'length':
        return piece.pleats ? this.plan(piece)?.stripLength : this.#height(piece);
      case 'height':
        return piece.pleats ? this.plan(piece)?.panelHeight : this.#height(piece);
      case 'finished width':
        return this.#sewn(piece, 'width', 'left', 'right');
      case 'finished height':
        return this.#sewn(piece, 'height', 'bottom', 'top');
      default: {
        const plan = this.plan(piece);
        if (!plan) return undefined;
        const fold = plan.folds[part.n - 1];
        const pocket = plan.pockets[part.n - 1];
        if (part.what === 'fold' && fold) return plan.from === 'top' ? plan.stripLength - fold.at : fold.at;
        if (part.what === 'pocket depth' && pocket) return pocket.depth;
        if (part.what === 'pocket top' && pocket) return pocket.top;
        const [what, last] = part.what === 'fold' ? ['folds', plan.folds.length] : ['pockets', plan.pockets.length];
        const message = `${quote(piece.label)} has only ${last} ${what}, but number ${part.n} is asked for.`;
        const place = this.#open.at(-2)?.place ?? piece.place;
        this.report({ severity: 'error', place, code: 'no-such-part', message });
        return undefined;
      }
    }
  }

  /** Cut width. */
  #width(piece: CompiledPiece): number | undefined {
    const { shape } = piece;
    switch (shape?.kind) {
      case 'size':
        return this.length(shape.width);
      case 'finished': {
        const [width, sides] = [this.length(shape.width), this.edges(piece.allowance)];
        return width === undefined || !sides ? undefined : width + sides.left + sides.right;
      }
      case 'like': {
        if (!boxIsSum(this.compiled, piece)) return this.#boxOf(piece, 'width');
        const [width, inset] = [this.part(shape.piece, { what: 'width' }), this.edges(shape.inset)];
        return width === undefined || !inset ? undefined : width - inset.left - inset.right;
      }
      default:
        return this.#boxOf(piece, 'width');
    }
  }

  /** Cut height of a piece that is not pleated. */
  #height(piece: CompiledPiece): number | undefined {
    const { shape } = piece;
    switch (shape?.kind) {
      case 'size':
        return shape.height && this.length(shape.height);
      case 'finished': {
        const [height, sides] = [this.length(shape.height), this.edges(piece.allowance)];
        return height === undefined || !sides ? undefined : height + sides.bottom + sides.top;
      }
      case 'like': {
        if (!boxIsSum(this.compiled, piece)) return this.#boxOf(piece, 'height');
        const [length, inset] = [this.part(shape.piece, { what: 'length' }), this.edges(shape.inset)];
        return length === undefined || !inset ? undefined : length - inset.bottom - inset.top;
      }
      default:
        return this.#boxOf(piece, 'height');
    }
  }

  /** The box round the cut line of a piece that is no rectangle. */
  #boxOf(piece: CompiledPiece, what: 'width' | 'height'): number | undefined {
    const lines = this.lines(piece);
    return lines && bounds(lines.cut)[what];
  }

  #sewn(piece: CompiledPiece, what: 'width' | 'height', low: 'left' | 'bottom', high: 'right' | 'top') {
    if (!boxIsSum(this.compiled, piece)) {
      const lines = this.lines(piece);
      return lines && bounds(lines.stitch)[what];
    }
    const [cut, sides] = [this.part(piece.name, { what }), this.sides(piece)];
    return cut === undefined || !sides ? undefined : cut - sides[low] - sides[high];
  }

  #planOf(piece: CompiledPiece): PleatPlan | undefined {
    const { pleats, shape } = piece;
    const sides = this.edges(piece.allowance);
    if (!pleats || !sides || (shape?.kind !== 'size' && shape?.kind !== 'finished')) return undefined;
    const finished = shape.kind === 'finished' ? this.length(shape.height) : 0;
    // Every field that is written must have a value, or other pleats than the ones asked for would come out.
    const fields = {
      depth: pleats.depth,
      step: pleats.step,
      lift: pleats.lift,
      head: pleats.head,
      height: pleats.height,
      length: shape.kind === 'size' ? shape.height : undefined,
    };
    const values: { [field in keyof typeof fields]?: number } = {};
    for (const [field, written] of Object.entries(fields)) {
      if (!written) continue;
      const value = this.length(written);
      if (value === undefined) return undefined;
      values[field as keyof typeof fields] = value;
    }
    if (finished === undefined) return undefined;
    if (shape.kind === 'finished') values.height ??= finished + sides.bottom + sides.top;
    const strip = { allowance: { bottom: sides.bottom, top: sides.top }, from: pleats.from };

    let plan;
    if (pleats.folds) {
      const folds = pleats.folds.map((fold) => this.length(fold));
      if (folds.includes(undefined)) return undefined;
      const { length, height } = values;
      plan = planFolds({
        ...strip,
        folds: folds as number[],
        ...(length !== undefined && { length }),
        ...(height !== undefined && { height }),
      });
    } else {
      const pockets = pleats.pockets && this.number(pleats.pockets);
      if (pockets === undefined) return undefined;
      const { depth = 0, step = 0, ...others } = values;
      plan = planPleats({ ...strip, ...others, pockets, depth, step, bottoms: pleats.bottoms });
    }
    if (plan.ok) return plan.value;
    this.report(explainPleats(plan.fault, piece, this.compiled.file, (mm) => this.say(mm)));
    return undefined;
  }
}

const reckonings = new WeakMap<Pattern, Reckoning>();

/** Keeps how a pattern was worked out, for whoever works out its steps later. */
export function keepReckoning(pattern: Pattern, reckoning: Reckoning): void {
  reckonings.set(pattern, reckoning);
}

/** How a pattern was worked out; undefined for one that did not come from resolveProject. */
export const reckoningOf = (pattern: Pattern): Reckoning | undefined => reckonings.get(pattern);
