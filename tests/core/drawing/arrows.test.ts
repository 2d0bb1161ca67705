/** Arrows show what moves in a step: one for each part that moves, so that no arrow seems to have two heads. */
import { describe, expect, it } from 'vitest';
import { drawStep, makeUp, NARROWEST, resolveProject } from '../../../src/core/index.ts';
import { folio, notionsPouch, shelf, tableSet } from '../project/files.ts';

describe.each(['inch', 'metric'] as const)('arrows, %s', (edition) => {
  it.each([
    ['folio', folio],
    ['pouch', notionsPouch],
    ['table set', tableSet],
  ])('never begin where another begins: %s', (_, file) => {
    const pattern = resolveProject(file(), { edition, materials: shelf() });
    const drawn = makeUp(pattern).map((step) => drawStep(step, { ...pattern, fit: { width: NARROWEST } }));
    const beginnings = drawn.map(({ shapes }) =>
      shapes.flatMap((shape) =>
        shape.kind === 'path' && shape.role === 'arrow'
          ? shape.path.flatMap((command, i) =>
              command[0] === 'M' && shape.path[i + 1]?.[0] === 'C' ? [[command[1], command[2]]] : [],
            )
          : [],
      ),
    );
    expect(beginnings.flat().length).toBeGreaterThan(0);
    for (const points of beginnings) expect(new Set(points.map(String)).size).toBe(points.length);
  });

  it('show both edges of the practice square folded in, and no third thing at its mitre', () => {
    const pattern = resolveProject(tableSet(), { edition, materials: shelf() });
    const step = makeUp(pattern).find(({ id }) => id === 'practice')!;
    const arrow = drawStep(step, { ...pattern, fit: { width: NARROWEST } }).shapes.find(({ name }) => name === 'arrow');
    expect(arrow?.kind === 'path' && arrow.path.filter(([letter]) => letter === 'C')).toHaveLength(2);
  });
});
