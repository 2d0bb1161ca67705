export * from './fault.ts';
export * from './edition.ts';
export * from './closest.ts';
export { LONGEST, parseLength, readLength, type Written } from './parse.ts';
export { formatLength, formatMixed, minus, nearly, THIN, type LengthOptions, type Style } from './format.ts';
export { skipBlanks, type Manner } from './amount.ts';
