/**
 * The sizes that pieces and pleats give, each as one formula in the project's own names. It is made once for a file;
 * the number, the sentence and the worked sum are all read from it.
 *
 * Some sizes have no formula and are measured: on the drawn outline (a free outline, and what lies inside one with
 * shaped corners), or on the folded strip (pleats given by their fold lines, the panel of a strip of given length, what
 * is trimmed or marked from the top edge). `Evaluator` measures them, all at one place.
 */
import { singleBlanks } from '../measure/index.ts';
import { namesIn, type Formula } from '../formula/index.ts';
import { isRectangle } from './lines.ts';
import { partName, type Part } from './names.ts';
import {
  foldTerm,
  panelHeightTerm,
  pocketDepthTerm,
  pocketTopTerm,
  stripLengthTerm,
  type PleatTerms,
} from './pleat-terms.ts';
import { nameTerm, numberTerm, product, rawTerm, sum, type Signed, type Term } from './terms.ts';
import type { Compiled } from './compile.ts';
import type { RawValue } from './raw-value.ts';
import type { CompiledPiece, CompiledPleats, Edges } from './shapes.ts';

export type DerivedFormula = {
  formula: Formula;
  /** Whether the text of the formula says all of it. */
  sayable: boolean;
  /** What the file gives for it beside names of its own: each a length, and an amount at an edge not below zero. */
  from: readonly { rawValue: RawValue; isAmount: boolean }[];
};

/** The formula of a part of a piece; undefined for what is measured. It depends on the file alone. */
export function derivedFormula(
  compiled: Compiled,
  piece: CompiledPiece,
  part: Part,
  name = partName(piece.name, part),
): DerivedFormula | undefined {
  const { derived } = compiled;
  const before = derived.get(name);
  if (before || derived.has(name)) return before;
  // A formula that comes back to itself is not yet there; its names then close the ring, and that is reported.
  derived.set(name, undefined);
  const from: DerivedFormula['from'][number][] = [];
  const term = termOf(compiled, piece, part, from);
  const made = term && {
    formula: { text: term.text, tree: term.tree, names: [...namesIn(term.tree)] },
    sayable: term.sayable,
    from,
  };
  derived.set(name, made);
  return made;
}

function termOf(
  compiled: Compiled,
  piece: CompiledPiece,
  part: Part,
  from: DerivedFormula['from'][number][],
): Term | undefined {
  const { shape, pleats, allowance } = piece;
  switch (part.what) {
    case 'width':
      return across('width', 'left', 'right');
    case 'length':
      return pleats ? stripLength() : across('height', 'bottom', 'top');
    case 'height':
      return pleats ? panelHeight() : of({ what: 'length' });
    case 'finished width':
      return inside('width', 'left', 'right');
    case 'finished height':
      return inside('height', 'bottom', 'top');
    default: {
      const terms = pleats && pleatTerms(pleats);
      if (!terms) return undefined;
      if (part.what === 'pocket top') return pocketTopTerm(terms, part.n);
      return part.what === 'fold' ? foldTerm(terms, part.n, of) : pocketDepthTerm(terms, part.n);
    }
  }

  function given(rawValue: RawValue, isAmount = false): Term {
    from.push({ rawValue, isAmount });
    return rawTerm(rawValue, compiled.grid);
  }

  /** Another part, by its name; where a measure of the file has taken that name, by its own formula. */
  function of(other: Part, name = piece.name): Term {
    const called = partName(singleBlanks(name), other);
    const own = compiled.measures.has(called) ? derivedFormula(compiled, compiled.pieces.get(name)!, other) : undefined;
    if (!own) return nameTerm(called);
    from.push(...own.from);
    const { text, tree } = own.formula;
    return { text, tree, loose: !['name', 'number', 'length'].includes(tree.kind), sayable: own.sayable };
  }

  /** The cut size across. */
  function across(what: 'width' | 'height', low: 'left' | 'bottom', high: 'right' | 'top'): Term | undefined {
    if (shape?.kind === 'size') return shape[what] && sum(['+', given(shape[what])]);
    if (shape?.kind === 'finished') return sum(['+', given(shape[what])], ...both('+', allowance, low, high));
    // An inset takes its own amount off both sides of a rectangle alone; of a slanting edge it takes more.
    if (shape?.kind !== 'like' || (shape.inset && !isRectangle(compiled, piece))) return undefined;
    const other = of({ what: what === 'width' ? 'width' : 'length' }, shape.piece);
    return sum(['+', other], ...both('-', shape.inset, low, high));
  }

  function inside(what: 'width' | 'height', low: 'left' | 'bottom', high: 'right' | 'top'): Term | undefined {
    // A panel whose pleats have a height of their own is as high as they say.
    const isSaid = shape?.kind === 'finished' && !(what === 'height' && pleats?.height);
    if (isSaid) return sum(['+', given(shape[what])]);
    if (!shape || shape.kind === 'outline') return undefined;
    if (shape.kind === 'like' && !shape.inset && !allowance) {
      const other = compiled.pieces.get(shape.piece)!;
      if (what === 'width' || !other.pleats) return of(part, shape.piece);
      // What is cut like a pleated strip lies flat.
      return sum(['+', of({ what })], ...both('-', other.allowance, low, high));
    }
    if (!isRectangle(compiled, piece)) return undefined;
    return sum(['+', of({ what })], ...both('-', allowance, low, high));
  }

  /** Twice the length of both edges, or each of them. */
  function both(sign: '+' | '-', edges: Edges | undefined, low: string, high: string): Signed[] {
    const [first, second] = [low, high].map((name) => edgeOf(edges, name));
    if (first && first === second) return [[sign, product(numberTerm(2), given(first, true))]];
    return [first, second].flatMap((edge): Signed[] => (edge ? [[sign, given(edge, true)]] : []));
  }

  function panelHeight(): Term | undefined {
    if (!pleats || pleats.folds) return undefined;
    if (pleats.height) return sum(['+', given(pleats.height)]);
    if (shape?.kind === 'finished') return across('height', 'bottom', 'top');
    if (shape?.kind === 'size' && shape.height && !pleats.head) return undefined;
    const terms = pleatTerms(pleats);
    return terms && panelHeightTerm(terms);
  }

  function stripLength(): Term | undefined {
    if (shape?.kind === 'size' && shape.height) return sum(['+', given(shape.height)]);
    const terms = pleats && pleatTerms(pleats);
    return terms && stripLengthTerm(terms, of);
  }

  function pleatTerms({ pockets, depth, step, lift, head, bottoms, folds }: CompiledPleats): PleatTerms | undefined {
    if (folds || !pockets || !depth) return undefined;
    const term = (rawValue: RawValue | undefined) => rawValue && rawTerm(rawValue, compiled.grid);
    return {
      bottom: term(edgeOf(allowance, 'bottom')),
      top: term(edgeOf(allowance, 'top')),
      pockets: rawTerm(pockets, compiled.grid),
      depth: rawTerm(depth, compiled.grid),
      step: term(step),
      lift: term(lift),
      head: term(head),
      isLevel: bottoms === 'level',
    };
  }
}

/** What the file gives for an edge: its own amount, else that of all edges. */
const edgeOf = (edges: Edges | undefined, name: string): RawValue | undefined =>
  edges?.byName.get(name) ?? edges?.others;
