/** Lengths of any length, and plain numbers that are no lengths. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/core/project/index.ts';
import { lines, resolved, shelf } from './files.ts';

const said = (yaml: string) => lines(resolved(yaml).findings);

describe('a length', () => {
  it('may be as long as a binding or a curtain rail', () => {
    const file = readFileSync(new URL('../../fixtures/wrong/long-lengths.yaml', import.meta.url), 'utf8');
    for (const edition of ['inch', 'metric'] as const) {
      const { measures, findings } = resolved(file, { edition });
      expect(findings).toEqual([]);
      expect(measures['run']!.value).toBeCloseTo(290 * 25.4, -1);
      expect(measures['ratio']).toMatchObject({ value: 1.5, dimension: 0 });
      expect(measures['wide']).toMatchObject({ dimension: 1 });
    }
    expect(resolved(file).measures['run']!.value).toBeCloseTo(290 * 25.4, 9);
    expect(resolved(file).measures['wide']!.value).toBeCloseTo(30 * 25.4, 9);
  });

  it('ends with the roll', () => {
    expect(said('title: T\nunits: metric\nmeasures: { rail: 60 m, all: 2 * rail }\npieces: {}')).toEqual([
      'error measures > all: too-large: “all” comes to 120000 mm. That is more than 100 m, longer than a roll of cloth. Check the unit.',
    ]);
  });
});

describe('a formula without any length', () => {
  it('is a plain number, and used as a length an error that says what to write', () => {
    const file = (pieces: string) =>
      `title: T\nmeasures: { ratio: { is: 3/2 }, twice: 2 * ratio }\npieces: { p: { size: ${pieces} } }`;
    expect(resolved(file('[4, 4 in * ratio]')).pieces['p']!.size.height).toBeCloseTo(6 * 25.4, 9);
    const fix = 'If “ratio” is meant as a length, write “3/2 in” there.';
    expect(said(file('[ratio, 4]'))).toEqual([
      `error pieces > p > size > 0: wrong-kind: A length belongs here, but “ratio” is a plain number. ${fix}`,
    ]);
    expect(said(file('[twice, 4]'))).toEqual([
      `error pieces > p > size > 0: wrong-kind: A length belongs here, but “twice” is a plain number. ${fix}`,
    ]);
    expect(said(file('[ratio + 1 in, 4]'))).toEqual([
      `error pieces > p > size > 0: kinds-differ: “1 in” is a length and “ratio” a plain number. They cannot be added. ${fix}`,
    ]);
  });

  it('has the unit of the home edition in what is to be written', () => {
    expect(said('title: T\nunits: metric\nmeasures: { n: { is: 6 } }\npieces: { p: { size: [n, 40] } }')).toEqual([
      'error pieces > p > size > 0: wrong-kind: A length belongs here, but “n” is a plain number. If “n” is meant as a length, write “6 mm” there.',
    ]);
  });

  it('is a length again with its unit', () => {
    const { measures } = resolved('title: T\nmeasures: { a: { is: 3/2 in }, b: 3/2, c: { is: 1 1/2 in } }\npieces: {}');
    expect(Object.values(measures).map(({ value }) => value.toFixed(9))).toEqual(Array(3).fill('38.100000000'));
  });
});

describe('a piece cut in one', () => {
  const onCloth = (piece: string, edition: 'inch' | 'metric' = 'inch') =>
    lines(
      check(
        resolved(`title: T\nmeasures: {}\nmaterials: { a: quilting cotton }\npieces: { run: { from: a, ${piece} } }`, {
          materials: shelf(),
          edition,
        }),
      ),
    );

  it('may be as long as it likes along the cloth, and no wider than the cloth across it', () => {
    expect(onCloth('size: [20, 200]')).toEqual([]);
    expect(onCloth('size: [200, 20], grain: crosswise')).toEqual([]);
    expect(onCloth('size: [200, 20], grain: any')).toEqual([]);
    expect(onCloth('size: [200, 2], may be joined: true')).toEqual([]);
    expect(onCloth('size: [20, 20], grain: bias')).toEqual([]);
    expect(onCloth('size: [60, 20]')).toEqual([
      'error pieces > run: wider-than-cloth: “run” needs 60 in across the cloth, cut lengthwise. “Quilting cotton” is 42 in wide. Cut it crosswise (grain: crosswise), let it be joined (may be joined: true), or take a wider cloth.',
    ]);
    expect(onCloth('size: [60, 60], grain: any')).toEqual([
      'error pieces > run: wider-than-cloth: “run” needs 60 in across the cloth, cut either way. “Quilting cotton” is 42 in wide. Let it be joined (may be joined: true), or take a wider cloth.',
    ]);
    expect(onCloth('size: [60, 2], grain: bias')[0]).toMatch(
      /needs ≈ 43 13\/16 in across the cloth, cut on the bias\./u,
    );
    expect(onCloth('size: [60, 20]', 'metric')[0]).toMatch(/needs 1524 mm across/u);
  });
});
