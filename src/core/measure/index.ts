export * from './diagnostic.ts';
export * from './edition.ts';
export * from './closest.ts';
export { clockTime } from './clock.ts';
export { listed } from './listed.ts';
export { plainName, singleBlanks } from './names.ts';
export { skipBlanks, endOfText, type ReadingMode } from './amount.ts';
export { LONGEST, parseLength, readLength, type WrittenLength } from './parse.ts';
export { formatLength, formatMixed, formatNumber, THIN, type LengthOptions, type Style } from './format.ts';
