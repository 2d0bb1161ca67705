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
import { depthsOf } from './edge-pleats.ts';
import { nameTerm, numberTerm, product, quotient, rawTerm, sum, type Signed, type Term } from './terms.ts';
import type { Compiled } from './compile.ts';
import type { RawValue } from './raw-value.ts';
import { pleatedAlong, type CompiledPiece, type CompiledPleats, type Edges } from './shapes.ts';

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
  const { shape, pleats, edgePleats, allowance } = piece;
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
    case 'stitch line':
    case 'cut line':
      return undefined;
    case 'takeup':
      return takeUp();
    case 'pleat depth':
      return edgePleats && (edgePleats.depth ? sum(['+', given(edgePleats.depth)]) : depthOfEach());
    case 'pleated edge':
      return pleatedEdge();
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

  /** Whether a measure of the file has taken the name of a part that has no formula: only measuring gives it. */
  function isHidden(other: Part, name: string): boolean {
    const hides = compiled.measures.has(partName(singleBlanks(name), other));
    return hides && !derivedFormula(compiled, compiled.pieces.get(name)!, other);
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
    if (shape?.kind === 'finished') {
      const pleated = pleatedAlong(piece, what) ? plusTakeUp('+') : [];
      return sum(['+', given(shape[what])], ...pleated, ...both('+', allowance, low, high));
    }
    if (shape?.kind === 'circle') return sum(['+', given(shape.diameter)], ...both('+', allowance, 'edge', 'edge'));
    // An inset takes its own amount off both sides of a rectangle alone; of a slanting edge it takes more.
    if (shape?.kind !== 'like' || (shape.inset && !isRectangle(compiled, piece))) return undefined;
    const same: Part = { what: what === 'width' ? 'width' : 'length' };
    if (isHidden(same, shape.piece)) return undefined;
    return sum(['+', of(same, shape.piece)], ...both('-', shape.inset, low, high));
  }

  function inside(what: 'width' | 'height', low: 'left' | 'bottom', high: 'right' | 'top'): Term | undefined {
    // A panel whose pleats have a height of their own is as high as they say.
    const isSaid = shape?.kind === 'finished' && !(what === 'height' && pleats?.height);
    if (isSaid) return sum(['+', given(shape[what])]);
    if (shape?.kind === 'circle') return sum(['+', given(shape.diameter)]);
    if (!shape || shape.kind === 'outline' || shape.kind === 'half circle') return undefined;
    if (shape.kind === 'like' && !shape.inset && !allowance) {
      const other = compiled.pieces.get(shape.piece)!;
      const isFolded = pleatedAlong(other, what) || (what === 'height' && other.pleats);
      if (!isFolded) return isHidden(part, shape.piece) ? undefined : of(part, shape.piece);
      // What is cut like a pleated strip lies flat.
      return sum(['+', of({ what })], ...both('-', other.allowance, low, high));
    }
    if (!isRectangle(compiled, piece)) return undefined;
    if (pleatedAlong(piece, what)) return pleatedEdge();
    return sum(['+', of({ what })], ...both('-', allowance, low, high));
  }

  /** What the pleats of an edge take, by their number and depth or by the length they leave. */
  function takeUp(): Term | undefined {
    if (!edgePleats) return undefined;
    const { kind, count, depth, to } = edgePleats;
    if (count && depth) return product(numberTerm(depthsOf(kind)), rawTerm(count, compiled.grid), given(depth));
    const flat = to && flatEdge();
    return flat && sum(...flat, ['-', given(to)]);
  }

  function depthOfEach(): Term | undefined {
    if (!edgePleats?.count) return undefined;
    const folds = product(numberTerm(depthsOf(edgePleats.kind)), rawTerm(edgePleats.count, compiled.grid));
    return quotient(of({ what: 'takeup' }), { ...folds, loose: true });
  }

  function pleatedEdge(): Term | undefined {
    if (!edgePleats) return undefined;
    if (edgePleats.to) return sum(['+', given(edgePleats.to)]);
    const what = pleatedAlong(piece, 'width') ? 'width' : 'height';
    if (shape?.kind === 'finished') return sum(['+', given(shape[what])]);
    const flat = flatEdge();
    return flat && sum(...flat, ...plusTakeUp('-'));
  }

  /** The edge of a rectangle before it is pleated, between its stitch lines. */
  function flatEdge(): [Signed, ...Signed[]] | undefined {
    if (shape?.kind !== 'size') return undefined;
    return pleatedAlong(piece, 'width')
      ? [['+', of({ what: 'width' })], ...both('-', allowance, 'left', 'right')]
      : [['+', of({ what: 'length' })], ...both('-', allowance, 'bottom', 'top')];
  }

  function plusTakeUp(sign: '+' | '-'): Signed[] {
    return [[sign, of({ what: 'takeup' })]];
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
