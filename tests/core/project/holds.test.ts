import { describe, expect, it } from 'vitest';
import { check } from '../../../src/core/project/index.ts';
import { lines, resolved } from './files.ts';

/** A strip with three pockets, 60 mm deep, 110 mm wide between the seams, and a plain pouch of 100 x 80 mm inside. */
const bag = (hold: string, strip = 'pockets: 3, depth: 60, step: 20, head: 40') =>
  resolved(`
title: Bag
units: metric
measures: { seam: 5 }
pieces:
  strip: { label: The strip, size: [120, strip length], pleats: { ${strip} } }
  pouch: { finished: [100, 80] }
holds:
  - { ${hold} }
`);

describe('what a pocket must hold', () => {
  it('goes into every pocket, the top one, the bottom one, or one by number', () => {
    const pockets = (where: string) => bag(`what: an ID-1 card, in: ${where}`).holds.map((hold) => hold.pocket);
    expect(pockets('every pocket of strip')).toEqual([1, 2, 3]);
    expect(pockets('each pocket of the strip')).toEqual([1, 2, 3]);
    expect(pockets('strip')).toEqual([1, 2, 3]);
    expect(pockets('top pocket')).toEqual([3]);
    expect(pockets('lowest pocket of Strip')).toEqual([1]);
    expect(pockets('pocket 2 of strip')).toEqual([2]);
    expect(pockets('strip pocket 2')).toEqual([2]);
    expect(pockets('pouch')).toEqual([undefined]);
  });

  it('is measured against its published size, with ease at both sides', () => {
    const { holds } = bag('what: a card to ISO/IEC 7810 ID-1, in: top pocket, ease: 4');
    expect(holds[0]).toMatchObject({
      thing: 'ISO/IEC 7810 ID-1',
      size: { width: 85.6, height: 53.98 },
      fits: true,
      shows: 0,
    });
    expect(holds[0]!.room.width).toBeCloseTo(110 - 85.6 - 8, 9);
    expect(holds[0]!.covered).toBe(1);
    expect(holds[0]!.sentence).toBe(
      'A card to ISO/IEC 7810 ID-1 fits pocket 3 of the strip, with ≈ 24 mm to spare in width.',
    );
  });

  it('can go in turned, or be given by its own size', () => {
    const turned = bag('what: an A7 card, in: top pocket, turned: true').holds[0]!;
    expect(turned.size).toEqual({ width: 105, height: 74 });
    expect(turned.shows).toBe(14);
    expect(turned.covered).toBeCloseTo(60 / 74, 9);
    const own = bag('what: a seed packet, size: [90, 120], in: bottom pocket, cover: 1/3').holds[0]!;
    expect(own).toMatchObject({ thing: 'a seed packet', source: 'project file', fits: true, cover: 1 / 3 });
  });

  it('is said not to fit, with each reason and the likeliest mend', () => {
    const found = (hold: string, strip?: string) => lines(check(bag(hold, strip)));
    expect(found('what: A6, in: pocket 1 of strip, turned: true, ease: 1')).toEqual([
      'error holds > 0 > in: does-not-fit: A6 does not fit pocket 1 of the strip: it is 40 mm too wide. Make strip wider, or the ease smaller.',
    ]);
    expect(found('what: A6, in: every pocket of strip, turned: true, ease: 1')).toEqual([
      expect.stringMatching(/it is 40 mm too wide\. Nor does it fit 2 more\. Make strip wider/u),
    ]);
    expect(found('what: a tall card, size: [90, 150], in: top pocket')).toEqual([
      'error holds > 0 > in: does-not-fit: A tall card does not fit pocket 3 of the strip: only 40 % of it is covered, not 50 % and it stands out 55 mm above the top edge. Make the pockets deeper, or ask for less cover.',
    ]);
    expect(found('what: a note, size: [90, 100], in: top pocket')).toEqual([
      'error holds > 0 > in: does-not-fit: A note does not fit pocket 3 of the strip: it stands out 5 mm above the top edge. Make the head above the top pocket larger.',
    ]);
    expect(found('what: A5, in: pouch, ease: 2')).toEqual([
      'error holds > 0 > in: does-not-fit: A5 does not fit the pouch: it is 52 mm too wide and it is 134 mm too tall. Make pouch wider, or the ease smaller.',
    ]);
    expect(found('what: ID-3, in: pouch, turned: true')).toEqual([
      'error holds > 0 > in: does-not-fit: ID-3 does not fit the pouch: it is 45 mm too tall. Make pouch taller, or the ease smaller.',
    ]);
  });

  it('must be something with a size, in a place that there is', () => {
    const found = (hold: string) => lines(bag(hold).findings);
    expect(found('what: a brick, in: pouch')).toEqual([
      'error holds > 0 > what: unknown-size: No published size is known here for “a brick”. Give its size, as it goes in: [4, 6].',
    ]);
    expect(found('what: an ISO 216 B7 card, in: pouch')).toEqual([
      'error holds > 0 > what: unknown-size: No published size is known here for “an ISO 216 B7 card”. Do you mean “ISO 216 A7”? Or give its size: [4, 6].',
    ]);
    expect(found('what: A7, in: pouhc')).toEqual([
      'error holds > 0 > in: unknown-name: There is no piece called “pouhc”. Do you mean “pouch”?',
    ]);
    expect(found('what: A7, in: pocket 2 of pouch')).toEqual([
      'error holds > 0 > in: unclear-pocket: “pouch” has no pleats and so no pockets to count.',
    ]);
    expect(found('what: A7, in: pocket 4 of strip')).toEqual([
      'error holds > 0 > in: unclear-pocket: “The strip” has 3 pockets, so there is no pocket 4.',
    ]);
    expect(found('what: A7, in: strip, cover: 3')).toEqual([
      'error holds > 0 > cover: not-a-share: A share from 0 to 1 belongs here, such as 2/3, not 3.',
    ]);
  });

  it.each(['slant', 'lower corner'])('is held against a slanting edge, also one called “%s”', (name) => {
    const { holds } = resolved(
      `
title: Bag
measures: {}
pieces:
  bag: { outline: [[0, 0 in], [3 in, 0 in], { at: [8 in, 5 in], edge: right }, [8 in, 12 in], [0, 12 in]], allowance: 0 in }
holds: [{ what: a book, size: [6, 11 1/2], in: bag }]
`.replace('[3 in, 0 in]', `{ at: [3 in, 0 in], edge: ${name} }`),
    );
    // Half an inch above its lower end the bag is 3 1/2 in wide.
    expect(holds[0]!.sentence).toBe('A book does not fit the bag: it is 2 1/2 in too wide.');
  });

  it('is held in a corner that was cut off by the ease alone', () => {
    const cut = resolved(`
title: Bag
measures: {}
pieces: { bag: { finished: [8, 12], corners: { cut off: 2 } } }
holds: [{ what: a book, size: [6, 12], in: bag }]
`);
    expect(cut.pieces.bag!.corners).toHaveLength(4);
    expect(cut.holds[0]!.fits).toBe(true);
  });

  it('goes unchecked where its piece is left out', () => {
    const yaml = `
title: Bag
measures: {}
pieces: { pouch: { size: [5, 5] } }
options: { pouch: { adds: [pouch] } }
holds: [{ what: A4, in: pouch }]
`;
    expect(check(resolved(yaml))).toEqual([]);
    expect(check(resolved(yaml, { options: { pouch: true } }))).toHaveLength(1);
  });

  it('needs the piece named when two are pleated', () => {
    const two = `
title: Bag
units: metric
measures: {}
pieces:
  left: { size: [120, left length], pleats: { pockets: 2, depth: 60, step: 20 } }
  right: { size: [120, right length], pleats: { pockets: 2, depth: 60, step: 20 } }
holds: [{ what: ID-1, in: top pocket }]
`;
    expect(lines(resolved(two).findings)).toEqual([
      'error holds > 0 > in: unclear-pocket: Say of which piece: “top pocket of left”.',
    ]);
  });
});
