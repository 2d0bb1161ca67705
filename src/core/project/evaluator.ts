/**
 * Works out the numbers of a project in one edition.
 *
 * Measures, sizes of pieces and pleats may rest on each other in any order, so nothing is worked out before it is asked
 * for, and everything once. What goes round in a ring is reported where the ring closes; what rests on something that
 * has a fault is left out without a word, because the fault itself is reported.
 */
import { drawDarts, takenByDarts } from './darts.ts';
import { formatNumber, LONGEST, ON_MARK, plainName, quote } from '../measure/index.ts';
import { Amounts, type Chosen } from './amounts.ts';
import { bounds, length as lengthOfLine } from '../geometry/index.ts';
import { boxIsSum, drawLines, sizePlace, type Lines } from './lines.ts';
import { derivedFormula, type DerivedFormula } from './derived-formulas.ts';
import { evaluate } from '../formula/index.ts';
import { explainPleats } from './explain.ts';
import { partName } from './names.ts';
import { planFolds, planPleats } from './pleats.ts';
import { planAlong, stretchAlong } from './plan-along.ts';
import type { Compiled, CompiledMeasure } from './compile.ts';
import type { CompiledPiece, Edges } from './shapes.ts';
import type { Formula, Quantity, Scope } from '../formula/index.ts';
import type { Place, Edition, Result } from '../measure/index.ts';
import type { NumberedPart, Part } from './names.ts';
import type { EdgePleats, Size } from './pattern.ts';
import type { PleatPlan } from './pleats.ts';
import type { RawValue } from './raw-value.ts';

/** No measure and no piece is longer than a roll of cloth, in mm: 100 m, as for a length that is typed. */
export const LARGEST = LONGEST;
/** Nor is any piece smaller. */
export const SMALLEST = 1;

/** No ratio of the trade comes near it. */
const LARGEST_NUMBER = 10_000;

/** Nobody can follow more measures that rest on each other in a row, and the stack of calls has an end, too. */
const DEEPEST = 200;

/** The learner's numbers, features and size that hold for one evaluation. */
export type Choices = Chosen & { values: ReadonlyMap<string, number> };

export type Sides = { bottom: number; right: number; top: number; left: number };

const none: Sides = { bottom: 0, right: 0, top: 0, left: 0 };

export class Evaluator extends Amounts {
  readonly #values: Choices['values'];
  /** Worked out already; undefined for what has a fault. */
  readonly #done = new Map<string, unknown>();
  /** The scopes of pleated pieces. */
  readonly #within = new Map<CompiledPiece, Scope>();
  /** Being worked out now, outermost first. */
  readonly #open: { key: string; name: string; place: Place }[] = [];

  constructor(compiled: Compiled, edition: Edition, choices: Choices) {
    super(compiled, edition, choices);
    this.#values = choices.values;
  }

  /** The value of a measure as the learner's choices and the options make it. */
  measure(measure: CompiledMeasure): Quantity | undefined {
    return this.#once(`measure ${measure.name}`, measure.name, measure.place, () => {
      const rawValue = this.rawValueOf(measure);
      if (!rawValue) return undefined;
      const chosen = this.#values.get(measure.name);
      if (chosen !== undefined) return { value: chosen, dimension: measure.kind === 'length' ? 1 : 0 };
      const found = this.quantity(rawValue);
      return found && this.#sensible(found, measure, rawValue) ? found : undefined;
    });
  }

  /** A number that a piece gives, by what formulas call it. */
  part(piece: string, part: Part): number | undefined {
    const of = this.compiled.pieces.get(piece)!;
    const name = partName(piece, part);
    return this.#once(name, name, of.place, () => this.#partOf(of, part, name));
  }

  /** How a piece is pleated; undefined for a piece without pleats and for pleats that do not go. */
  plan(piece: CompiledPiece): PleatPlan | undefined {
    if (!piece.pleats) return undefined;
    return this.#once(`plan ${piece.name}`, `the pleats of ${piece.name}`, piece.place, () => this.#planOf(piece));
  }

  /** How a piece is pleated along an edge; undefined for a piece without such pleats and for those that do not go. */
  along(piece: CompiledPiece): EdgePleats | undefined {
    if (!piece.edgePleats) return undefined;
    const name = `the pleats of ${piece.name}`;
    return this.#once(`along ${piece.name}`, name, piece.place, () => planAlong(this, piece));
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
        shape.isMirrored
          ? swapped(this.sides(this.compiled.pieces.get(shape.piece)!))
          : this.sides(this.compiled.pieces.get(shape.piece)!),
      );
    }
    return this.edges(piece.allowance);
  }

  /** The lengths at the four sides. */
  edges(edges: Edges | undefined): Sides | undefined {
    if (!edges) return none;
    const side = (name: keyof Sides) => {
      const rawValue = edges.byName.get(name) ?? edges.others;
      return rawValue ? this.#notNegative(rawValue) : 0;
    };
    const [bottom, right, top, left] = [side('bottom'), side('right'), side('top'), side('left')];
    if (bottom === undefined || right === undefined || top === undefined || left === undefined) return undefined;
    return { bottom, right, top, left };
  }

  protected override named(name: string): Result<Quantity> | undefined {
    const measure = this.compiled.measures.get(name);
    const part = measure ? undefined : this.compiled.parts.get(name);
    if (!measure && !part) return undefined;
    return this.found(name, measure ? this.measure(measure) : lengthOf(this.part(part!.piece, part!.part)));
  }

  /** The length of an allowance or an inset. */
  #notNegative(rawValue: RawValue): number | undefined {
    const value = this.length(rawValue);
    if (value === undefined || value >= 0) return value;
    const message = `This comes to ${this.say(value)}, which is less than nothing.`;
    this.report({ severity: 'error', place: rawValue.place, code: 'negative', message, amount: -value });
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
  #sensible({ value, dimension }: Quantity, measure: CompiledMeasure, rawValue: RawValue): boolean {
    const place = rawValue.place;
    if (measure.kind === 'count') {
      if (dimension === 0 && Number.isInteger(value) && value >= 0 && value <= 1000) return true;
      const message = `${quote(measure.name)} counts things, so a whole number belongs here.`;
      this.report({ severity: 'error', place, code: 'not-a-count', message });
      return false;
    }
    if (measure.kind === 'number') {
      if (dimension === 0 && value >= 0 && value <= LARGEST_NUMBER) return true;
      const message =
        dimension === 0
          ? `${quote(measure.name)} comes to ${formatNumber(value)}. A plain number here lies between 0 and ${LARGEST_NUMBER}.`
          : `${quote(measure.name)} is a plain number, but this comes to a size.`;
      const fix = dimension === 0 ? 'Check the number.' : 'Write a formula of sizes under “is”.';
      this.report({ severity: 'error', place, code: 'not-a-number', message, fix });
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

  #partOf(piece: CompiledPiece, part: Part, name: string): number | undefined {
    const isPlanned = 'n' in part || (piece.pleats && (part.what === 'length' || part.what === 'height'));
    const plan = isPlanned ? this.plan(piece) : undefined;
    if (isPlanned && !plan) return undefined;
    if (plan && 'n' in part && !this.#has(piece, plan, part)) return undefined;
    const derived = derivedFormula(this.compiled, piece, part, name);
    if (!derived || this.#isMeasured(piece, part, plan)) return this.#measured(piece, part, plan);
    return plan ? this.#planned(piece, part, name) : this.#derived(derived, piece, this.scope);
  }

  /** What a formula comes to, once all that the file gives for it has been looked at. */
  #derived({ formula, from }: DerivedFormula, piece: CompiledPiece, scope: Scope): number | undefined {
    let isWhole = true;
    for (const { rawValue, isAmount } of from) {
      const length = isAmount ? this.#notNegative(rawValue) : this.length(rawValue);
      isWhole &&= length !== undefined;
    }
    if (!isWhole) return undefined;
    const found = evaluate(formula, scope);
    if (found.ok) return found.value.value;
    const { code, message } = found.fault;
    if (code !== 'rests-on-fault') this.report({ severity: 'error', place: sizePlace(piece), code, message });
    return undefined;
  }

  /** A number of a pleated piece by its formula, while its plan is being made from such numbers. */
  #planned(piece: CompiledPiece, part: Part, name = partName(piece.name, part)): number | undefined {
    return this.#once(`planned ${name}`, name, piece.place, () => {
      const derived = derivedFormula(this.compiled, piece, part, name);
      return derived && this.#derived(derived, piece, this.#scopeWithin(piece));
    });
  }

  /** Where the formulas of a pleated piece find their names: those of its own parts before there is a plan. */
  #scopeWithin(piece: CompiledPiece): Scope {
    let scope = this.#within.get(piece);
    if (!scope) {
      const get: Scope['get'] = (name) => {
        const own = this.compiled.measures.has(name) ? undefined : this.compiled.parts.get(name);
        return own?.piece === piece.name
          ? this.found(name, lengthOf(this.#planned(piece, own.part)))
          : this.named(name);
      };
      this.#within.set(piece, (scope = { ...this.scope, get }));
    }
    return scope;
  }

  /** Whether a pleated piece has so many folds or pockets. */
  #has(piece: CompiledPiece, { folds, pockets }: PleatPlan, part: NumberedPart): boolean {
    const last = (part.what === 'fold' ? folds : pockets).length;
    if (part.n <= last) return true;
    this.reportLacking(piece, part, last, this.#open.at(-2)?.place ?? piece.place);
    return false;
  }

  /** Whether a part is measured although it has a formula: one that need not come to what the work measures. */
  #isMeasured(piece: CompiledPiece, part: Part, plan: PleatPlan | undefined): boolean {
    if (part.what === 'stitch line' || part.what === 'cut line') return true;
    if (part.what === 'takeup' || part.what === 'pleat depth' || part.what === 'pleated edge') return false;
    if (!plan) return !boxIsSum(this.compiled, piece);
    if ('n' in part) return plan.from === 'top';
    return part.what === 'length' && plan.trim > 0 && !lengthGiven(piece);
  }

  /** The one place where sizes are measured: on the folded strip, else as the box round the drawn lines. */
  #measured(piece: CompiledPiece, part: Part, plan: PleatPlan | undefined): number | undefined {
    if (plan) {
      const { folds, pockets, stripLength, panelHeight, from } = plan;
      switch (part.what) {
        case 'fold': {
          const { at } = folds[part.n - 1]!;
          return from === 'top' ? stripLength - at : at;
        }
        case 'pocket depth':
          return pockets[part.n - 1]!.depth;
        case 'pocket top':
          return pockets[part.n - 1]!.top;
        default:
          return part.what === 'length' ? stripLength : panelHeight;
      }
    }
    const lines = this.lines(piece);
    if (!lines) return undefined;
    if (part.what === 'stitch line' || part.what === 'cut line') {
      const line = part.what === 'stitch line' ? lines.stitch : lines.cut;
      const own = line.find(({ name }) => plainName(name) === plainName(part.edge ?? ''));
      // An edge that allowances or an inset use up has no length on that line.
      const taken = part.what === 'stitch line' ? takenByDarts(drawDarts(this, piece, lines), own?.name) : 0;
      return part.edge === undefined || own ? lengthOfLine(line, own?.name) - taken : 0;
    }
    if (part.what === 'takeup' || part.what === 'pleat depth' || part.what === 'pleated edge') {
      const flat = stretchAlong(this, piece)?.flat;
      const taken = flat === undefined || part.what === 'takeup' ? 0 : this.part(piece.name, { what: 'takeup' });
      if (flat === undefined || taken === undefined) return undefined;
      const to = piece.edgePleats?.to && this.length(piece.edgePleats.to);
      return part.what === 'takeup' ? flat - (to ?? 0) : flat - taken;
    }
    const isFinished = part.what === 'finished width' || part.what === 'finished height';
    const box = bounds(isFinished ? lines.stitch : lines.cut);
    const along = isFinished ? this.along(piece) : undefined;
    const { width, height } = along ? pleatedSize(box, along) : box;
    return part.what === 'width' || part.what === 'finished width' ? width : height;
  }

  /**
   * The formula of a part as a page may show it: undefined where its text does not say all of it, and where it is not
   * what the work measures.
   */
  formula(piece: CompiledPiece, part: Part): Formula | undefined {
    const derived = derivedFormula(this.compiled, piece, part);
    if (!derived?.sayable) return undefined;
    const plan = piece.pleats && this.plan(piece);
    if (!this.#isMeasured(piece, part, plan)) return derived.formula;
    if (plan) return undefined;
    const [sum, measured] = [evaluate(derived.formula, this.scope), this.part(piece.name, part)];
    const agree = sum.ok && measured !== undefined && Math.abs(sum.value.value - measured) < ON_MARK;
    return agree ? derived.formula : undefined;
  }

  #planOf(piece: CompiledPiece): PleatPlan | undefined {
    const { pleats, shape } = piece;
    const sides = this.edges(piece.allowance);
    if (!pleats || !sides || (shape?.kind !== 'size' && shape?.kind !== 'finished')) return undefined;
    const finished = shape.kind === 'finished' ? this.length(shape.height) : 0;
    // Every field that the file has must have a value, or other pleats than the ones asked for would come out.
    const fields = {
      depth: pleats.depth,
      step: pleats.step,
      lift: pleats.lift,
      head: pleats.head,
      height: pleats.height,
      length: lengthGiven(piece),
    };
    const values: { [field in keyof typeof fields]?: number } = {};
    for (const [field, rawValue] of Object.entries(fields)) {
      if (!rawValue) continue;
      const value = this.length(rawValue);
      if (value === undefined) return undefined;
      values[field as keyof typeof fields] = value;
    }
    if (finished === undefined) return undefined;
    if (shape.kind === 'finished' && values.height === undefined) {
      const height = this.#planned(piece, { what: 'height' });
      if (height === undefined) return undefined;
      values.height = height;
    }
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
      const wish = { ...strip, ...others, pockets, depth, step, bottoms: pleats.bottoms };
      plan = planPleats(wish, {
        fold: (n) => this.#planned(piece, { what: 'fold', n }) ?? NaN,
        panelHeight: () => this.#planned(piece, { what: 'height' }) ?? NaN,
      });
    }
    // A sum without a value has been reported.
    if (plan.ok) return plan.value.runs.every(({ end }) => Number.isFinite(end)) ? plan.value : undefined;
    this.report(explainPleats(plan.fault, piece, this.compiled.file, (mm) => this.say(mm)));
    return undefined;
  }
}

const swapped = (sides: Sides | undefined): Sides | undefined =>
  sides && { ...sides, left: sides.right, right: sides.left };

/** The size of a box once the pleats along one of its edges are folded. */
export const pleatedSize = ({ width, height }: Size, { from, takeUp }: EdgePleats): Size =>
  from === 'left' ? { width: width - takeUp, height } : { width, height: height - takeUp };

const lengthOf = (value: number | undefined): Quantity | undefined =>
  value === undefined ? undefined : { value, dimension: 1 };

/** What the file gives for the length of a strip. */
const lengthGiven = ({ shape }: CompiledPiece): RawValue | undefined =>
  shape?.kind === 'size' ? shape.height : undefined;
