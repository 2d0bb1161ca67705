/**
 * The state of studies. The pleats' numbers worked out by hand: first fold = seam + lift + depth = 1/4 + 1/4 + 2 1/4 =
 * 2 3/4 in; the strip takes the depth of every pocket twice, so that 1/4 in more depth takes 5 * 2 * 1/4 = 2 1/2 in.
 */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { AllowanceState } from '../../../components/words/allowance-study/state.svelte.ts';
import { DriftState } from '../../../components/words/drift-study/state.svelte.ts';
import { PleatState } from '../../../components/words/pleat-study/state.svelte.ts';
import { SeamState } from '../../../components/words/seam-study/state.svelte.ts';
import type { Learner } from '../../../components/page/learner.svelte.ts';
import { addressNow } from '../../../components/page/address.ts';
import { editionChoice } from '../../../components/page/edition.svelte.ts';
import { learner, newPage, plain } from '../lesson.ts';

beforeEach(() => newPage());

const INCH = 25.4;
/** The page follows at once. */
const follow = () => dispatchEvent(new Event('beforeprint'));

describe('the study of pleats', () => {
  const study = (mine: Learner = learner()) => new PleatState(mine, 'pocket strip');

  test('folds the strip from the flat one to the last fold, and says what each makes', () => {
    vi.stubGlobal('matchMedia', () => ({ matches: true }));
    const pleats = study();
    pleats.makeNext();
    expect([pleats.made, pleats.shown]).toEqual([1, 1]);
    expect(pleats.happened).toContain('Fold 1, a mountain fold, makes the top of pocket 1.');
    for (let fold = 2; fold <= 10; fold++) pleats.makeNext();
    expect(pleats.happened).toContain('The panel is folded');
    pleats.makeNext();
    expect([pleats.made, pleats.folds]).toEqual([10, 10]);
    vi.unstubAllGlobals();
  });

  test('a size moves the strip and the page, and says how much longer it is', () => {
    const mine = learner();
    const pleats = study(mine);
    expect(pleats.piece?.pleats.folds[0]?.at).toBeCloseTo(2.875 * INCH, 6);
    pleats.move('depth', 2.5 * INCH);
    expect(pleats.piece?.pleats.folds[0]?.at).toBeCloseTo(3.125 * INCH, 6);
    follow();
    expect(plain(pleats.happened)).toContain('2½ in longer than in the lesson');
    expect(mine.settledPattern.measures.depth?.value).toBeCloseTo(2.5 * INCH, 6);
    expect(addressNow()).toContain('depth=2+1%2F2+in');
    expect(pleats.changed).toBe(true);
    pleats.back();
    follow();
    expect(pleats.piece?.pleats.folds[0]?.at).toBeCloseTo(2.875 * INCH, 6);
    expect(addressNow()).not.toContain('depth=');
    expect(pleats.changed).toBe(false);
  });

  test('more pockets are more folds, and folds that are no longer there are forgotten', () => {
    const pleats = study();
    pleats.foldTo(10);
    pleats.move('pockets', 6);
    expect(pleats.folds).toBe(12);
    pleats.move('pockets', 4);
    expect([pleats.folds, pleats.made, pleats.shown]).toEqual([8, 8, 8]);
  });
});

describe('the study of allowances', () => {
  test('an allowance changes the cut size once for its edge, and twice for all', () => {
    const mine = learner();
    const study = new AllowanceState(mine, 'flap');
    const cut = () => study.piece!.size.width / INCH;
    // The flap: folio width 4 1/2 less 1/8 at both sides is 4 1/4 finished, and 5 in cut.
    expect(cut()).toBeCloseTo(5, 6);
    study.edge = 'left';
    study.setAllowance(study.allowance + INCH / 16);
    expect(cut()).toBeCloseTo(5.0625, 6);
    expect(plain(study.happened)).toBe(
      'With the left allowance 1⁄16 in more, the cut width is 1⁄16 in more and the cut height is the same.',
    );
    study.edge = 'all';
    study.setAllowance(0);
    expect(cut()).toBeCloseTo(4.25, 6);
    study.back();
    expect(cut()).toBeCloseTo(5, 6);
    expect(study.changed).toBe(false);
    // What was tried here is nobody else's business.
    expect(mine.settledPattern.measures['panel width']?.value).toBeCloseTo(5.25 * INCH, 6);
  });

  test('a piece that is left out is not there, and comes back with it', () => {
    const mine = learner();
    const study = new AllowanceState(mine, 'flap');
    mine.choose('flap', false);
    expect([study.own, study.piece, study.happened]).toEqual([undefined, undefined, '']);
    mine.choose('flap', true);
    expect(study.piece!.size.width).toBeCloseTo(5 * INCH, 6);
  });
});

test('the study of a seam takes both allowances, whichever way it is pressed', () => {
  // 4 1/2 + 5 1/2 in, each less 3/8 in.
  const seam = new SeamState(learner(), { a: '4 1/2 in', b: '5 1/2 in', allowance: 'seam' });
  expect(plain(seam.happened)).toBe('The seam takes ¾ in: the joined piece is 9¼ in wide.');
  seam.set('first', (7 / 16) * INCH);
  expect(plain(seam.happened)).toContain('the joined piece is 9 3⁄16 in wide');
  expect(plain(seam.happened)).toContain('That is 1⁄16 in less than at the start.');
  seam.pressed = 'to second';
  expect(plain(seam.happened)).toContain('the joined piece is 9 3⁄16 in wide');
  seam.set('first', 6 * INCH);
  expect(seam.trouble).toContain('Make it narrower.');
  seam.back();
  expect(seam.changed).toBe(false);
  expect(seam.trouble).toBeUndefined();
});

test('the study of drift adds up seams that err the same way', () => {
  const study = new DriftState(learner(), { of: 'folio width', seams: 2, takes: 1 });
  // Two seams, each 1/32 in too wide, take 1/16 in of 4 1/2 in; twelve take 3/8 in.
  expect(plain(study.happened)).toBe(
    '2 seams, each too wide by 1⁄32 in: at worst 1⁄16 in is lost. Then 4½ in comes out as 4 7⁄16 in.',
  );
  study.setSeams(12);
  expect(plain(study.happened)).toContain('at worst ⅜ in is lost. Then 4½ in comes out as 4⅛ in.');
  study.setOff(0);
  expect(plain(study.happened)).toBe('Every seam is right, and so is the size: 4½ in.');
  study.setOff(INCH / 32);
  expect(study.changed).toBe(true);
  editionChoice.choose('metric');
  expect(plain(study.happened)).toContain('12 seams, each too wide by 1 mm');
  study.back();
  expect(study.changed).toBe(false);
});
