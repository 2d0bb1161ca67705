import type { Edition } from '../measure/index.ts';

/** 0 a plain number, 1 a length in mm, 2 an area in mm². */
export type Dimension = 0 | 1 | 2;

export type Quantity = { value: number; dimension: Dimension };

/** Where a part of a formula stands in its text: UTF-16 indices, `end` exclusive. */
export type Span = { start: number; end: number };

export type Operator = '+' | '-' | '*' | '/';

/** A plain number; `under` is the denominator when it was written as a fraction. */
export type NumberNode = Span & { kind: 'number'; value: number; under?: number };

/**
 * A length written with its unit: its value in mm, and the edition that the unit belongs to. `other` is its value in the
 * other edition, where it is stated for both; no text says that.
 */
export type LengthNode = Span & { kind: 'length'; value: number; edition: Edition; other?: number };

export type NameNode = Span & { kind: 'name'; name: string };

/** The ratio of a circle’s length round to its width, by its name. */
export type PiNode = Span & { kind: 'pi' };

export type MinusNode = Span & { kind: 'minus'; of: Node };

export type JoinNode = Span & { kind: Operator; left: Node; right: Node };

/** A square root: of an area a length, of a plain number a plain number. */
export type RootNode = Span & { kind: 'root'; of: Node };

export type ExtremeNode = Span & { kind: 'min' | 'max'; of: Node[] };

export type RoundNode = Span & { kind: 'round'; way: 'up' | 'down' | 'nearest'; of: Node; to: Node };

/**
 * A formula taken apart. Brackets leave no node of their own: the shape of the tree says what belongs together, and the
 * span of what they hold takes them in.
 */
export type Node =
  NumberNode | LengthNode | PiNode | NameNode | MinusNode | RootNode | JoinNode | ExtremeNode | RoundNode;

/** A formula that was read well: its text, its tree, and the names in it, each once, in order of appearance. */
export type Formula = { text: string; tree: Node; names: string[] };
