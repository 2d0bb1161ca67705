/** Raw edges that are kept from fraying, and those that a project which is washed leaves raw. */
import { describe, expect, it } from 'vitest';
import { drawStep, makeUp } from '../../../src/core/index.ts';
import { exposedEdges } from '../../../src/core/cloth/index.ts';
import { found, panels } from '../project/steps.ts';
import { resolved } from '../project/files.ts';
import type { Materials } from '../../../src/core/index.ts';

const more = `  strip: { size: [100 mm, 40 mm], allowance: 0 }
  disc: { circle: 40 mm, allowance: 0 }`;
const steps = (yaml: string) => makeUp(resolved(panels(yaml, more)));
const last = (yaml: string) => steps(yaml).at(-1)!;
const finished = (yaml: string) =>
  last(yaml).after.plies.flatMap(({ piece, outline }) =>
    outline.flatMap(({ name, finish }) => (finish === undefined ? [] : `${piece} ${name}: ${finish}`)),
  );
const refused = (yaml: string) => found(panels(yaml, more)).filter((line) => line.startsWith('error'));

describe('a raw edge', () => {
  it('is overcast by a row as long as it is', () => {
    const step = last('- { finish: front, at: [left, right], with: zigzag }');
    expect(step.title).toBe('Finish the front at the left and the right with a zigzag stitch');
    expect(step.stitches.map(({ kind, class: type, length, layers }) => [kind, type, length, layers])).toEqual([
      ['zigzag', '304', 80, 1],
      ['zigzag', '304', 80, 1],
    ]);
    // A zigzag takes 5.5 times its length of thread (Coats, Stitch Type Classification).
    expect(step.stitches[0]!.thread).toBeCloseTo(5.5 * 80, 6);
    expect([step.tools, step.cautions]).toEqual([['sewing machine'], ['needle']]);
    expect(finished('- { finish: front, at: [left, right], with: zigzag }')).toEqual([
      'front right: zigzag',
      'front left: zigzag',
    ]);
  });

  it('loses nothing to pinking shears, which sew no row', () => {
    const step = last('- { finish: front, at: all, with: pinked }');
    expect(step.size).toEqual({ width: 100, height: 80 });
    expect([step.stitches, step.tools, step.cautions]).toEqual([[], ['pinking shears'], ['scissors']]);
    const scene = drawStep(step, resolved(panels('- { press: front }')));
    expect(
      scene.shapes.some((shape) => shape.kind === 'path' && shape.name.startsWith('after') && shape.role === 'pinked'),
    ).toBe(true);
  });

  it('is trimmed and overcast in one by an overlock, on a machine with a knife', () => {
    const step = last('- { finish: front, at: top, with: overlock }');
    expect([step.tools, step.cautions]).toEqual([['overlock machine'], ['overlock']]);
    expect(step.sewing).toEqual({ stitches: [{ name: 'overlock, on a machine of its own' }] });
  });

  it('is followed where it is round', () => {
    // The row runs 1.5 mm inside a circle of 40 mm.
    expect(last('- { finish: disc, at: edge, with: zigzag }').stitches[0]!.length).toBeCloseTo(Math.PI * 37, 0);
  });
});

describe('allowances', () => {
  const round = '- { sew round: [front, back], open: top, makes: bag }';

  it('are finished together where they lie on one another, and go in with the seam', () => {
    const yaml = `${round}\n- { finish: bag, at: [left, bottom, right], with: zigzag }`;
    // One row round both corners, where its middle turns 1.5 mm from either edge: 80 + 100 + 80 - 4 x 1.5.
    expect(last(yaml).stitches.map(({ length, layers }) => [length, layers])).toEqual([[254, 2]]);
    const turned = last(`${yaml}\n- { turn: bag }`);
    expect(turned.size).toEqual({ width: 88, height: 74 });
    // Each row still goes through both allowances, and lies 4.5 mm inside the bag.
    const zigzag = turned.after.stitches.filter(({ kind }) => kind === 'zigzag');
    expect(zigzag).toHaveLength(1);
    expect(zigzag.flatMap(({ runs }) => runs.map(({ plies }) => plies.length))).toEqual(expect.arrayContaining([2]));
    expect(finished(`${yaml}\n- { turn: bag }`).length).toBeGreaterThanOrEqual(6);
  });

  it('are finished each by itself where the seam is pressed open', () => {
    const yaml =
      '- { join: [front, back], at: [right, left], press: open, makes: wide }\n- { finish: wide, at: seams, with: overlock }';
    expect(last(yaml).title).toBe('Finish the seam allowances of the wide with an overlock stitch');
    expect(last(yaml).stitches.map(({ length, layers }) => [length, layers])).toEqual([
      [80, 1],
      [80, 1],
    ]);
    expect(finished(yaml)).toEqual(['front right: overlock', 'back left: overlock']);
  });

  it('are reached by the name of their piece', () => {
    const yaml =
      '- { join: [front, back], at: [right, left], press: open, makes: wide }\n- { finish: wide, at: front right, with: pinked }';
    expect(finished(yaml)).toEqual(['front right: pinked']);
  });
});

it.each([
  [
    '- { fold: front, from: left, at: 20 mm }\n- { finish: front, at: left, with: zigzag }',
    'at: misses: The left is folded there, and no raw edge. Leave it out here, or name another edge.',
  ],
  [
    '- { finish: front, at: top, with: pinked }\n- { finish: front, at: top, with: zigzag }',
    'at: misses: The top is finished already. Leave it out here, or name another edge.',
  ],
  [
    '- { finish: front, at: seams, with: zigzag }',
    'at: misses: No seam here has an allowance that is raw. Leave it out here, or name another edge.',
  ],
  [
    '- { sew round: [front, back], gap: { edge: top, length: 40 mm }, makes: bag }\n- { turn: bag }\n- { close gap: bag }\n- { finish: bag, at: seams, with: zigzag }',
    'at: enclosed: The allowances of all seams lie inside, where nobody gets at them. Finish them before they are turned in or sewn shut.',
  ],
  [
    '- { finish: front, at: slope, with: zigzag }',
    'at: unknown-edge: There is no free edge “slope”. There are bottom, right, top, left.',
  ],
])('is refused where nothing can be finished: %s', (yaml, message) => {
  expect(refused(yaml)).toEqual([expect.stringContaining(message)]);
});

describe('what stays exposed', () => {
  const exposed = (yaml: string) =>
    [...new Set(exposedEdges(last(yaml).after).map(({ ply, edge }) => `${ply.piece} ${edge.name}`))].toSorted();

  it('is every edge of a flat piece, and both allowances of a seam', () => {
    expect(exposed('- { press: strip }')).toEqual(['strip bottom', 'strip left', 'strip right', 'strip top']);
    expect(exposed('- { join: [front, back], at: [right, left], makes: wide }')).toContain('front right');
  });

  it('is what lies in an open bag, and nothing that is shut', () => {
    const sewn = (how: string) => `- { sew round: [front, back], ${how}, makes: bag }\n- { turn: bag }`;
    expect(exposed(sewn('open: top'))).toEqual(expect.arrayContaining(['back left', 'front bottom', 'front right']));
    expect(exposed(`${sewn('gap: { edge: top, length: 40 mm }')}\n- { close gap: bag }`)).toEqual([]);
  });

  it('is not what lies in a hem, a French seam or a binding', () => {
    expect(exposed('- { hem: front, at: top, fold: 6 mm, then: 10 mm }')).toEqual([
      'front bottom',
      'front left',
      'front right',
    ]);
    const french = '- { french seam: [front, back], at: [right, left], seam: 15 mm, makes: wide }';
    expect(exposed(french)).not.toContain('front cut');
    expect(exposed('- { bind: front, with: strip, at: top, width: 10 mm }')).toEqual(
      expect.not.arrayContaining(['front top', 'strip bottom', 'strip top']),
    );
  });

  it('is the edge of a hem that is turned once', () => {
    expect(exposed('- { hem: front, at: top, fold: 20 mm }')).toContain('front top');
  });
});

describe('work that is washed', () => {
  const cloth = `materials: { outer: { use: linen }, soft: { use: felt } }
washed: true`;
  const materials: Materials = { linen: { kind: 'cloth' }, felt: { kind: 'cloth', frays: false } };
  const raw = (steps: string, from = 'outer', head = cloth) => {
    const yaml = panels(steps).replace(/size:/gu, `from: ${from}, size:`) + head;
    return found(yaml, { materials }).filter((line) => line.includes('raw-inside'));
  };
  const bag = '- { sew round: [front, back], open: top, makes: bag }';

  it('is asked for raw edges, told at the seam that holds them', () => {
    expect(raw(`${bag}\n- { turn: bag }`)).toEqual([
      'warning steps > 0: raw-inside: The back bottom, the back left, the back right, the front bottom, the front left and the front right stay raw, and fray in the wash. Finish the edges before they are sewn, or their allowances right after: finish: bag, at: seams, with: zigzag. Or line or bind them.',
      'warning washed: raw-inside: The back top and the front top stay raw, and fray in the wash. Hem, bind or finish them.',
    ]);
    expect(raw(`${bag}\n- { turn: bag }`, 'outer', cloth.replace('washed: true', ''))).toEqual([]);
  });

  it('is content once they are finished, and where the cloth does not fray', () => {
    const all = '- { finish: front, at: all, with: zigzag }\n- { finish: back, at: all, with: overlock }\n';
    expect(raw(`${all}${bag}\n- { turn: bag }`)).toEqual([]);
    expect(raw(`${bag}\n- { turn: bag }`, 'soft')).toEqual([]);
  });
});
