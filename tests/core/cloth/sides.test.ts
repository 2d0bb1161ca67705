import fc from 'fast-check';
import { expect, test } from 'vitest';
import { edgeOn, flip, fold, gather, lay, rotate, SIDES, trim } from '../../../src/core/cloth/index.ts';
import { boxOf } from '../../../src/core/cloth/size.ts';
import { sewn } from '../../../src/core/cloth/stitch.ts';
import { runs } from '../../random.ts';
import { pathsInside } from '../../../src/core/cloth/paths-inside.ts';
import { lands, piece, rectangle, value } from './works.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

const mm = (min: number, max: number) => fc.integer({ min, max });
const side = fc.constantFrom(...SIDES);

type Move = { from: (typeof SIDES)[number]; share: number; lands: 'over' | 'under'; turns: number; over: boolean };
const move: fc.Arbitrary<Move> = fc.record({
  from: side,
  share: fc.integer({ min: 1, max: 9 }),
  lands,
  turns: fc.integer({ min: 0, max: 3 }),
  over: fc.boolean(),
});

/** A rectangle folded level or upright, turned by quarters and turned over, as often as it can be. */
function moved(start: Work, moves: readonly Move[]): Work {
  return moves.reduce((work, { from, share, lands: to, turns, over }) => {
    const { x, y, width, height } = boxOf(work.plies);
    const part = share / 10;
    const line = {
      bottom: { at: { x, y: y + height * part }, angle: 0 },
      top: { at: { x, y: y + height * (1 - part) }, angle: 180 },
      left: { at: { x: x + width * part, y }, angle: 270 },
      right: { at: { x: x + width * (1 - part), y }, angle: 90 },
    }[from];
    const folded = fold(work, { line, lands: to });
    const turned = value(rotate(folded.ok ? folded.value : work, 90 * turns));
    return over ? value(flip(turned)) : turned;
  }, start);
}

test('a side is where the work ends, however it was folded, turned and turned over, and a row follows it', () => {
  fc.assert(
    fc.property(mm(60, 200), mm(60, 200), fc.array(move, { maxLength: 4 }), side, (w, h, moves, asked) => {
      const work = moved(piece('cloth', rectangle(w, h)), moves);
      const { x, y, width, height } = boxOf(work.plies);
      const edge = value(edgeOn(work, asked));
      const ends = { bottom: y, top: y + height, left: x, right: x + width }[asked];
      const level = asked === 'bottom' || asked === 'top';
      for (const at of [edge.from, edge.to]) expect(level ? at.y : at.x).toBeCloseTo(ends, 4);
      const by = (level ? height : width) / 3;
      const [way] = value(pathsInside(work, [edge], by));
      const { runs: sewnRuns } = sewn(work, 'topstitch', way!).stitches.at(-1)!;
      for (const { from, to } of sewnRuns) {
        for (const at of [from, to]) expect(Math.abs((level ? at.y : at.x) - ends)).toBeCloseTo(by, 4);
      }
    }),
    runs(300),
  );
});

test('a row along a laid work stays on it, at the side it was laid with', () => {
  fc.assert(
    fc.property(
      mm(20, 60),
      mm(20, 60),
      side,
      side,
      side,
      fc.array(move, { maxLength: 2 }),
      (w, h, on, own, asked, moves) => {
        const pocket = moved(piece('pocket', rectangle(w, h)), moves);
        const panel = piece('panel', rectangle(300, 300));
        const edges = [value(edgeOn(panel, on)), value(edgeOn(pocket, own))] as const;
        const laid = value(lay(panel, pocket, { edges, called: { work: 'pocket', nth: 1 } }));
        const { length } = value(edgeOn(pocket, asked));
        const edge = value(edgeOn(laid, `pocket ${asked}`));
        expect(edge.length).toBeCloseTo(length, 4);
        const [way] = value(pathsInside(laid, [edge], 2));
        const itsPlies = laid.plies.filter((ply) => ply.piece === 'pocket');
        const box = boxOf(itsPlies);
        for (const at of way!) {
          expect(at.x).toBeGreaterThan(box.x - 0.01);
          expect(at.x).toBeLessThan(box.x + box.width + 0.01);
          expect(at.y).toBeGreaterThan(box.y - 0.01);
          expect(at.y).toBeLessThan(box.y + box.height + 0.01);
        }
        // What was laid stays where it is when an edge of what it lies on is drawn up or trimmed out of its way.
        const far = ({ bottom: 'top', top: 'bottom', left: 'right', right: 'left' } as const)[on];
        const there = value(edgeOn(laid, far));
        for (const after of [gather(laid, { edge: there, to: 200 }), trim(laid, { edge: there, by: 20 })]) {
          expect(boxOf(value(after).plies.filter((ply) => ply.piece === 'pocket'))).toEqual(box);
        }
      },
    ),
    runs(200),
  );
});
