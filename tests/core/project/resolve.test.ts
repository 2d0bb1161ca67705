import { describe, expect, it } from 'vitest';
import { bounds, length, parseFormula } from '../../../src/core/index.ts';
import { check, resolveProject } from '../../../src/core/project/index.ts';
import { lines, project, resolved } from './files.ts';

/** Inches, without the last digits that sums of doubles leave. */
const inches = (mm: number | undefined) => Math.round(((mm ?? Number.NaN) / 25.4) * 1e9) / 1e9;

/** The shortest way to write a project down: no materials, no allowances, hardly a label. */
const packets = `
title: Seed-packet folio
measures:
  packet width: { in: 3 1/4, mm: 83, between: [2 1/2, 4 1/2], step: 1/8, label: Width of your packets }
  ease: { in: 1/4, mm: 6 }
  seam: { in: 1/4, mm: 6 }
  panel width: { is: packet width + 2 * ease + 2 * seam }
pieces:
  pocket strip:
    from: lining
    cut: 2
    size: [panel width, pocket strip length]
    pleats: { pockets: 3, depth: 2 3/4, step: 3/4, from: bottom }
holds:
  - { what: a card to ISO/IEC 7810 ID-1, in: top pocket, ease: 1/8 }
options:
  zip: { label: With the zipped pocket, default: true }
finished: { of: folio, width: 8, height: 5 1/4 }
`;

describe('a short project file', () => {
  it('gives everything that follows from it', () => {
    const pattern = resolved(packets);
    expect(lines(check(pattern))).toEqual([]);
    expect(inches(pattern.measures['panel width']?.value)).toBe(4.25);
    const strip = pattern.pieces['pocket strip'];
    expect(strip).toMatchObject({ count: 2, material: 'lining', grain: 'lengthwise', nap: 'any' });
    // Up 3, down 2 3/4, up 3 1/2, down 2 3/4, up 3 1/2, down 2 3/4, and 3 up to the raw edge.
    expect(inches(strip?.pleats?.stripLength)).toBe(21.25);
    expect(inches(strip?.size.height)).toBe(21.25);
    expect(inches(strip?.sewn.height)).toBe(4.25);
    expect(pattern.holds.map((hold) => [hold.pocket, hold.fits])).toEqual([[3, true]]);
    expect(pattern.options).toEqual({ zip: { label: 'With the zipped pocket', on: true, default: true } });
    expect(pattern.finished).toEqual({ of: 'folio', width: 8 * 25.4, height: 5.25 * 25.4 });
  });

  it('moves what is stated once to the other edition’s marks', () => {
    const pattern = resolved(packets, { edition: 'metric' });
    expect(pattern.measures['panel width']?.value).toBe(107);
    // 2 3/4 in is 69.85 mm and 3/4 in 19.05 mm: 70 and 19 on a ruler.
    expect(pattern.pieces['pocket strip']?.pleats?.pockets[0]?.depth).toBe(70);
    expect(pattern.pieces['pocket strip']?.pleats?.stripLength).toBe(12 + 70 + 2 * 19 + 6 * 70);
    expect(pattern.measures['packet width']?.adjustable).toEqual({
      kind: 'length',
      min: 64,
      max: 114,
      step: 1,
      lesson: 83,
    });
    expect(resolved(packets).measures['packet width']?.adjustable?.step).toBe(25.4 / 8);
  });

  it('is read once for the same file', () => {
    const file = project(packets);
    const [first, second] = [resolveProject(file), resolveProject(file)];
    expect(first.measures['panel width']?.formula).toBe(second.measures['panel width']?.formula);
    expect(JSON.stringify(second)).toBe(JSON.stringify(first));
  });
});

describe('measures', () => {
  it('are lengths, formulas or counts, written short or with a label', () => {
    const { measures, findings } = resolved(`
title: Measures
measures:
  seam: 1/4
  hem: 2 cm
  number: 12
  pockets: { count: 5, between: [4, 6], label: Number of pockets }
  half: pockets / 2
  twice: { is: 2 * seam, label: Both seams, note: for both sides }
pieces: {}
`);
    expect(lines(findings)).toEqual([]);
    expect(measures['seam']).toEqual({ name: 'seam', label: 'seam', value: 6.35, dimension: 1, source: 'stated' });
    // 2 cm, stated in the metric edition, is 13/16 in on the inch ruler.
    expect(inches(measures['hem']?.value)).toBe(0.8125);
    expect(inches(measures['number']?.value)).toBe(12);
    expect(measures['pockets']).toMatchObject({
      value: 5,
      dimension: 0,
      adjustable: { kind: 'count', min: 4, max: 6, step: 1, lesson: 5 },
    });
    expect(measures['half']).toMatchObject({ value: 2.5, dimension: 0, source: 'derived' });
    expect(measures['twice']).toMatchObject({
      label: 'Both seams',
      note: 'for both sides',
      value: 12.7,
      source: 'derived',
    });
  });

  it('mean millimetres in a project at home in the metric edition', () => {
    const metric = 'title: Metric\nunits: metric\nmeasures: { seam: 7, loop: 1 1/2 in }\npieces: {}\n';
    expect(resolved(metric).edition).toBe('metric');
    expect(resolved(metric).measures['seam']?.value).toBe(7);
    expect(resolved(metric).measures['loop']?.value).toBe(38);
    expect(inches(resolved(metric, { edition: 'inch' }).measures['seam']?.value)).toBe(0.25);
  });

  it('are measured on the grid that the file names', () => {
    const fine = 'title: Fine\ngrid: { in: 1/32, mm: 0.5 }\nmeasures: { tuck: { mm: 2.5 } }\npieces: {}\n';
    expect(resolved(fine).grid).toEqual({ inch: 32, metric: 0.5 });
    expect(inches(resolved(fine).measures['tuck']?.value)).toBe(3 / 32);
  });
});

describe('a learner’s values', () => {
  const file = project(packets);
  const refusals = (values: Record<string, number>, edition: 'inch' | 'metric' = 'inch') => {
    const pattern = resolveProject(file, { edition, values });
    expect(pattern.measures['packet width']?.value).toBe(edition === 'inch' ? 82.55 : 83);
    return lines(pattern.findings);
  };

  it('change everything that rests on them', () => {
    const pattern = resolveProject(file, { values: { 'Packet  width': 4 * 25.4 } });
    expect(lines(pattern.findings)).toEqual([]);
    expect(inches(pattern.measures['panel width']?.value)).toBe(5);
    expect(inches(pattern.pieces['pocket strip']?.size.width)).toBe(5);
    expect(pattern.measures['packet width']?.adjustable?.lesson).toBe(82.55);
  });

  it('are refused with a kind sentence when they cannot be used', () => {
    expect(refusals({ 'packet width': 5 * 25.4 })).toEqual([
      'warning values > packet width: value-out-of-range: “Width of your packets” goes from 2 1/2 in to 4 1/2 in here. The lesson’s 3 1/4 in stays.',
    ]);
    expect(refusals({ 'packet width': 40 }, 'metric')).toEqual([
      'warning values > packet width: value-out-of-range: “Width of your packets” goes from 64 mm to 114 mm here. The lesson’s 83 mm stays.',
    ]);
    expect(refusals({ 'packet width': 90 })).toEqual([
      'warning values > packet width: value-off-grid: “Width of your packets” is measured in marks of 1/16 in. The lesson’s 3 1/4 in stays.',
    ]);
    for (const value of [Number.NaN, Infinity, -Infinity]) {
      expect(refusals({ 'packet width': value })).toEqual([
        'warning values > packet width: value-not-a-number: “Width of your packets” needs a number. The lesson’s 3 1/4 in stays.',
      ]);
    }
    expect(refusals({ 'packet with': 90 })).toEqual([
      'warning values > packet with: value-unknown: There is no measure called “packet with” to change. Do you mean “packet width”?',
    ]);
    expect(refusals({ 'panel width': 90 })).toEqual([
      'warning values > panel width: value-unknown: “panel width” follows from the others here and cannot be changed.',
    ]);
    expect(refusals(JSON.parse('{"__proto__": 90, "constructor": 1}') as Record<string, number>)).toEqual([
      'warning values > __proto__: value-unknown: There is no measure called “__proto__” to change.',
      'warning values > constructor: value-unknown: There is no measure called “constructor” to change.',
    ]);
  });

  it('of a count are whole', () => {
    const counted = 'title: Counted\nmeasures: { pockets: { count: 5, between: [4, 6] } }\npieces: {}\n';
    expect(resolved(counted, { values: { pockets: 6 } }).measures['pockets']?.value).toBe(6);
    expect(lines(resolved(counted, { values: { pockets: 5.5 } }).findings)).toEqual([
      'warning values > pockets: value-not-whole: “pockets” is a whole number. The lesson’s 5 stays.',
    ]);
  });
});

const pouch = (pieces: string, more = '') => `
title: Pouch
units: metric
measures: { seam: 6, width: 120, height: 80, corner: 20 }
pieces:
${pieces}
${more}`;

describe('pieces', () => {
  it('take their allowance off a cut size, or add it to a finished size', () => {
    const { pieces, findings } = resolved(
      pouch(`
  front: { size: [width, height] }
  back: { finished: [width, height], allowance: { top: 20, others: 10 } }
  patch: { size: [width, height], allowance: 0 }
  tab: { finished: [width, height], allowance: { left: 1 cm } }`),
    );
    expect(lines(findings)).toEqual([]);
    expect(pieces['front']).toMatchObject({ size: { width: 120, height: 80 }, sewn: { width: 108, height: 68 } });
    expect(pieces['back']).toMatchObject({
      size: { width: 140, height: 110 },
      sewn: { width: 120, height: 80 },
      allowance: { bottom: 10, right: 10, top: 20, left: 10 },
    });
    expect(bounds(pieces['back']!.outline)).toEqual({ x: 10, y: 10, width: 120, height: 80 });
    expect(pieces['patch']?.sewn).toEqual({ width: 120, height: 80 });
    expect(pieces['tab']?.size).toEqual({ width: 130, height: 80 });
  });

  it('can be like another, with the same seams, or set into it', () => {
    const { pieces, findings, measures } = resolved(
      pouch(`
  front: { finished: [width, height], corners: { at: [top left, top right], round: corner } }
  lining: { like: front }
  interfacing: { like: Front, inset: seam }
  strip: { like: lining, inset: { top: 20, others: 3 } }`),
    );
    expect(lines(findings)).toEqual([]);
    expect(pieces['lining']).toMatchObject({
      size: { width: 132, height: 92 },
      sewn: { width: 120, height: 80 },
      insetFrom: 'front',
    });
    expect(pieces['interfacing']).toMatchObject({ size: { width: 120, height: 80 }, sewn: { width: 120, height: 80 } });
    expect(pieces['interfacing']?.allowance).toEqual({
      bottom: 0,
      right: 0,
      'top-right corner': 0,
      top: 0,
      'top-left corner': 0,
      left: 0,
    });
    expect(pieces['strip']?.size).toEqual({ width: 126, height: 69 });
    expect(measures['strip length']?.value).toBe(69);
  });

  it('have corners rounded or cut off on the stitch line', () => {
    const { pieces, findings } = resolved(
      pouch(`
  flap:
    finished: [width, height]
    corners:
      - { at: bottom left, round: corner }
      - { at: bottom right, cut off: 10 }`),
    );
    expect(lines(findings)).toEqual([]);
    const { outline, cutOutline, size } = pieces['flap']!;
    expect(size).toEqual({ width: 132, height: 92 });
    expect(length(outline, 'bottom-left corner')).toBeCloseTo((Math.PI / 2) * 20, 9);
    expect(length(cutOutline, 'bottom-left corner')).toBeCloseTo((Math.PI / 2) * 26, 9);
    expect(length(outline, 'bottom-right corner')).toBeCloseTo(Math.hypot(10, 10), 9);
  });

  it('can have any straight-edged outline, with edges named', () => {
    const { pieces, findings, measures } = resolved(
      pouch(`
  gusset:
    outline:
      - { at: [0, 0], edge: hem }
      - [width, 0]
      - { at: [width - 20 mm, height], edge: top }
      - [20, height]
    allowance: { hem: 20, others: seam }
    notches: [{ on: hem, at: middle }, { on: top, at: 10 }]`),
    );
    expect(lines(findings)).toEqual([]);
    const { outline, allowance, sewn, notches, size } = pieces['gusset']!;
    expect(outline.map((edge) => edge.name)).toEqual(['hem', 'edge 2', 'top', 'edge 4']);
    expect(allowance).toEqual({ hem: 20, 'edge 2': 6, top: 6, 'edge 4': 6 });
    expect(sewn.width).toBeCloseTo(120, 9);
    expect(sewn.height).toBeCloseTo(80, 9);
    expect(size.height).toBeCloseTo(106, 9);
    expect(notches.map((notch) => notch.edge)).toEqual(['hem', 'top']);
    expect(notches[0]!.at.x).toBeCloseTo(size.width / 2, 9);
    expect(measures['gusset width']?.value).toBe(size.width);
  });

  it('carry notches and fold lines, measured from the raw edge', () => {
    const { pieces, findings } = resolved(
      pouch(`
  front:
    size: [width, height]
    notches: [{ on: top, at: middle, label: zip }, { on: left, at: 15 }]
    folds: [{ at: 10, from: top, label: hem }, { at: width / 2, from: left, kind: mountain }]`),
    );
    expect(lines(findings)).toEqual([]);
    expect(pieces['front']?.notches).toEqual([
      { edge: 'top', at: { x: 60, y: 80 }, label: 'zip' },
      { edge: 'left', at: { x: 0, y: 15 } },
    ]);
    expect(pieces['front']?.folds).toEqual([
      { kind: 'valley', edge: 'top', at: 10, from: { x: 0, y: 70 }, to: { x: 120, y: 70 }, label: 'hem' },
      { kind: 'mountain', edge: 'left', at: 60, from: { x: 60, y: 0 }, to: { x: 60, y: 80 } },
    ]);
  });
});

describe('a size that follows', () => {
  it('has a formula whose text reads back as its tree', () => {
    const { measures } = resolved(packets);
    const derived = Object.values(measures).filter(({ source, formula }) => source !== 'derived' && formula);
    expect(derived.map(({ name }) => name)).toContain('pocket strip fold 6');
    for (const { formula } of derived) {
      expect(parseFormula(formula!.text, { names: Object.keys(measures) })).toEqual({ ok: true, value: formula });
    }
  });

  it('goes on from the piece where a measure has taken its name', () => {
    const { measures } = resolved(`
title: Patch
units: metric
measures: { seam: 6, plain width: 30 }
pieces:
  plain: { size: [100, 50] }`);
    expect(measures['plain finished width']).toMatchObject({ value: 88, formula: { text: '100 mm - 2 * seam' } });
  });

  it('of what is cut like a pleated strip is that of a piece that lies flat', () => {
    const { measures } = resolved(
      pouch(
        `
  strip:
    size: [width, strip length]
    pleats: { pockets: 2, depth: 50, step: 20 }
  fusing: { like: strip }`,
        '',
      ),
    );
    const finished = measures['fusing finished height'];
    expect(finished?.value).toBeCloseTo(measures['strip length']!.value - 12);
    expect(finished?.formula?.text).toMatch(/^fusing height - /u);
  });
});

describe('pleated pieces', () => {
  it('give a name to each fold and pocket', () => {
    const { measures, findings } = resolved(
      pouch(
        `
  strip:
    size: [width, strip length]
    pleats: { pockets: 2, depth: 50, step: 20, bottoms: level }`,
        '',
      ),
    );
    expect(lines(findings)).toEqual([]);
    const value = (name: string) => measures[`strip ${name}`]?.value;
    expect([1, 2, 3, 4].map((n) => value(`fold ${n}`))).toEqual([56, 106, 176, 246]);
    expect([value('length'), value('height'), value('finished height')]).toEqual([322, 82, 70]);
    expect([value('pocket 1 depth'), value('pocket 2 depth'), value('pocket 2 top')]).toEqual([50, 70, 76]);
    expect(measures['strip length']?.formula?.text).toBe('strip height + 2 * (2 * 50 mm + (2 - 1) * 20 mm)');
    expect(measures['strip fold 4']?.formula?.text).toBe('strip fold 3 + strip pocket 2 depth');
    expect(measures['strip fold 1']?.source).toBe('pleats');
  });

  it('are as tall as their finished size asks', () => {
    const { pieces, findings } = resolved(
      pouch('  strip: { finished: [width, 100], pleats: { pockets: 2, depth: 50, step: 20 } }'),
    );
    expect(lines(findings)).toEqual([]);
    expect(pieces['strip']).toMatchObject({
      sewn: { width: 120, height: 100 },
      size: { width: 132, height: 112 + 200 },
    });
  });

  it('can be given by their fold lines, from either edge', () => {
    const folds = (more: string) =>
      resolved(pouch(`  strip: { size: [width, 300], pleats: { ${more} } }`)).pieces['strip']?.pleats;
    const up = folds('folds: [56, 106, 176, 226]');
    const down = folds('folds: [244, 194, 124, 74], from: top');
    expect(up?.pockets.map((pocket) => pocket.depth)).toEqual([50, 50]);
    expect(up?.panelHeight).toBe(100);
    expect(down?.folds).toEqual(up?.folds);
    expect(folds('folds: [56, 106, 176, 226], height: 90')?.trim).toBe(10);
  });

  it('mark their folds from the edge that the file names', () => {
    const { pieces, measures } = resolved(
      pouch('  strip: { size: [width, strip length], pleats: { pockets: 1, depth: 50, step: 20, from: top } }'),
    );
    // The strip is 162 long, with folds at 56 and 106 from the bottom.
    expect(pieces['strip']?.folds.map((fold) => [fold.edge, fold.at, fold.from.y])).toEqual([
      ['top', 106, 56],
      ['top', 56, 106],
    ]);
    expect(measures['strip fold 1']?.value).toBe(106);
  });

  it('are trimmed off the top, stitch line and all', () => {
    const { pieces } = resolved(
      pouch('  strip: { size: [width, 200], pleats: { pockets: 1, depth: 50, step: 20, height: 70 } }'),
    );
    const strip = pieces['strip']!;
    expect(strip.pleats?.trim).toBe(30);
    expect(strip.size.height).toBe(200);
    expect(bounds(strip.outline)).toEqual({ x: 6, y: 6, width: 108, height: 158 });
  });
});

describe('options', () => {
  const bag = `
title: Bag
units: metric
measures: { seam: 6, depth: 30, pockets: { count: 2 } }
materials: { outer: quilting cotton, zip: { use: zip, count: 1 } }
pieces:
  body: { size: [100, 100 + 0], from: outer }
  tie: { size: [20, 300], from: outer }
options:
  Zip: { adds: [zip], drops: [tie], measures: { depth: 45, pockets: 3 } }
  deep: { default: true, measures: { depth: { in: 2, mm: 50 } } }
`.replace('100 + 0', '100');

  it('add, drop and change', () => {
    const off = resolved(bag);
    expect(Object.keys(off.pieces)).toEqual(['body', 'tie']);
    expect(Object.keys(off.materials)).toEqual(['outer']);
    expect([off.measures['depth']?.value, off.measures['pockets']?.value]).toEqual([50, 2]);
    const on = resolved(bag, { options: { zip: true, deep: false } });
    expect(lines(on.findings)).toEqual([]);
    expect(Object.keys(on.pieces)).toEqual(['body']);
    expect(on.materials['zip']).toEqual({ role: 'zip', label: 'zip', use: 'zip', count: 1 });
    expect([on.measures['depth']?.value, on.measures['pockets']?.value]).toEqual([45, 3]);
  });

  it('that nobody knows are named, not obeyed', () => {
    expect(lines(resolved(bag, { options: { zipp: true } }).findings)).toEqual([
      'warning options: unknown-name: There is no option called “zipp”. Do you mean “Zip”?',
    ]);
  });

  it('keep quiet about faults in pieces that they leave out', () => {
    const yaml = `
title: Bag
units: metric
measures: { seam: 6 }
pieces:
  tie: { size: [5, 300] }
options: { tied: { adds: [tie] } }
`;
    expect(resolved(yaml).findings).toEqual([]);
    expect(lines(resolved(yaml, { options: { tied: true } }).findings)).toEqual([
      'error pieces > tie > size: nothing-left: The seam allowances of “tie” use up all of its width.',
    ]);
  });
});

describe('materials', () => {
  const yaml = `
title: Bag
measures: {}
materials: { outer: Quilting Cotton, lining: quiltin cotton }
pieces: { body: { size: [4, 4], from: Outer } }
`;
  const shelf = {
    'quilting cotton': {
      kind: 'cloth' as const,
      thickness: { mm: 0.3, source: 'from memory' },
      width: { in: 42, mm: 1060, source: 'shop' },
      sold: { by: 'length' as const, each: { in: '1/4 yd', mm: '10 cm' } },
    },
  };

  it('come from the shelf, in the edition asked for', () => {
    const inch = resolved(yaml, { materials: shelf });
    expect(inch.materials['outer']?.material).toEqual({
      name: 'quilting cotton',
      label: 'quilting cotton',
      kind: 'cloth',
      nap: 'none',
      thickness: 0.3,
      width: 42 * 25.4,
      sold: { by: 'length', each: 9 * 25.4 },
    });
    expect(resolved(yaml, { materials: shelf, edition: 'metric' }).materials['outer']?.material?.sold?.each).toBe(100);
    expect(inch.pieces['body']?.material).toBe('outer');
  });

  it('that the shelf lacks are named, with the nearest', () => {
    expect(lines(resolved(yaml, { materials: shelf }).findings)).toEqual([
      'error materials > lining: unknown-name: There is no material called “quiltin cotton”. Do you mean “quilting cotton”?',
    ]);
    expect(resolved(yaml).findings).toEqual([]);
  });
});
