/** What a file says beyond sizes, such as the lengths of its steps, worked out with the numbers of a pattern. */
import { formatLength, singleBlanks, type Place, type Result } from '../measure/index.ts';
import { Amounts } from './amounts.ts';
import { compiled } from './compile.ts';
import { featuresOf } from './ways.ts';
import { partName, type NumberedPart } from './names.ts';
import type { Pattern } from './pattern.ts';
import type { Quantity } from '../formula/index.ts';
import type { RawValue } from './raw-value.ts';

/** Reads written values with the measures and options of a pattern, and in the edition they were worked out in. */
export class PatternAmounts extends Amounts {
  readonly #pattern: Pattern;
  /** Where the value stands that is being read. */
  #place: Place = [];

  constructor(pattern: Pattern) {
    const project = compiled(pattern.origin.file);
    super(project, pattern.origin.edition, { on: featuresOf(pattern, project), size: pattern.sizes?.chosen });
    this.#pattern = pattern;
  }

  override quantity(rawValue: RawValue): Quantity | undefined {
    this.#place = rawValue.place;
    return super.quantity(rawValue);
  }

  override say(mm: number): string {
    const { edition, grid } = this.#pattern;
    return formatLength(mm, edition, { grid });
  }

  protected override named(name: string): Result<Quantity> | undefined {
    const { measures, parts } = this.compiled;
    if (!measures.has(name) && !parts.has(name)) return undefined;
    const measure = this.#measure(name);
    const part = measures.has(name) ? undefined : parts.get(name);
    if (!measure && part && 'n' in part.part) this.#lacks(part.piece, part.part);
    return this.found(name, measure && { value: measure.value, dimension: measure.dimension });
  }

  #measure(name: string): Pattern['measures'][string] | undefined {
    const { measures } = this.#pattern;
    return Object.hasOwn(measures, name) ? measures[name] : undefined;
  }

  /** Reports a part that a pleated piece does not have. One whose pleats do not go has its own finding. */
  #lacks(piece: string, part: NumberedPart): void {
    let last = 0;
    while (this.#measure(partName(singleBlanks(piece), { ...part, n: last + 1 }))) last++;
    if (last > 0) this.reportLacking(this.compiled.pieces.get(piece)!, part, last, this.#place);
  }
}
