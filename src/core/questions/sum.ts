import { evaluate, parseFormula, type Formula, type LineScope, type Quantity, type Scope } from '../formula/index.ts';
import { fail, ok, type Result } from '../measure/index.ts';
import { partnersIn } from './slips.ts';
import type { Partner } from './edits.ts';
import type { Pattern } from '../project/pattern.ts';

/** What a question asks for, at one size: the sum behind it, where its names are found, and what it comes to. */
export type Sum = {
  formula: Formula;
  scope: LineScope;
  /** The measure that the sum works out, where the question asks for one by its name. */
  asked?: string;
  wanted: Quantity;
};

/** A pattern's measures, as a formula asks for them. */
export function scopeOf({ measures, edition, grid }: Pattern): Scope {
  return {
    edition,
    grid,
    known: Object.keys(measures),
    get: (name) => {
      const found = Object.hasOwn(measures, name) ? measures[name]! : undefined;
      return found && ok({ value: found.value, dimension: found.dimension });
    },
  };
}

/**
 * The sum behind a name or a formula. A name that only stands for another name, such as the height of a panel for that
 * of the strip it is folded from, is followed to the sum that works it out.
 *
 * @example sumFor('panel width', pattern).value.formula.text // => 'card width + 2 * ease + 2 * seam'
 */
export function sumFor(of: string, pattern: Pattern): Result<Sum> {
  const scope = scopeOf(pattern);
  const read = parseFormula(of, { names: scope.known! });
  if (!read.ok) return read;
  const value = evaluate(read.value, scope);
  if (!value.ok) return fail(value.fault);
  const { tree } = read.value;
  const formula = behind(read.value, pattern);
  return ok({ formula, scope, wanted: value.value, ...(tree.kind === 'name' && { asked: tree.name }) });
}

/** Follows bare names to the formula that works them out. */
function behind(formula: Formula, { measures }: Pattern): Formula {
  for (let at = formula; ;) {
    const next = at.tree.kind === 'name' ? measures[at.tree.name]?.formula : undefined;
    if (!next) return at;
    at = next;
  }
}

/**
 * What a measure is taken for: by the words in its name, and, where it is the cut size of a piece under another name,
 * the finished size of that piece.
 */
export function partnersOf(pattern: Pattern): (name: string) => Partner[] {
  const byWords = partnersIn(scopeOf(pattern));
  return (name) => {
    const pieces = Object.values(pattern.measures).filter((measure) => measure.formula?.text === name);
    const finished = pieces
      .flatMap((measure) => byWords(measure.name))
      .filter(({ kind }) => kind === 'finished-for-cut');
    return [...byWords(name), ...finished.slice(0, 1)];
  };
}
