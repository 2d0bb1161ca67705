/**
 * Ordinary class projects, each written as an instructor would write it, in fewer than 80 lines: no size and no choice of
 * them has a finding, and what they come to is pinned. The numbers were worked out by hand beside each.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  checkAll,
  drawStep,
  formatLength,
  kitFor,
  makeUp,
  MaterialsFile,
  ONE,
  ProjectFile,
  resolveProject,
} from '../../../src/core/index.ts';
import { openingsOf } from '../../../src/core/cloth/openings.ts';
import type { Edition, Settings, Step } from '../../../src/core/index.ts';

const FOLDER = fileURLToPath(new URL('../../fixtures/classes', import.meta.url));
const textOf = (name: string) => readFileSync(path.join(FOLDER, `${name}.yaml`), 'utf8');
const materials = MaterialsFile.parse(parse(textOf('materials')));
const names = readdirSync(FOLDER)
  .map((file) => file.replace('.yaml', ''))
  .filter((name) => name !== 'materials');
const fileOf = (name: string) => ProjectFile.parse(parse(textOf(name)));

describe.each(names)('%s', (name) => {
  it('is short, and has no finding at any size and with any choice', () => {
    expect(textOf(name).split('\n').length).toBeLessThan(80);
    const found = checkAll(fileOf(name), materials).filter(({ severity }) => severity !== 'note');
    expect(found.map(({ place, code, message }) => `${place.join(' > ')}: ${code}: ${message}`)).toEqual([]);
  });
});

const made = (name: string, edition: Edition, settings: Settings = {}) => {
  const pattern = resolveProject(fileOf(name), { edition, materials, ...settings });
  const say = (mm: number) => formatLength(mm, edition);
  const size = ({ size: { width, height } }: Pick<Step, 'size'>) => `${say(width)} x ${say(height)}`;
  const steps = makeUp(pattern);
  return {
    cut: Object.values(pattern.pieces).map((piece) => `${piece.count} ${piece.name} ${size(piece)}`),
    steps: steps.map((step) => `${step.times > 1 ? `${step.times} x ` : ''}${step.makes} ${size(step)}`),
    labels: Object.fromEntries(Object.values(pattern.materials).map(({ role, label }) => [role, label])),
    tools: new Map(steps.map(({ title, tools }) => [title, tools])),
    rows: steps.flatMap(({ title, stitches }) =>
      stitches.map(({ length, layers }) => `${title}: ${say(length)} through ${layers}`),
    ),
    layers: Math.max(...steps.map(({ layersMost }) => layersMost)),
    // Laying takes longer than all the rest.
    get buys() {
      return kitFor(pattern, ONE).lines.flatMap((line) =>
        line.kind === 'cloth' ? `${line.key} ${say(line.buy.total)}` : [],
      );
    },
  };
};

describe('the cushion with an overlapped back', () => {
  it('comes to the pad less a half inch, its backs overlapping by what is said', () => {
    const { cut, steps, layers, buys } = made('overlap-cushion', 'inch');
    // 15 1/2 and two seams of 1/2; half of 15 1/2, half of 4, a seam, and a hem of 1/2 and 1.
    expect(cut).toEqual([
      '1 front 16 1/2 in x 16 1/2 in',
      '1 left back 11 3/4 in x 16 1/2 in',
      '1 right back 11 3/4 in x 16 1/2 in',
    ]);
    expect(steps.slice(2)).toEqual([
      'back 16 1/2 in x 16 1/2 in',
      'back 16 1/2 in x 16 1/2 in',
      'cushion 16 1/2 in x 16 1/2 in',
      'cushion 16 1/2 in x 16 1/2 in',
      'cushion 15 1/2 in x 15 1/2 in',
    ]);
    // Over a hem three layers and one of the other back, all folded in at the seam, and the front twice.
    expect(layers).toBe(10);
    // Of 42 in the front and both backs take 40 side by side: 16 1/2, an inch to straighten, to eighths of a yard.
    expect(buys).toEqual(['outer 18 in']);
    expect(made('overlap-cushion', 'metric').steps.at(-1)).toBe('cushion 388 mm x 388 mm');
  });
});

describe('the piped cushion', () => {
  it('comes to its side from seam to seam, and its strip goes once round it', () => {
    const { cut, steps, rows, layers } = made('piped-cushion', 'inch');
    expect(cut).toEqual([
      '1 front 17 in x 17 in',
      '1 back 17 in x 17 in',
      // Four times 16 in and an inch of overlap; a cord of 1/4 in is 0.785 round: with two seams of 1/2 up to 1 7/8.
      '1 strip 65 in x 1 7/8 in',
      '1 cord 64 in x 1/4 in',
    ]);
    expect(steps.at(-1)).toBe('cushion 16 in x 16 in');
    expect(rows).toEqual([
      // Of the front and of the strip twice, and two layers more where its ends overlap.
      'Fold the strip round the cord, and baste it to the front all round, raw edges together: 64 in through 5',
      // The gap of 8 in is at the bottom, where the ends overlap.
      'Sew the front and the back together all round, but for a gap at the bottom: 56 in through 4',
      'Close the gap of the cushion by hand: 8 in through 4',
    ]);
    // At a corner each of front and back lies four times, its allowances folded in both ways; and the strip of either side.
    expect(layers).toBe(10);
    expect(made('piped-cushion', 'metric').steps.at(-1)).toBe('cushion 400 mm x 400 mm');
  });

  it('has a zip across its back where one is chosen, and no gap', () => {
    const { cut, steps, rows } = made('piped-cushion', 'inch', { options: { closing: 'zip' } });
    // 17 in less a zip of 1 1/4, halved, and two seams of 3/8 more.
    expect(cut.slice(1, 4)).toEqual([
      '1 upper back 17 in x 8 5/8 in',
      '1 lower back 17 in x 8 5/8 in',
      '1 zip 17 in x 1 1/4 in',
    ]);
    expect(steps.slice(1, 3)).toEqual(['back 17 in x 9 1/8 in', 'back 17 in x 17 in']);
    expect(rows.at(-1)).toMatch(/: 64 in through 6$/u);
    expect(steps.at(-1)).toBe('cushion 16 in x 16 in');
    const metric = made('piped-cushion', 'metric', { options: { closing: 'zip' } });
    expect(metric.steps.at(-1)).toBe('cushion 400 mm x 400 mm');
  });
});

describe('the patchwork cushion', () => {
  it('makes eight triangle squares and four pairs, two blocks of each, and a front of 15 in and its seams', () => {
    const { cut, steps } = made('patchwork-cushion', 'inch');
    expect(cut.slice(0, 4)).toEqual([
      // 3 in finished, 3 1/2 unfinished; the exact rule is 3.854, and a room of 1/4 makes it 4 1/4 and something to trim.
      '4 light square 4 1/4 in x 4 1/4 in',
      '4 dark square 4 1/4 in x 4 1/4 in',
      '1 light strip 14 in x 3 1/2 in',
      '1 dark strip 14 in x 3 1/2 in',
    ]);
    expect(steps.slice(0, 9)).toEqual([
      '4 x triangle unit 4 1/4 in x 4 1/4 in',
      '8 x triangle unit 3 1/2 in x 3 1/2 in',
      '2 x pinwheel 6 1/2 in x 6 1/2 in',
      'strip set 14 in x 6 1/2 in',
      'pair 3 1/2 in x 6 1/2 in',
      '2 x four-patch 6 1/2 in x 6 1/2 in',
      // Two blocks of 6 in and three strips of 1 in, and a seam at both ends.
      'upper row 15 1/2 in x 6 1/2 in',
      'lower row 15 1/2 in x 6 1/2 in',
      'front 15 1/2 in x 15 1/2 in',
    ]);
    expect(steps.at(-1)).toBe('cushion 15 in x 15 in');
    expect(made('patchwork-cushion', 'metric').steps.at(-1)).toBe('cushion 378 mm x 378 mm');
  });
});

describe('the half apron', () => {
  it('is gathered to its band alone, and its ties stand out at both ends', () => {
    const { cut, steps, layers } = made('half-apron', 'inch');
    expect(cut).toEqual([
      // 1 1/2 times 18 in, and two hems of 1/4 and 1/2 in each.
      '1 skirt 28 1/2 in x 19 1/4 in',
      '1 pocket 8 in x 8 1/2 in',
      '1 band 19 in x 5 in',
      '2 tie 29 1/4 in x 2 in',
    ]);
    expect(steps.find((line) => line.startsWith('skirt 27 in x 18 1/2 in'))).toBeDefined();
    // The band of 18 in and two ties of 28 1/4 that overlap it by 1/2 in; a skirt of 18 in below a band of 2.
    expect(steps.at(-1)).toBe('apron 73 1/2 in x 20 in');
    expect(layers).toBe(11);
    expect(made('half-apron', 'metric').steps.at(-1)).toBe('apron 1838 mm x 500 mm');
  });
});

describe('the quilted placemat', () => {
  it('is quilted through three layers before it is trimmed, and keeps its size when it is bound', () => {
    const { cut, steps, rows, layers } = made('quilted-placemat', 'inch');
    // Of 20 x 15 in: five level rows and seven upright ones, 2 1/2 in apart.
    expect(rows.find((line) => line.startsWith('Quilt'))).toBe('Quilt the mat in a grid: 205 in through 3');
    // Round it is 62 in, and the ends of the strip are joined by a seam of 1/4 in.
    expect(cut.at(-2)).toBe('1 strip 62 1/2 in x 2 in');
    expect(steps.at(-1)).toBe('mat 18 in x 13 in');
    expect(rows.slice(-3)).toEqual([
      'Bind the mat all round with the strip: 2 in through 2',
      // 2 (18 + 13) less 1/2 in at both ends of each side; over the loop it goes through eight layers more.
      'Bind the mat all round with the strip: 58 in through 12',
      'Bind the mat all round with the strip: ≈ 58 1/2 in through 15',
    ]);
    // In a mitred corner three times four layers of the strip lie on the three of the mat.
    expect(layers).toBe(15);
    expect(made('quilted-placemat', 'metric').steps.at(-1)).toBe('mat 450 mm x 330 mm');
  });
});

describe('the organiser of stepped pockets', () => {
  it('has its pockets one above the other, each sewn down by its own bottom, and loops that stand up', () => {
    const { steps, rows, buys } = made('stepped-organiser', 'inch');
    expect(steps.slice(0, 2)).toEqual(['3 x pocket 15 in x 6 1/2 in', '3 x pocket 15 in x 6 in']);
    // Each row at a bottom goes through the panel and the pocket with its turned edge, and not through the pocket above.
    expect(rows.filter((line) => /pocket bottom:/u.test(line))).toEqual([
      'Topstitch the panel at the first pocket bottom: 15 in through 3',
      'Topstitch the panel at the second pocket bottom: 15 in through 3',
      'Topstitch the panel at the third pocket bottom: 15 in through 3',
    ]);
    // The row that divides the lowest pocket is as long as it is deep.
    expect(rows.find((line) => line.includes('third pocket left'))).toMatch(/: 6 in through/u);
    // 20 in of panel, and 3 in of loop less its seam.
    expect(steps.at(-1)).toBe('organiser 14 in x 22 1/2 in');
    expect(buys.map((line) => line.split(' ')[0])).toEqual(['outer', 'pockets']);
  });
});

describe('the café curtain', () => {
  it('is one and a half times the rod wide, and hangs as far as the rod is from the sill', () => {
    const { cut, steps } = made('curtain', 'inch');
    // 42 in and four turns; 24 in, a rod of 1, a hem of 3, and three first turns of 1/2.
    expect(cut).toEqual(['1 curtain 45 in x 29 in']);
    expect(steps[0]).toBe('curtain 42 in x 29 in');
    // The casing takes its row of 1/16 in beside the rod.
    expect(steps.at(-1)).toBe('curtain 42 in x 23 15/16 in');
  });
});

describe('the lined curtain', () => {
  it('buys what its print needs to run on from one width to the next', () => {
    const { cut, steps, rows, buys } = made('lined-curtain', 'inch');
    // Half of 60 in and two seams of 1/2; 48 in and two.
    expect(cut).toEqual(['1 left width 31 in x 49 in', '1 right width 31 in x 49 in', '2 lining width 31 in x 49 in']);
    expect(steps[0]).toBe('curtain 61 in x 49 in');
    expect(steps.at(-1)).toBe('lined curtain 60 in x 48 in');
    // 2 (60 + 48) less the gap of 10.
    expect(rows.find((line) => line.startsWith('Sew the curtain'))).toMatch(/: 206 in through 4$/u);
    // Two of 31 in do not lie side by side on 54. The second begins at the fifth repeat of 12 in: 60 + 49 and an inch to
    // straighten, to eighths of a yard; the lining 2 x 49 and an inch.
    expect(buys).toEqual(['print 112 1/2 in', 'lining 99 in']);
    expect(made('lined-curtain', 'metric').steps.at(-1)).toBe('lined curtain 1500 mm x 1200 mm');
  });
});

describe('the table skirt', () => {
  it('is pleated to its band: twelve box pleats of an inch take up as much again as it is long', () => {
    const { cut, steps, rows, layers, buys } = made('table-skirt', 'inch');
    // 48 in, four times an inch for each of twelve pleats, and two side hems of 1/2 and 1; 20 in and its seam and hem.
    expect(cut).toEqual(['1 skirt 99 in x 22 1/2 in', '1 waistband 49 in x 4 in']);
    expect(steps).toEqual([
      'skirt 96 in x 22 1/2 in',
      'skirt 96 in x 20 1/2 in',
      'skirt 48 in x 20 1/2 in',
      'skirt 48 in x 20 1/2 in',
      'waistband 48 in x 4 in',
      'waistband 48 in x 3 1/2 in',
      'table skirt 48 in x 23 in',
      'table skirt 48 in x 21 1/2 in',
      'table skirt 48 in x 21 1/2 in',
    ]);
    // A pleat and its band: three layers, and three more of the skirt's side hem or two at the band's ends.
    expect(rows.find((line) => line.startsWith('Join'))).toMatch(/: 48 in through 4$/u);
    expect(layers).toBe(10);
    // Two lengths of 22 1/2 in of the joined skirt, and the band beside them.
    expect(buys).toEqual(['outer 54 in']);
    expect(made('table-skirt', 'metric').steps.at(-1)).toBe('table skirt 1200 mm x 540 mm');
  });
});

describe('the organiser of pleated pockets', () => {
  it('has a row of pockets with a pleat each, divided by rows, and hangs by webbing that is bought by its length', () => {
    const { cut, steps, rows, layers, buys } = made('pleated-organiser', 'inch');
    // 18 in, three pleats of four times 3/4, and two seams; 7 in, a seam, and a hem of twice 1/2.
    expect(cut.slice(2)).toEqual(['1 pocket row 28 in x 8 1/2 in', '2 loop 1 in x 6 in']);
    expect(steps.slice(0, 4)).toEqual([
      'pocket row 28 in x 7 1/2 in',
      'pocket row 19 in x 7 1/2 in',
      'pocket row 19 in x 7 1/2 in',
      'pocket row 19 in x 7 in',
    ]);
    // Over a pleat the panel and twice three layers; between pleats the panel and the hem of the row.
    expect(rows.filter((line) => /pocket row (bottom|left):/u.test(line))).toEqual([
      'Topstitch the panel at the pocket row bottom: 19 in through 7',
      'Topstitch the panel at the pocket row left: 7 in through 4',
    ]);
    expect(layers).toBe(11);
    // Loops of 3 in, less the seam of 1/2 in that holds them.
    expect(steps.at(-1)).toBe('organiser 18 in x 14 1/2 in');
    // Two lengths of 6 in and 1/8 at each end, to half yards; the piece and 1 in to straighten it, to eighths of a yard.
    expect(buys.at(-1)).toBe('webbing 18 in');
    expect(made('pleated-organiser', 'metric').steps.at(-1)).toBe('organiser 450 mm x 363 mm');
  });
});

describe('the lined tote', () => {
  it('is boxed, lined and open at the top, as long round as its width and depth say', () => {
    const { steps, rows } = made('lined-tote', 'inch');
    // Panels of 19 x 16 1/2 in, less two seams and a box of 3 in; the lining lies beyond the seam until it is pushed in.
    // The straps stand up beyond the edge, and are not counted.
    expect(steps.slice(-6)).toEqual([
      'bag 15 in x 14 1/2 in',
      'bag 15 in x 14 1/2 in',
      'bag 15 in x 28 in',
      'bag 15 in x 28 in',
      'bag 15 in x 14 in',
      'bag 15 in x 14 in',
    ]);
    // Round: twice 15 + 3 in. Beside a side seam lie the panel with its interfacing, three of its allowances, and four of the lining.
    expect(rows.slice(-3)).toEqual([
      'Sew the bag and what lies in it together all round the opening: 36 in through 6',
      'Close the gap of the bag: 6 in through 4',
      'Topstitch the bag at the opening: 36 in through 9',
    ]);
  });

  it('has its straps caught in the seam round the opening, as far from the sides as is said', () => {
    const pattern = resolveProject(fileOf('lined-tote'), { edition: 'metric', materials });
    const all = makeUp(pattern);
    const laid = all.find(({ makes }) => makes === 'panel with strap')!;
    const across = (step: Step, piece: string) => {
      const xs = step.after.plies
        .filter((ply) => ply.piece === piece)
        .flatMap(({ outline }) => outline.map(({ from }) => from.x));
      return [Math.min(...xs), Math.max(...xs)] as const;
    };
    const [[from, to], [left, right]] = [across(laid, 'strap'), across(laid, 'panel')];
    expect(from - left).toBeCloseTo(100, 6);
    expect(right - to).toBeCloseTo(100, 6);
    // A seam of 12 mm less on either side, in the bag.
    const bag = all.at(-1)!;
    const [[start, end], [first, last]] = [across(bag, 'strap'), across(bag, 'panel')];
    expect(start - first).toBeCloseTo(88, 6);
    expect(last - end).toBeCloseTo(88, 6);
    const straps = new Set(bag.after.plies.flatMap(({ piece, id }) => (piece === 'strap' ? id : [])));
    const row = bag.after.stitches.find(
      ({ kind, runs }) => kind === 'seam' && runs.some(({ plies }) => plies.some((id) => straps.has(id))),
    );
    expect(row).toBeDefined();
  });

  it('needs neither interfacing nor pins in faux leather', () => {
    const faux = made('lined-tote', 'inch', { options: { 'faux leather': true } });
    expect(faux.cut.some((line) => line.includes('interfacing'))).toBe(false);
    expect(faux.tools.get('Sew the bag and what lies in it together all round the opening')).toEqual([
      'sewing machine',
      'clips',
    ]);
    expect(
      made('lined-tote', 'inch').tools.get('Sew the bag and what lies in it together all round the opening'),
    ).toContain('pins');
    expect(faux.labels['outer']).toBe('Faux leather for the outside');
  });
});

describe('the drawstring bag', () => {
  it('is of one piece, its casing as long as it is round', () => {
    const { cut, steps, rows, buys } = made('drawstring-bag', 'inch');
    // Twice 12 in, and at either end a turn of 5/8 in, 3/4 in for the cord and 1/16 in beside the row: 26 7/8 in.
    expect(cut).toEqual(['1 bag 11 1/4 in x 26 7/8 in', '1 cord 32 in x 1/4 in']);
    // 11 1/4 in less two seams of 5/8 in and two squares of 1 in; 12 in less one square.
    expect(steps.at(-1)).toBe('bag 8 in x 11 in');
    // Round 20 in, of which 1 in stays open; three layers of one wall, and beside its seams a ridge of two more in each.
    expect(rows.at(-1)).toBe('Make a casing in the bag at the opening: 19 in through 9');
    // Sewn twice at either side, 13 7/16 in high; a ridge of 2/5 of the seam, 1/4 in, stands out beside each.
    expect(rows.filter((row) => row.startsWith('Sew up'))).toEqual(
      Array(2).fill('Sew up the bag at the left and the right with French seams: 26 7/8 in through 2'),
    );
    expect(steps[1]).toBe('bag 10 1/2 in x 13 7/16 in');
    // 32 in and two ends of 1 in, to half yards; the piece and 1 in to straighten it, to eighths of a yard.
    expect(buys).toEqual(['outer 31 1/2 in', 'cord 36 in']);
  });
});

describe('the zip pouch', () => {
  it('has a zip that opens from its stop to the row at the other tab, and is turned through it', () => {
    const { cut, steps, rows, layers, buys } = made('zip-pouch', 'inch');
    // 9 in and two seams of 3/8; above the zip 1 in, 3/8 and 1/4; below it what 6 in leave of 1 in and 3/4 in of zip.
    expect(cut.slice(0, 3)).toEqual([
      '1 upper 9 3/4 in x 1 5/8 in',
      '1 lower 9 3/4 in x 4 7/8 in',
      '1 back 9 3/4 in x 6 3/4 in',
    ]);
    // Cut to 8 3/4 in, and a half inch longer at each end with its tabs.
    expect([steps[0], steps[5]]).toEqual(['zip 8 3/4 in x 1 1/4 in', 'zip 9 3/4 in x 1 1/4 in']);
    expect(steps.slice(6, 8)).toEqual(['front 9 3/4 in x 5 5/8 in', 'front 9 3/4 in x 6 3/4 in']);
    // Cloth, two layers of tab, the zip and the lining; the row beside the seam also goes through both allowances.
    expect(rows.filter((line) => line.startsWith('Join the upper'))).toEqual([
      'Join the upper and the upper lining at the bottom, with the front between: 9 3/4 in through 5',
      'Join the upper and the upper lining at the bottom, with the front between: 9 3/4 in through 7',
    ]);
    // 6 in high; 9 in wide, and a fob of 3 in less its seam stands out.
    expect(steps.at(-1)).toBe('pouch 11 5/8 in x 6 in');
    expect(layers).toBe(17);
    expect(buys.map((line) => line.split(' ')[0])).toEqual(['outer', 'lining']);
    expect(made('zip-pouch', 'metric').steps.at(-1)).toBe('pouch 295 mm x 150 mm');
  });

  it('tells how far its zip opens, and what its ring and its zip need', () => {
    const pattern = resolveProject(fileOf('zip-pouch'), { edition: 'inch', materials });
    const steps = makeUp(pattern);
    const [ring, turned] = [steps.find(({ verb }) => verb === 'attach')!, steps.at(-1)!];
    expect(ring).toMatchObject({ title: 'Slip the ring onto the fob', tools: [], cautions: ['parts'] });
    expect(steps.find(({ verb }) => verb === 'join')!.cautions).toContain('zip');
    // From its stop, 3/4 in from its left end, to a row 1/8 in inside the other tab, which lies on it by 1/2 in.
    const drawn = drawStep(turned, pattern);
    expect(drawn.text.join(' ')).toContain('The zip opens over 7 and 5 eighths inches.');
    expect(drawn.shapes.map(({ name }) => name)).toEqual(expect.arrayContaining(['after teeth', 'after hardware']));
  });
});

describe('the tote that is turned through its lining', () => {
  it('comes to the size of the tote whose lining is put in', () => {
    const one = made('turned-tote', 'inch');
    // Two panels of 16 1/2 in and a seam of 1/2: 32. Sewn round 18 x 31, boxed at both ends by 3 less each way; then half as high.
    expect(one.steps.slice(-6)).toEqual([
      'bag 19 in x 32 in',
      'bag 15 in x 28 in',
      'bag 15 in x 28 in',
      'bag 15 in x 28 in',
      'bag 15 in x 14 in',
      'bag 15 in x 14 in',
    ]);
    expect(one.steps.at(-1)).toBe(made('lined-tote', 'inch').steps.at(-1));
    // Round 15 and 3, twice.
    expect(one.rows.at(-1)).toMatch(/opening: 36 in /u);
    const metric = made('turned-tote', 'metric');
    expect(metric.steps.at(-1)).toBe('bag 380 mm x 360 mm');
    expect(metric.rows.at(-1)).toMatch(/opening: 912 mm /u);
  });
});

describe('the skirt with an elastic waist', () => {
  it('is cut in five sizes, each edition by itself', () => {
    const file = fileOf('elastic-skirt');
    const panels = (edition: Edition) =>
      ['extra small', 'small', 'medium', 'large', 'extra large'].map((size) => {
        const { width, height } = resolveProject(file, { edition, size }).pieces['front']!.size;
        return `${formatLength(width, edition)} x ${formatLength(height, edition)}`;
      });
    // Half of the hips and 4 in, and two seams of 5/8; the length, 1 1/8 and 1/16 and 1/4 for the casing, 1/2 and 1 for the hem.
    expect(panels('inch')).toEqual([
      '20 1/4 in x 22 15/16 in',
      '21 3/4 in x 23 15/16 in',
      '23 1/4 in x 24 15/16 in',
      '25 1/4 in x 25 15/16 in',
      '27 1/4 in x 26 15/16 in',
    ]);
    // Half of the hips and 100 mm, and two seams of 15; the length, 28 and 2 and 6, and 12 and 25.
    expect(panels('metric')).toEqual([
      '510 mm x 583 mm',
      '550 mm x 603 mm',
      '590 mm x 633 mm',
      '640 mm x 653 mm',
      '690 mm x 683 mm',
    ]);
  });

  it('comes to its hips and ease, and buys more for a larger size', () => {
    const small = made('elastic-skirt', 'inch', { size: 'extra small' });
    const large = made('elastic-skirt', 'inch', { size: 'extra large', options: { 'pocket kind': 'no pocket' } });
    // Lying flat, half of 34 and 4 in, and 20 long; half of 48 and 4, and 24.
    expect([small.steps.at(-1), large.steps.at(-1)]).toEqual(['skirt 19 in x 20 in', 'skirt 26 in x 24 in']);
    expect([small.cut.length, large.cut.length]).toEqual([4, 3]);
    // On cloth 42 in wide two panels of 20 1/4 lie side by side, and of 27 1/4 one above the other; the pocket goes beside them.
    // Elastic of 24 and 38 in, less 2 and with an overlap of 1.
    expect([small.buys, large.buys]).toEqual([
      ['outer 36 in', 'elastic 27 in'],
      ['outer 58 1/2 in', 'elastic 45 in'],
    ]);
  });

  it('is drawn up to 2 in less than the waist by elastic that is cut 1 in longer, in either edition', () => {
    const file = fileOf('elastic-skirt');
    for (const [edition, size, waist, hips, elastic] of [
      ['inch', 'medium', 28 * 25.4, 44 * 25.4, 29 * 25.4],
      ['inch', 'large', 32 * 25.4, 48 * 25.4, 33 * 25.4],
      // 760 and 860 less 50, 1020 and 1120 with 100; the elastic 25 longer.
      ['metric', 'medium', 710, 1120, 735],
      ['metric', 'large', 810, 1220, 835],
    ] as const) {
      const pattern = resolveProject(file, { edition, size, materials });
      const skirt = makeUp(pattern).at(-1)!.after;
      expect(pattern.pieces['elastic']!.size.width).toBeCloseTo(elastic, 6);
      expect(openingsOf(skirt).map(({ name, round }) => [name, Math.round(round * 1000) / 1000])).toEqual([
        ['bottom opening', Math.round(hips * 1000) / 1000],
        ['top opening', Math.round(waist * 1000) / 1000],
      ]);
    }
  });
});
