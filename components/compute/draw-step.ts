/** A step as pages draw it. The command that builds draws steps with it as well. */
import {
  drawMade,
  drawStep,
  makeUp,
  oncePer,
  type Fit,
  type Pattern,
  type Scene,
  type Step,
} from '../../src/core/index.ts';
import { ROOM } from './fit.ts';

/** The step with an id, at the size of a pattern; undefined where an option leaves it out. */
export const stepOf = (pattern: Pattern, id: string): Step | undefined =>
  makeUp(pattern).find((step) => step.id === id);

/** A step, before and after, without its title: that stands over it on the page. */
export const draw = oncePer((pattern: Pattern, id: string) => drawIn(pattern, id, ROOM));

/** The same in a room of its own. */
export function drawIn(pattern: Pattern, id: string, fit: Fit): Scene | undefined {
  const step = stepOf(pattern, id);
  if (!step) return undefined;
  const { title } = step;
  const scene = drawStep({ ...step, title: '' }, { ...pattern, fit });
  return { ...scene, title, text: [`${title}.`, ...scene.text.slice(1)] };
}

/** What the steps come to, as a page shows it where a project is only named; undefined where it has no steps. */
export const drawWhole = (pattern: Pattern): Scene | undefined =>
  drawMade(makeUp(pattern), { ...pattern, fit: { width: 110, height: 90 } });
