/** Lists worked out by hand, and what becomes of numbers that nobody should have given. */
import { describe, expect, test } from 'vitest';
import { csv, demandOf, kitCsv, kitFor, prepare, shopLength, kitRows } from '../../../src/core/kit/index.ts';
import { layOut } from '../../../src/core/layout/index.ts';
import { faults } from '../layout/verify.ts';
import { folio, lines, resolved, shelf } from '../project/files.ts';
import { resolveProject } from '../../../src/core/project/index.ts';
import type { Group, KitLine, KitOptions } from '../../../src/core/kit/index.ts';
import type { MaterialsFile, Pattern } from '../../../src/core/project/index.ts';

const materials: MaterialsFile = {
  felt: {
    kind: 'cloth',
    thickness: { mm: 1, source: 'a sample' },
    width: { in: 40, mm: 1000, source: 'a sample' },
    shrinks: { percent: 5, across: 0, source: 'a sample' },
    straightening: { in: 1, mm: 30 },
    sold: { by: 'length', each: { in: '1/4 yd', mm: '10 cm' } },
    price: { amount: 12, per: '1 m' },
  },
  cotton: {
    kind: 'thread',
    sold: { by: 'spool', each: { in: '100 yd', mm: '100 m' } },
    price: { amount: 2.5, per: 'spool' },
  },
  snap: { kind: 'hardware', sold: { by: 'pack', each: 6 }, price: { amount: 3, per: 'pack' } },
  zip: { kind: 'hardware', sold: { by: 'piece' }, price: { amount: 1.1, per: 'piece' } },
};

/** Two squares of felt joined along 200 mm with 10 mm allowances. */
const bag = `
title: Bag
units: metric
measures: { seam: 10 }
materials:
  outer: { use: felt, label: Felt }
  thread: { use: cotton, count: 1 }
  snap: { use: snap, count: 2 }
  zip: { use: zip, count: 1 }
pieces:
  front: { from: outer, size: [200, 200] }
  back: { from: outer, size: [200, 200] }
  tape: { from: zip, size: [200, 12], allowance: 0 mm, grain: any }
steps:
  - { join: [front, back], at: top, press: open, makes: bag }
`;

const patternOf = (yaml: string, more: MaterialsFile = {}): Pattern =>
  resolved(yaml, { materials: { ...materials, ...more } });
const list = (yaml: string, group: Group, options: KitOptions = {}) => kitFor(patternOf(yaml), group, options);
const line = <K extends KitLine['kind']>(kind: K, all: readonly KitLine[]): Extract<KitLine, { kind: K }> =>
  all.find((one): one is Extract<KitLine, { kind: K }> => one.kind === kind)!;

describe('the list for one maker', () => {
  const kit = list(bag, { makers: 1, spares: 0 });

  test('cloth: as laid out, for shrinking, to straighten the end, to the next length sold', () => {
    // 200 mm as laid; 200 / 0.95 = 210.526; with 30 mm for the end 240.526; sold by 10 cm: 300 mm.
    const { buy, layout, single } = line('cloth', kit.lines);
    expect(buy.laid).toBeCloseTo(200, 6);
    expect(buy.shrinkage).toBeCloseTo(10.526, 3);
    expect(buy.straightening).toBe(30);
    expect(buy.rounding).toBeCloseTo(59.474, 3);
    expect(buy.total).toBe(300);
    expect(single).toEqual(buy);
    expect(layout).toMatchObject({ proven: true, left: [] });
  });

  test('thread: both threads of 180 mm through two layers of 1 mm, and a fifth for waste', () => {
    // The stitch line runs from allowance to allowance only where the seam stops there; a join sews edge to edge: 200 mm.
    // 2 + 2 × 2 mm / 2.5 mm = 3.6 mm for each mm of seam.
    const { sewn, thread, waste, total, spools } = line('thread', kit.lines);
    expect(sewn).toBeCloseTo(200, 6);
    expect(thread).toBeCloseTo(720, 6);
    expect(waste).toBeCloseTo(144, 6);
    expect(total).toBeCloseTo(864, 6);
    expect(spools).toBe(1);
  });

  test('hardware by the pack and by the piece, a zip no shorter than its tapes', () => {
    const [snap, zip] = kit.lines.filter((one) => one.kind === 'counted');
    expect(snap).toMatchObject({ needed: 2, pack: 6, packs: 1, over: 4 });
    expect(zip).toMatchObject({ needed: 1, packs: 1, length: 200 });
  });

  test('a needle for two layers of 1 mm', () => {
    expect(line('needles', kit.lines).needles.map(({ suits, count }) => [suits.nm, suits.point, count])).toEqual([
      [110, 'jeans', 1],
    ]);
  });

  test('costs: 30 cm at 12 a metre, a spool, a pack, a zip', () => {
    expect(kit.lines.map(({ price }) => price?.cost)).toEqual([3.6, 2.5, 3, 1.1, undefined]);
    expect(kit.cost.total).toBeCloseTo(10.2, 9);
    expect(kit.cost.perMaker).toBeCloseTo(10.2, 9);
    expect(kit.unpriced).toEqual(['Needles']);
    expect(kit.findings).toEqual([]);
  });

  test('words of the shop', () => {
    expect(kit.lines.flatMap((one) => kitRows(one, 'metric', 'plain').map(({ buy }) => buy))).toEqual([
      '30 cm, 1000 mm wide',
      '1 spool of 100 m',
      '1 pack of 6',
      '1, 200 mm long or longer',
      '1 of NM 110 (US 18), jeans',
    ]);
    expect(kitRows(kit.lines[0]!, 'metric', 'plain')[0]!.how).toEqual([
      { what: 'as laid out, proven shortest', amount: '200 mm' },
      { what: 'for shrinking', amount: '≈ 11 mm' },
      { what: 'to straighten the end', amount: '30 mm' },
      { what: 'to the next length sold', amount: '≈ 59 mm' },
    ]);
  });
});

describe('the list for a class', () => {
  // 11 makers and 1 spare: 24 squares of 200 mm, 5 across 1000 mm: 5 rows, 1000 mm.
  const kit = list(bag, { makers: 11, spares: 1, machines: 3 });

  test('all is cut from one length, and one maker’s own length stands beside it', () => {
    const { buy, single, layout } = line('cloth', kit.lines);
    expect(layout.length).toBeCloseTo(1000, 6);
    expect(buy.total).toBe(1100); // 1000 / 0.95 + 30 = 1082.6
    expect(single.total).toBe(300);
  });

  test('a spool at each machine, packs for all, needles for the machines', () => {
    expect(line('thread', kit.lines)).toMatchObject({ byLength: 1, spools: 3 });
    expect(line('counted', kit.lines)).toMatchObject({ needed: 24, packs: 4, over: 0 });
    expect(line('needles', kit.lines).needles[0]!.count).toBe(3);
  });

  test('what it costs is shared among the makers; spares are nobody’s', () => {
    // 1.1 m × 12 + 3 × 2.5 + 4 × 3 + 12 × 1.1
    expect(kit.cost.total).toBeCloseTo(13.2 + 7.5 + 12 + 13.2, 9);
    expect(kit.cost.perMaker).toBeCloseTo(45.9 / 11, 9);
  });

  test('long rows ask for more spools than there are machines', () => {
    // 864 mm for each maker: 116 makers take 100.2 m.
    const many = list(bag, { makers: 116, spares: 0, machines: 1 });
    expect(line('thread', many.lines)).toMatchObject({ byLength: 2, spools: 2 });
  });
});

test('steps that are done to several pieces alike count for each', () => {
  const napkins = (cut: number) => `
title: Napkins
units: metric
measures: {}
materials: { outer: felt, thread: { use: cotton, count: 1 } }
pieces: { napkin: { from: outer, cut: ${cut}, size: [300, 300], allowance: 30 mm } }
steps: [{ hem: napkin, at: all, fold: 10 mm, then: 20 mm, corners: mitred }]
`;
  const thread = (cut: number) => line('thread', list(napkins(cut), { makers: 1, spares: 0 }).lines).thread;
  expect(thread(4)).toBeCloseTo(4 * thread(1), 6);
});

test('a binding that is longer than the cloth is wide comes as strips, where it may be joined', () => {
  const bound = (more: string) => `
title: Mat
units: metric
measures: {}
materials: { outer: felt }
pieces: { binding: { from: outer, size: [2400, 50], allowance: 0 mm${more} } }
`;
  // 1000 mm and 2 × 6.35 mm at each join: 3 strips make 2974.6 mm.
  const joined = list(bound(', may be joined: true'), { makers: 1, spares: 0 });
  expect(line('cloth', joined.lines).buy.laid).toBeCloseTo(150, 6);
  expect(joined.findings).toEqual([]);
  const whole = list(bound(''), { makers: 1, spares: 0 });
  expect(lines(whole.findings)).toEqual([
    'error pieces > binding: piece too wide: Binding is 2400 mm wide; outer has room for 1000 mm. Turned by a quarter it would fit: let its grain be any, if the piece allows it.',
  ]);
});

test('what the teacher cuts and does beforehand, and what is left', () => {
  const yaml = bag
    .replace('back: { from: outer, size: [200, 200]', 'back: { from: outer, cut by: teacher, size: [200, 200]')
    .replace('makes: bag }', 'makes: bag, done by: teacher, minutes: 7 }');
  expect(prepare(patternOf(yaml), { makers: 5, spares: 1 })).toEqual({
    cut: [{ label: 'back', count: 6 }],
    done: [{ title: 'Join the front and the back at the top', count: 6 }],
    minutes: 6 + 2 * 6 + 7 * 6,
    left: [{ label: 'front', count: 1 }],
  });
});

describe('layouts behind the list', () => {
  test.each(['inch', 'metric'] as const)('of the swatch-card folio are right, %s edition', (edition) => {
    const pattern = resolveProject(folio(), { edition, materials: shelf() });
    const kit = kitFor(pattern, { makers: 8, spares: 1 });
    expect(kit.findings).toEqual([]);
    for (const { layout, width, label } of kit.lines.filter((one) => one.kind === 'cloth')) {
      const demand = layout.cloths[0]!.placements.map(({ piece }) => piece);
      const wanted = [...new Set(demand)].map((name) => {
        const { cutOutline: outline, grain, nap, count } = pattern.pieces[name]!;
        return { name, outline, grain, nap, count: 9 * count };
      });
      const cloth = { name: label, kind: 'bolt', width } as const;
      expect(faults(layout, wanted, [cloth], { ...pattern.cutting }), label).toEqual([]);
    }
  });
});

describe('numbers that nobody should have given', () => {
  test('no makers, half a maker, too many', () => {
    expect(lines(list(bag, { makers: 0, spares: 0 }).findings)).toEqual([
      'error class > makers: bad makers: The number of makers is a whole number from 1 to 500; 1 is taken.',
    ]);
    expect(list(bag, { makers: 2.5, spares: -1 }).findings).toHaveLength(2);
    const kit = list(bag, { makers: 501, spares: NaN, machines: 0 });
    expect(kit.findings.map(({ code }) => code)).toEqual(['bad makers', 'bad spares', 'bad machines']);
    expect(kit.group).toEqual({ makers: 1, spares: 0, machines: 1 });
  });

  test('a negative price is left out of the sum, and said', () => {
    const kit = list(bag, { makers: 1, spares: 0 }, { prices: { outer: -4, snap: NaN } });
    expect(lines(kit.findings)).toEqual([
      'error materials > outer: bad price: The price of “felt” is not a number of 0 or more, so it is left out.',
      'error materials > snap: bad price: The price of “snap” is not a number of 0 or more, so it is left out.',
    ]);
    expect(kit.unpriced).toEqual(['Felt', 'snap', 'Needles']);
    expect(kit.cost.total).toBeCloseTo(3.6, 9);
  });

  test('a price of another currency, and one for what is not sold so', () => {
    const kit = kitFor(
      patternOf(bag, {
        felt: { ...materials['felt']!, price: { amount: 12, currency: 'USD', per: '1 m' } },
        snap: { ...materials['snap']!, price: { amount: 3, per: 'spool' } },
      }),
      { makers: 1, spares: 0 },
    );
    expect(kit.findings.map(({ message }) => message)).toEqual([
      'The price of “felt” is in USD and not in EUR, so it is left out of the sum.',
      'The price of “snap” is for “spool”, and it is not sold so.',
    ]);
  });

  test('a currency without decimals is rounded to whole ones', () => {
    const kit = list(bag, { makers: 1, spares: 0 }, { currency: 'JPY', prices: { outer: 1111 } });
    expect(kit.lines[0]!.price?.cost).toBe(333); // 0.3 × 1111 = 333.3
  });

  test('cloth whose width is not known', () => {
    const { width: _, ...narrow } = materials['felt']!;
    const kit = kitFor(patternOf(bag, { felt: narrow }), { makers: 1, spares: 0 });
    expect(lines(kit.findings)).toEqual([
      'error materials > outer: no width: How wide “felt” is sold is not known, so no length can be worked out. Give “felt” a width in materials.yaml.',
    ]);
    expect(kit.lines.map(({ key }) => key)).toEqual(['thread', 'snap', 'zip', 'needles']);
  });

  test('a piece wider than the cloth: which, by how much, and what helps', () => {
    const kit = list(bag.replaceAll('[200, 200]', '[1200, 300]'), { makers: 1, spares: 0 });
    expect(kit.findings[0]).toMatchObject({
      place: ['pieces', 'front'],
      amount: 200,
      message: 'Front is 1200 mm wide; Felt has room for 1000 mm.',
      fix: 'Turned by a quarter it would fit: let its grain be any, if the piece allows it.',
    });
    expect(line('cloth', kit.lines).layout.left).toEqual([
      { piece: 'front', count: 1 },
      { piece: 'back', count: 1 },
    ]);
  });

  test('an empty stash: nothing is laid, and it says why', () => {
    const pattern = patternOf(bag);
    const demand = demandOf(pattern, 'outer', 1, 1000);
    const none = layOut(demand, []);
    expect(lines(none.findings)).toEqual([
      'error cloths: no cloth: There is no cloth to lay on. Add a bolt, a pre-cut or an offcut.',
    ]);
    const used = layOut(demand, [{ name: 'scrap', kind: 'offcut', width: 300, length: 300, count: 0 }]);
    expect(used.left.map(({ count }) => count)).toEqual([1, 1]);
    expect(used.findings.map(({ code }) => code)).toEqual(['not enough cloth']);
  });

  test('10,000 pieces, and more than one layout is for', () => {
    // A class of 500 with 20 squares each, 5 across: 2000 rows of 200 mm.
    const many = (cut: number) => bag.replace('front: { from: outer', `front: { from: outer, cut: ${cut}`);
    const kit = list(many(19), { makers: 500, spares: 0 });
    expect(kit.findings).toEqual([]);
    expect(line('cloth', kit.lines).buy.laid).toBeCloseTo(400_000, 3);
    const more = list(many(60), { makers: 500, spares: 0 });
    expect(lines(more.findings)).toEqual([
      'error pieces > front > count: too many: These are more than 20000 pieces; lay them in several layouts.',
    ]);
  });

  test('a project of nothing, and one whose materials nobody knows', () => {
    const empty = 'title: None\nmeasures: {}\npieces: {}\n';
    expect(list(empty, { makers: 3, spares: 0 })).toMatchObject({
      lines: [],
      cost: { total: 0, perMaker: 0 },
      findings: [],
    });
    const unknown = kitFor(resolved(bag), { makers: 1, spares: 0 });
    expect(unknown.lines.every(({ price }) => price === undefined)).toBe(true);
  });
});

describe('the table for a spreadsheet', () => {
  test('a line for each thing, the sum and each maker’s share', () => {
    const rows = kitCsv(list(bag, { makers: 2, spares: 0 }), 'metric').split('\r\n');
    expect(rows[0]).toBe('"What","Material","For","Buy","Amount","Unit","Price","Per","Cost","Currency","How"');
    expect(rows[1]).toMatch(
      /^"Felt","felt","front; back","30 cm, 1000 mm wide",0\.3,"m",12,"1 m",3\.6,"EUR","200 mm as laid out, proven/,
    );
    expect(rows.slice(-3)).toEqual([
      '"Together","","","","","","","",13.8,"EUR",""',
      '"For each maker","","","","","","","",6.9,"EUR",""',
      '',
    ]);
  });

  // The signs that OWASP names under CSV Injection, and their full-width forms.
  test.each(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'])(
    'a text that begins with %j stays one',
    (sign) => {
      expect(csv([[`${sign}cmd|' /C calc'!A0`]])).toBe(`"'${sign}cmd|' /C calc'!A0"\r\n`);
      expect(csv([[`${sign}1 ply`, 3]])).toBe(`"'${sign}1 ply",3\r\n`);
    },
  );

  // Some programs trim blanks before they look for a formula; what they trim is ours to guess: no source.
  test.each([' =1', '\u00a0=1', '\u3000＝1', '\u200b=1', '\ufeff=1', '\u2028=1', '\0=1', '﹦1', '\ue000−1'])(
    'blanks before the sign do not help: %j',
    (text) => {
      expect(csv([[text]])).toBe(`"'${text}"\r\n`);
    },
  );

  test.each([
    // OWASP, CSV Injection: signs matter after a separator, too, when a program expects another one.
    ['linen;=1+1', `"linen;'=1+1"`],
    ['linen; @SUM(A1)', `"linen;' @SUM(A1)"`],
    ['linen;"=1+1', `"linen;'""=1+1"`],
    ['linen\t=1+1', `"linen\t'=1+1"`],
    ['linen\r\n=1+1', `"linen\r\n'=1+1"`],
    // RFC 4180: quotes keep a comma inside a cell, and a quote is doubled.
    ['linen, -3 mm', '"linen, -3 mm"'],
    ['say "so"; =1', `"say ""so"";' =1"`],
    ['front; back-stitched = sewn twice', '"front; back-stitched = sewn twice"'],
  ])('no separator lets a formula in: %j', (text, cell) => {
    expect(csv([[text]])).toBe(`${cell}\r\n`);
  });

  test('numbers stay numbers', () => {
    expect(csv([[-3, 'a,b', 'two\nlines', Number.NaN, '']])).toBe('-3,"a,b","two\nlines",,""\r\n');
  });

  test('a label that is a formula is a text on the list', () => {
    const evil = kitCsv(
      list(bag.replace('label: Felt', `label: '＝HYPERLINK("http://x";"y")'`), { makers: 1, spares: 0 }),
      'metric',
    );
    expect(evil).toContain(`"'＝HYPERLINK(""http://x"";""y"")","felt"`);
  });
});

test.each([
  [0, 'inch', '0 yd'],
  [1257.3, 'inch', '1 3/8 yd'],
  [914.4, 'inch', '1 yd'],
  [60, 'metric', '6 cm'],
  [999.9, 'metric', '≈ 100 cm'],
  [1300, 'metric', '1.3 m'],
  [10_004, 'metric', '≈ 10 m'],
  [NaN, 'metric', '?'],
] as const)('%f mm in the shop, %s: %s', (mm, edition, words) => {
  expect(shopLength(mm, edition)).toBe(words);
});
