import { cutList, type Pattern, type ProjectFile } from '../../../src/core/index.ts';
import { savedFor } from '../my-piece/view.ts';

/** The pieces to measure, in the order of the cut list; `count`: how many are cut alike. */
export const view = (pattern: Pattern) => ({
  pieces: cutList(pattern).map(({ piece, label, count }) => ({ piece, label, count })),
});

/** What a browser may keep of it: as one `<MyPiece>` for each piece, so that either shows what was written in the other. */
export const measured = ({ pieces }: ProjectFile) =>
  Object.keys(pieces).map((piece) => savedFor({ piece, stage: 'cut' }));
