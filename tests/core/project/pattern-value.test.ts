/**
 * A pattern is a value: what is asked of a copy is what the copy says, and never what another one was asked before. Each
 * answer of a copy is held against that of a pattern resolved afresh, of which nothing has been asked yet.
 */
import { describe, expect, it } from 'vitest';
import { check, makeUp, matchingOf, oncePer, resolveProject, type Pattern } from '../../../src/core/index.ts';
import { folio, lines, notionsPouch, project, resolved, shelf, tableSet } from './files.ts';

const demos = { folio: folio(), 'notions pouch': notionsPouch(), 'table set': tableSet() };
const materials = shelf();

/** Steps as a reader meets them: what is done, what it measures and which rows it sews. */
const told = (pattern: Pattern) =>
  makeUp(pattern).map(({ id, title, size, minutes, stitches }) => {
    const rows = stitches.map(({ kind, length, layers, thread }) => ({ kind, length, layers, thread }));
    return { id, title, size, minutes, rows };
  });

describe.each(Object.entries(demos))('a copy of the %s', (_, file) => {
  const afresh = (): Pattern => resolveProject(file, { edition: 'inch', materials });

  it('has its steps and findings, whether the first was asked before or not', () => {
    const [steps, findings] = [told(afresh()), check(afresh())];
    expect(steps.length).toBeGreaterThan(2);
    expect(told({ ...afresh() })).toEqual(steps);
    expect(check({ ...afresh() })).toEqual(findings);
    const first = afresh();
    makeUp(first);
    expect(told({ ...first })).toEqual(steps);
    expect(check({ ...first })).toEqual(findings);
    expect(told(first)).toEqual(steps);
  });

  it('shares the work that was done for the first', () => {
    const first = afresh();
    expect(makeUp({ ...first })).toBe(makeUp(first));
  });

  it('has them with another setting of a drawing, too', () => {
    const first = afresh();
    const findings = check(first);
    const fitted = { ...first, fit: { width: 80, height: 60 } };
    expect(told(fitted)).toEqual(told(first));
    expect(check(fitted)).toEqual(findings);
  });

  it('keeps its numbers when it is told in other words', () => {
    const first = afresh();
    const numbers = (pattern: Pattern) =>
      makeUp(pattern).map(({ id, size, minutes, stitches }) => ({
        ...{ id, size, minutes },
        rows: stitches.map(({ length, layers, thread, at }) => ({ length, layers, thread, at })),
      }));
    const made = numbers(first);
    expect(numbers({ ...first, grid: { inch: 8, metric: 0.5 } })).toEqual(made);
    expect(numbers({ ...first, edition: 'metric' })).toEqual(made);
    expect(told(first)).toEqual(told(afresh()));
  });

  it('says as much when it was written down and read again', () => {
    const read = JSON.parse(JSON.stringify(afresh())) as Pattern;
    expect(told(read)).toEqual(told(afresh()));
    expect(check(read)).toEqual(check(afresh()));
  });
});

// The plan of a pleated piece holds a function, which no thread takes from another, and which equals itself alone.
describe.each(['notions pouch', 'table set'] as const)('the %s', (name) => {
  const afresh = (): Pattern => resolveProject(demos[name], { edition: 'inch', materials });

  it('says as much when it went through another thread', () => {
    const asked = afresh();
    check(asked);
    for (const cloned of [structuredClone(afresh()), structuredClone(asked)]) {
      expect(told(cloned)).toEqual(told(afresh()));
      expect(check(cloned)).toEqual(check(afresh()));
    }
  });

  it('is equal to its like, whatever either was asked', () => {
    const asked = afresh();
    check(asked);
    expect(asked).toEqual(afresh());
    expect({ ...asked }).toStrictEqual(afresh());
  });
});

const halves = `
title: Halves
units: metric
measures: { seam: { mm: 10 }, deep: { mm: 20, between: [10, 60], step: 5 } }
materials: { outer: { use: cotton, repeat: deep } }
pieces:
  front: { size: [100 mm, 200 mm], from: outer }
  back: { size: [100 mm, 200 mm], from: outer }
cutting: { match: [{ pieces: [front, back], at: [deep, deep] }] }
options: { hemmed: { label: A hem, default: true } }
steps:
  - { hem: front, at: [top], fold: seam, then: deep, when: hemmed }
  - { hem: back, at: [top], fold: seam, then: deep, when: hemmed }
  - { join: [front, back], at: bottom, makes: panel }
`;

describe('a copy with a changed field', () => {
  const heights = (pattern: Pattern) => makeUp(pattern).map(({ makes, size }) => `${makes} ${size.height}`);
  const before = ['front 170', 'back 170', 'panel 320'];

  it('is made up of its own pieces', () => {
    const first = resolved(halves);
    expect(heights(first)).toEqual(before);
    const taller = resolved(halves.replaceAll('200 mm', '240 mm'));
    const copy = { ...first, pieces: taller.pieces };
    expect(heights(copy)).toEqual(['front 210', 'back 210', 'panel 400']);
    expect(heights(first)).toEqual(before);
    expect(heights(copy)).toEqual(heights(taller));
  });

  it('is hemmed and matched by its own measures', () => {
    const first = resolved(halves);
    expect(heights(first)).toEqual(before);
    expect(matchingOf(first).repeats.get('outer')).toBe(20);
    const { measures } = resolved(halves, { values: { deep: 35 } });
    const copy = { ...first, measures };
    expect(heights(copy)).toEqual(['front 155', 'back 155', 'panel 290']);
    expect(matchingOf(copy).repeats.get('outer')).toBe(35);
    expect(matchingOf(copy).matches.get('front')?.at).toBe(35);
    expect(matchingOf(first).matches.get('front')?.at).toBe(20);
  });

  it('takes in the steps of its own options', () => {
    const first = resolved(halves);
    expect(heights(first)).toEqual(before);
    const { options } = resolved(halves, { options: { hemmed: false } });
    expect(heights({ ...first, options })).toEqual(['panel 380']);
  });

  it('reads the lengths of its steps in the edition of its sizes', () => {
    const literal = halves.replaceAll('fold: seam', 'fold: 10 mm');
    const inches = resolved(literal, { edition: 'inch' });
    // 10 mm is 3/8 in on the ruler, and 20 mm is 13/16 in: 200 mm, 7 7/8 in, less both.
    const made = makeUp(inches).map(({ size }) => size.height);
    expect(made[0]).toBeCloseTo(25.4 * (7.875 - 0.375 - 0.8125), 9);
    expect(makeUp({ ...inches, edition: 'metric' }).map(({ size }) => size.height)).toEqual(made);
  });

  it('sews its rows where that edition has them', () => {
    const inches = resolved(`${halves}  - { topstitch: panel, at: left }\n`, { edition: 'inch' });
    const row = (pattern: Pattern) => makeUp(pattern).at(-1)!.stitches[0]!.at.x;
    // 1/8 in inside the edge, as a topstitch is where the step does not say, and not 3 mm.
    expect(row(inches)).toBeCloseTo(25.4 / 8, 9);
    expect(row({ ...inches, edition: 'metric' })).toBe(row(inches));
  });

  it('is held against its own materials', () => {
    const first = resolveProject(demos.folio, { materials });
    const heated = (pattern: Pattern) => lines(check(pattern)).filter((line) => line.includes('too-hot'));
    expect(heated(first)).toEqual([]);
    const melting = Object.fromEntries(
      Object.entries(first.materials).map(([role, one]) => [
        role,
        one.material?.kind === 'cloth' ? { ...one, material: { ...one.material, heat: 40 } } : one,
      ]),
    );
    expect(heated({ ...first, materials: melting })).not.toEqual([]);
    expect(heated(first)).toEqual([]);
  });

  it('tells a fault as often as it is asked', () => {
    const faulty = halves.replace('fold: seam, then: deep, when', 'fold: seam, then: deep * deep, when');
    const first = resolved(faulty);
    const findings = lines(check(first));
    expect(findings.filter((line) => line.includes('wrong-kind'))).toHaveLength(1);
    expect(lines(check({ ...first, pieces: { ...first.pieces } }))).toEqual(findings);
    expect(lines(check({ ...first, title: 'Another' }))).toEqual(findings);
    expect(lines(check(first))).toEqual(findings);
  });
});

it('a fold that a step asks for and the piece lacks is told at the step', () => {
  const strip = `
title: Strip
units: metric
measures: { deep: { mm: 30 } }
pieces:
  strip: { size: [100 mm, strip length], pleats: { pockets: 2, depth: deep, step: 20 mm } }
  panel: { size: [100 mm, 200 mm] }
steps:
  - { hem: panel, at: [top], fold: strip fold 9, then: 5 mm }
`;
  const findings = lines(check(resolved(strip)));
  expect(findings.filter((line) => line.includes('no-such-part'))).toEqual([
    'error steps > 0 > fold: no-such-part: “strip” has only 4 folds, but number 9 is asked for.',
  ]);
});

describe('what is worked out once for a pattern', () => {
  const counted = () => {
    let times = 0;
    const ask = oncePer((pattern: Pattern, text: string) => `${++times} ${pattern.title} ${text}`);
    return ask;
  };

  it('is worked out once for it and its copies, and anew for one that differs', () => {
    const ask = counted();
    const first = resolved(halves);
    expect(ask(first, 'a')).toBe('1 Halves a');
    expect(ask({ ...first }, 'a')).toBe('1 Halves a');
    expect(ask(first, 'b')).toBe('2 Halves b');
    const copy = { ...first, title: 'Other' };
    expect(ask(copy, 'a')).toBe('3 Other a');
    expect(ask(first, 'a')).toBe('1 Halves a');
    expect(ask({ ...copy }, 'a')).toBe('3 Other a');
  });

  it('is anew for one that was changed where it stands', () => {
    const ask = counted();
    const copy = { ...resolved(halves) };
    expect(ask(copy, 'a')).toBe('1 Halves a');
    copy.title = 'Other';
    expect(ask(copy, 'a')).toBe('2 Other a');
  });

  it('is not mixed up with another question', () => {
    const [one, other] = [counted(), counted()];
    const first = resolved(halves);
    one(first, 'a');
    one(first, 'b');
    expect(other(first, 'b')).toBe('1 Halves b');
  });

  it('is not kept for ever more copies', () => {
    const ask = counted();
    const first = resolved(halves);
    for (let n = 1; n <= 20; n++) expect(ask({ ...first, title: String(n) }, 'a')).toBe(`${n} ${n} a`);
    // The latest are kept.
    expect(ask({ ...first, title: '20' }, 'a')).toBe('20 20 a');
    expect(ask({ ...first, title: '1' }, 'a')).toBe('21 1 a');
  });

  it('is anew for two projects that read alike', () => {
    const ask = counted();
    const file = project(halves);
    expect(ask(resolveProject(file), 'a')).toBe('1 Halves a');
    expect(ask(resolveProject({ ...file }), 'a')).toBe('2 Halves a');
  });
});
