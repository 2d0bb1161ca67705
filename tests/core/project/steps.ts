import { check, makeUp } from '../../../src/core/project/index.ts';
import { lines, resolved } from './files.ts';
import type { Settings, Step } from '../../../src/core/project/index.ts';

/** A project of two plain panels, to which a test adds its steps. */
export const panels = (steps: string, more = ''): string => `
title: Panels
units: metric
measures:
  seam: { mm: 6, in: 1/4 }
pieces:
  front: { size: [100 mm, 80 mm] }
  back: { size: [100 mm, 80 mm] }
${more}
steps:
${steps.replace(/^/gmu, '  ')}
`;

/** The steps of a project, each as its title, its result and its size in mm. */
export const ledger = (yaml: string, settings: Settings = {}): string[] => makeUp(resolved(yaml, settings)).map(told);

const told = ({ title, makes, size }: Step): string =>
  `${title} -> ${makes} ${Number(size.width.toFixed(4))} x ${Number(size.height.toFixed(4))}`;

/** What is found wrong, in one line each. */
export const found = (yaml: string, settings: Settings = {}): string[] => lines(check(resolved(yaml, settings)));
