export type * from './tree.ts';
export { namesIn, parseFormula } from './parse.ts';
export { evaluate, type Scope } from './evaluate.ts';
export { bracketsIn, literal, partsOf, workedText, type Bracket } from './brackets.ts';
export { formatQuantity, type QuantityOptions } from './quantity.ts';
export { slotTexts, texSettings, texText, toTex, type LineScope, type TexLines } from './tex.ts';
export { toWords } from './words.ts';
export { toText, type TextLines } from './text.ts';
