/** Stands in for remarks.ts where a browser runs the core: remarks on the file are for its author. */
import type * as Remarks from './remarks.ts';

const nothing = (): void => {};

export const reportBorrowedNames: typeof Remarks.reportBorrowedNames = nothing;
export const noteOffGrid: typeof Remarks.noteOffGrid = nothing;
export const reportApart: typeof Remarks.reportApart = nothing;
export const noteNapAcross: typeof Remarks.noteNapAcross = nothing;
