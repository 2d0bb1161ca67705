/**
 * Pleats, tucks, hems, mitred and boxed corners, as projects compute them, against printed examples.
 *
 * NIMI: National Instructional Media Institute, Government of India, CITS Dress Making Trade Practical, volume 2
 * (nimi.co.in/cits_ebooks/Dress_Making), by page.
 */
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { planPleats, ProjectFile, resolveProject } from '../../src/core/project/index.ts';
import type { Pattern } from '../../src/core/project/index.ts';

const work = (yaml: string): Pattern => {
  const pattern = resolveProject(ProjectFile.parse(parse(yaml)));
  expect(pattern.findings.filter((finding) => finding.severity === 'error')).toEqual([]);
  return pattern;
};

/** One formula of a project at home in the metric edition, over measures in cm. */
const sum = (formula: string, measures: Record<string, string>): number => {
  const stated = Object.entries(measures).map(([name, value]) => `  ${name}: ${value}`);
  const yaml = ['title: Sum', 'units: metric', 'measures:', ...stated, `  answer: ${formula}`, 'pieces: {}'].join('\n');
  return work(yaml).measures['answer']!.value;
};

/** A piece with pleats along its top, a seam of 1 cm at both ends, worked out in cm. */
const along = (size: string, pleats: string) =>
  work(
    `title: Pleats\nunits: metric\nmeasures: {}\npieces: { section: { ${size}, allowance: 1 cm, pleats: { on: top, ${pleats} } } }`,
  ).pieces['section']!;

describe('pleats', () => {
  it('pleat-1, pleat-2: 92 cm in pleats of about 5 cm are 18 pleats of 5.1 cm (NIMI p. 203)', () => {
    const section = { section: '92 cm', 'pleat width': '5 cm' };
    const count = sum('round section / pleat width to 1', section);
    expect(count).toBe(18);
    const width = sum('section / pleats', { section: '92 cm', pleats: `{ count: ${count} }` });
    expect(Math.round(width) / 10).toBe(5.1);
  });

  it('pleat-4: 236 cm from cloth of 90 cm, 2 cm a seam, take 3 strips of 15 cm: 45 cm (NIMI p. 203)', () => {
    const length = sum('round up pattern width / (cloth - seam) to 1 * strip', {
      'pattern width': '236 cm',
      cloth: '90 cm',
      seam: '2 cm',
      strip: '15 cm',
    });
    expect(length).toBe(450);
  });

  it('pleat-5: 50 cm in normal knife pleats of 2.5 cm, 2 cm of seams, take 152 cm (NIMI p. 204)', () => {
    // Normal pleats are as deep as they are far apart. 20 of them, and a seam allowance of 1 cm at both ends.
    const plan = planPleats({ pockets: 20, depth: 25, step: 25, height: 520, allowance: { bottom: 10, top: 10 } });
    expect(plan.ok && plan.value.stripLength).toBe(1520);
    expect(plan.ok && plan.value.pockets.map((pleat) => pleat.reveal)).toEqual(Array(20).fill(25));
    const { size, edgePleats } = along('finished: [50 cm, 20 cm]', 'kind: knife, count: 20, depth: 25 mm');
    expect(size.width).toBeCloseTo(1520, 9);
    expect(edgePleats!.every).toBeCloseTo(25, 9);
  });

  it('the rule: width = 2 x depth x number + pleated width (NIMI p. 203), for level pleats too', () => {
    // Depths 30, 40 and 50; pleated width 90.
    const plan = planPleats({
      pockets: 3,
      depth: 30,
      step: 10,
      height: 90,
      bottoms: 'level',
      allowance: { bottom: 0, top: 0 },
    });
    expect(plan.ok && plan.value.stripLength).toBe(90 + 2 * (30 + 40 + 50));
  });

  it('pleat-6: one box pleat of 12 cm depth in 60 cm takes 108 cm (NIMI p. 204)', () => {
    // A box pleat is two knife pleats turned away from each other; the turning changes nothing in the take-up.
    const plan = planPleats({ pockets: 2, depth: 120, step: 240, height: 600, allowance: { bottom: 0, top: 0 } });
    expect(plan.ok && plan.value.stripLength).toBe(1080);
    for (const kind of ['box', 'inverted']) {
      const { edgePleats } = along('finished: [60 cm, 20 cm]', `kind: ${kind}, count: 1, depth: 12 cm`);
      expect([edgePleats!.flat, edgePleats!.takeUp]).toEqual([1080, 480]);
      // From the first visible fold to the last of a box, from the first fold beneath to the last of an inverted pleat.
      const inner = edgePleats!.folds.slice(1, 3).map(({ at }) => at);
      expect(inner[1]! - inner[0]!).toBeCloseTo(240, 9);
    }
    // Box and inverted pleats are twice as wide as deep (NIMI p. 204).
    expect(sum('2 * depth', { depth: '12 cm' })).toBe(240);
  });
});

describe('tucks', () => {
  it('tuck-1: 39 cm with 1.5 cm at each edge and gaps of 1.2 cm have room for 31 tucks (NIMI p. 209)', () => {
    expect(sum('round down (width - 2 * edge) / gap to 1 + 1', { width: '39 cm', edge: '1.5 cm', gap: '12 mm' })).toBe(
      31,
    );
  });

  it('tuck-3: 15 gaps in 24 cm are 1.6 cm each (NIMI p. 209)', () => {
    expect(sum('span / gaps', { span: '24 cm', gaps: '{ count: 15 }' })).toBe(16);
  });
});

describe('hems and mitred corners', () => {
  const napkin = (finished: string, hem: string, units = 'metric') =>
    work(
      `title: Napkin\nunits: ${units}\nmeasures: {}\npieces: { napkin: { finished: [${finished}, ${finished}], allowance: ${hem} } }`,
    ).pieces['napkin']!.size;

  it('mitre-1: 9 in finished with 1 in an edge is cut 11 in (Threads, 9 November 2018)', () => {
    expect(napkin('9', '1', 'inch')).toEqual({ width: 11 * 25.4, height: 11 * 25.4 });
  });

  it('mitre-2: 40 cm with 2.5 cm an edge is cut 45 cm (By Di, October 2011)', () => {
    expect(napkin('40 cm', '2.5 cm')).toEqual({ width: 450, height: 450 });
  });

  it('mitre-3: 30 cm with folds of 1 and 2 cm is cut 36 cm (Marcela’s Purse, p. 477)', () => {
    expect(napkin('30 cm', '1 cm + 2 cm')).toEqual({ width: 360, height: 360 });
  });

  it('a plain gathered skirt is cut with the depth of its hem and a 1/4 in turn (Baldt 1916, p. 345)', () => {
    // A hem of 2 1/2 in, the average of a straight skirt (Texas Agricultural Extension Service L-359).
    const skirt = `title: Skirt
measures: { drop: 24, hem: 2 1/2, turn: 1/4 }
pieces: { skirt: { finished: [44, drop], allowance: { bottom: hem + turn, others: 0 } } }`;
    expect(work(skirt).pieces['skirt']!.size.height / 25.4).toBeCloseTo(26.75, 9);
  });

  it('french-1: the passes of a French seam, 3/8 and 1/4 in, make its allowance of 5/8 in (Oklahoma 4-H card 810; the sum is ours)', () => {
    expect(sum('first + second', { first: '3/8 in', second: '1/4 in' })).toBe(10 + 6);
    const inch = work('title: Seam\nmeasures: { first: 3/8, second: 1/4, both: first + second }\npieces: {}');
    expect(inch.measures['both']!.value).toBe((5 / 8) * 25.4);
  });
});

describe('boxed corners', () => {
  // There are two conventions, and a page must say which it uses.
  const bag = (formula: string, measures: string) =>
    work(`title: Bag\nmeasures: { ${measures}, answer: ${formula} }\npieces: {}`).measures['answer']!.value / 25.4;

  it('box-1 to box-3: a square of 2 in from the seam lines makes a 19 x 16 in bag 15 wide, 14 high, 4 deep (Lazy Girl Designs)', () => {
    const flat = 'width: 19, height: 16, square: 2';
    expect(bag('2 * square', flat)).toBe(4);
    expect(bag('width - 2 * square', flat)).toBe(15);
    expect(bag('height - square', flat)).toBe(14);
  });

  it('box-4: from the raw edges, a base of 2 in with seams of 1/2 in takes a square of 1 1/2 in (Best Fabric Store)', () => {
    expect(bag('base / 2 + seam', 'base: 2, seam: 1/2')).toBeCloseTo(1.5, 9);
  });
});

describe('rounding to what can be cut', () => {
  it('drape-2: 90 in and 18 in for hems, in whole repeats of 25 in, are 125 in (Workroom Tech, episode 41)', () => {
    const drape = work(
      'title: Drape\nmeasures: { finished: 90, hems: 18, repeat: 25, cut: round up (finished + hems) to repeat }\npieces: {}',
    );
    expect(drape.findings).toEqual([]);
    expect(drape.measures['cut']!.value).toBe(125 * 25.4);
  });

  it('squares-1: a yard of 40 x 36 in gives 56 squares of 5 in (a fabric question-and-answer page)', () => {
    const count = sum('round down width / square to 1 * round down length / square to 1', {
      width: '40 in',
      length: '36 in',
      square: '5 in',
    });
    expect(count).toBe(56);
  });

  it('qbind-1: a quilt of 46 x 46 in takes 5 binding strips of 40 in (Sylvia’s Quilt Depot)', () => {
    expect(sum('round up 4 * side / strip to 1', { side: '46 in', strip: '40 in' })).toBe(5);
  });

  it('buttonhole-1: a button of 1 1/8 in, 1/8 in thick, takes a hole of 1 1/4 in (About.com Sewing 1999)', () => {
    const hole = work(
      'title: Hole\nmeasures: { diameter: 1 1/8, thickness: 1/8, hole: diameter + thickness }\npieces: {}',
    );
    expect(hole.measures['hole']!.value).toBe(1.25 * 25.4);
  });
});
