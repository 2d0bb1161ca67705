import { expect, test } from 'vitest';
import { cutList } from '../../../src/core/index.ts';
import { lessonOnPaper } from '../../../src/site/content/lesson-on-paper.ts';
import { folioIn } from '../../core/questions/demo.ts';

test('each piece that is cut has room on paper for what it measures, by the name that the page keeps', () => {
  const pieces = cutList(folioIn('inch')).map(({ piece }) => piece);
  const on = (text: string) => lessonOnPaper(text, { pieces }).picks;
  const all = on('<CheckPieces />');
  expect(all.map((pick) => pick.kind === 'piece' && pick.subject)).toEqual(
    pieces.map((piece) => ({ piece, stage: 'cut' })),
  );
  expect(pieces).toContain('facing');
  expect(all).toContainEqual({ ...on('<MyPiece piece="facing">\n\n</MyPiece>')[0], words: [] });
  expect(lessonOnPaper('<CheckPieces />').picks).toEqual([]);
});
