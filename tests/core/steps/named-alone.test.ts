/** What a step names is all that it takes: neither a third work nor an edge too many is read as something else, and none is drawn up along. */
import { describe, expect, it } from 'vitest';
import { found, ledger, panels } from '../project/steps.ts';
import { makeUp } from '../../../src/core/project/index.ts';
import { resolved } from '../project/files.ts';

const third = '  third: { size: [100 mm, 80 mm] }';

describe('a third work in a seam', () => {
  it('is caught only where the step says so', () => {
    expect(found(panels('- { join: [front, back, third], at: [right, left, left], makes: row }', third))).toEqual([
      'error steps > 0 > join > 2: too-many: “join” takes 2 works, and “third” is one more. ' +
        'Write a step of its own for it, or “between: third” if it is caught in the seam of the others.',
    ]);
    const row =
      '- { join: [front, back], at: [right, left] }\n- { join: [front, third], at: [right, left], makes: row }';
    // 3 x 100 - 4 x 6 mm of seams.
    expect(ledger(panels(row, third)).at(-1)).toMatch(/row 276 x 80$/u);
    expect(found(panels(row, third))).toEqual([]);
  });

  it('has an edge of its own, and no other has', () => {
    expect(found(panels('- { join: [front, back], at: [right, left, top], makes: row }'))).toEqual([
      'error steps > 0 > at > 2: too-many-edges: “top” belongs to none of the works: 2 are sewn here, and 3 edges are named. ' +
        'Name one edge for each work, or a single one for all.',
    ]);
    const sentence = '“at” takes 2 edges, and “top” is one more. Write a step of its own for it.';
    for (const [verb, more] of [
      ['lay: front, on: back', ''],
      ['french seam: [front, back]', ''],
      ['flat-felled seam: [front, back]', ''],
      ['sew round: [front, back], between: third', third],
    ] as const) {
      const yaml = panels(`- { ${verb}, at: [right, left, top], makes: row }`, more);
      expect(found(yaml)[0]).toBe(`error steps > 0 > at > 2: too-many: ${sentence}`);
    }
  });

  it('that is caught all round names the edge', () => {
    const tab = '  tab: { size: [20 mm, 40 mm] }';
    expect(found(panels('- { sew round: [front, back], between: tab, makes: bag }', tab))[0]).toBe(
      'error steps > 0: no-edge: With which edge the tab is caught is not said. Name the edge: “at: top”.',
    );
  });

  it('that is longer than what it is caught in is sewn down at the far side, and says so', () => {
    const tie = (long: number) =>
      found(
        panels(
          '- { sew round: [front, back], between: tie, at: [right, left], gap: { edge: bottom, length: 40 mm }, makes: roll }',
          `  tie: { size: [${long} mm, 20 mm] }`,
        ),
      );
    expect(tie(80)).toEqual([]);
    expect(tie(150)).toEqual([
      'error steps > 0 > at > 1: sewn-down: tie reaches into the seam at the right and at the left: it would be sewn down there and ' +
        'could not come out. Fold before you sew, or unpick that row.',
    ]);
  });

  it('is refused alike by every verb that takes two', () => {
    for (const verb of ['french seam', 'flat-felled seam', 'sew round']) {
      const yaml = panels(
        `- { ${verb}: [front, back, third], ${verb === 'sew round' ? '' : 'at: top, '}makes: row }`,
        third,
      );
      expect(found(yaml)[0]).toMatch(
        /^error steps > 0 > .* > 2: too-many: “.*” takes 2 works, and “third” is one more\./u,
      );
    }
  });
});

describe('gathering', () => {
  const gathered = (before: string, edge: string, more = '') =>
    found(panels(`${before}\n- { gather: work, at: ${edge}, to: 60 mm }`, more)).filter((line) =>
      line.startsWith('error'),
    );
  const sewnAlready = (edge: string) =>
    `error steps > 1 > at: sewn-along: The edge ${edge} is sewn already, “front” and “back” together: a seam is not drawn up. ` +
    'Gather the edge first, and sew it afterwards.';

  it('does not draw up an edge that is sewn round', () => {
    for (const edge of ['bottom', 'left', 'right', 'top']) {
      expect(gathered('- { sew round: [front, back], makes: work }', edge)).toEqual([sewnAlready(edge)]);
    }
    const turned = '- { sew round: [front, back], open: [top], makes: work }\n- { turn: work }';
    expect(gathered(turned, 'bottom')[0]).toMatch(/^error steps > 2 > at: sewn-along: /u);
  });

  it('does not draw up what a row holds to something else', () => {
    const pocket = '  pocket: { size: [90 mm, 40 mm] }';
    const steps = '- { lay: pocket, on: front, at: bottom, makes: work }\n';
    const sewn = `${steps}- { edgestitch: work, at: [pocket left, pocket right] }`;
    expect(gathered(sewn, 'pocket top', pocket)).toEqual([
      'error steps > 2 > at: sewn-along: “pocket” is sewn to “front” beside its edge pocket top, and that is not drawn up with it. ' +
        'Gather the edge first, and sew it afterwards.',
    ]);
  });

  it('draws up what it names alone', () => {
    const pocket = '  pocket: { size: [90 mm, 40 mm] }';
    const steps =
      '- { lay: pocket, on: front, at: bottom, makes: work }\n- { gather: work, at: pocket top, to: 60 mm }';
    const { after } = makeUp(resolved(panels(steps, pocket)))[1]!;
    const of = (piece: string) => after.plies.filter((ply) => ply.piece === piece);
    expect(of('front').map(({ fullness }) => fullness)).toEqual([1]);
    expect(of('pocket').map(({ fullness }) => fullness)).toEqual([1, 1.5]);
    // Two layers of one shape: the upper one is drawn up by its name, both by the side.
    const both = '- { lay: back, on: front, makes: work }\n';
    const fullness = (edge: string) =>
      makeUp(resolved(panels(`${both}- { gather: work, at: ${edge}, to: 50 mm }`)))[1]!.after.plies.map(
        ({ piece, fullness }) => `${piece} ${fullness}`,
      );
    expect(fullness('back top')).toEqual(['front 1', 'back 1', 'back 2']);
    expect(fullness('top')).toEqual(['front 1', 'front 2', 'back 1', 'back 2']);
  });

  it('goes over what is basted, hemmed or sewn across', () => {
    for (const before of [
      '- { lay: back, on: front, makes: work }\n- { baste: work, at: top, by: 3 mm }',
      '- { lay: back, on: front, makes: work }\n- { topstitch: work, at: [left, right], by: 3 mm }',
      '- { hem: front, at: [left, right], fold: 5 mm, makes: work }\n- { press: back }',
    ]) {
      expect(gathered(before, 'top')).toEqual([]);
    }
  });
});
