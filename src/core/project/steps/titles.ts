/** A step in a plain sentence, made from its verb. */
import { listed } from '../names.ts';
import type { StepPlan } from './plan.ts';

const the = (name: string): string => (/^(the|a|an) /iu.test(name) ? name : `the ${name.trim()}`);
const all = (names: readonly string[]): string => listed(names.map(the));

/**
 * What the step does, without a full stop.
 *
 * @example titleOf(plan) // => 'Join the pocket panel and the facing at the top'
 */
export function titleOf({ verb, words, takes }: StepPlan): string {
  const [first = '', second = ''] = takes.map((one) => one.name);
  const edges = edgesOf(words.at);
  const where = edges.length === 0 || edges[0] === 'all' ? '' : ` at ${listed(edges.map(the))}`;
  switch (verb) {
    case 'fuse':
      return `Fuse ${the(first)} to ${the(second)}`;
    case 'join': {
      const caught = [words.between ?? []].flat();
      const joined = takes.slice(0, takes.length - caught.length).map((one) => one.name);
      const between = caught.length > 0 ? `, with ${all(caught)} between` : '';
      return `Join ${atEdges(joined, edges)}${between}`;
    }
    case 'french seam':
      return `Join ${atEdges([first, second], edges)} with a French seam`;
    case 'flat-felled seam':
      return `Join ${atEdges([first, second], edges)} with a flat-felled seam`;
    case 'sew round': {
      const [open, caught] = [[words.open ?? []].flat(), [words.between ?? []].flat()];
      const between = caught.length > 0 ? `, with ${all(caught)} between${where}` : '';
      if (open.length > 0) return `Sew ${all([first, second])} together${between}, leaving ${all(open)} open`;
      const gap = words.gap ? `, but for a gap at ${the(words.gap.edge)}` : '';
      return `Sew ${all([first, second])} together all round${between}${gap}`;
    }
    case 'pleat':
      return `Fold the pleats of ${the(first)}`;
    case 'tuck':
      return `Sew a tuck in ${the(first)}`;
    case 'hem':
      return `Hem ${the(first)}${where}`;
    case 'lay': {
      const faces = words.face === 'down' ? ', right sides together' : '';
      return `Lay ${the(first)} on ${the(second)}${where}${faces}`;
    }
    case 'baste':
      return `Baste ${the(first)}${where}`;
    case 'trim':
      return words.size ? `Trim ${the(first)} to size` : `Trim ${the(first)}${where}`;
    case 'grade':
      return `Grade the seam allowances of ${the(first)}`;
    case 'clip corners':
      return `Clip the corners of ${the(first)}`;
    case 'turn over':
      return `Turn ${the(first)} over`;
    case 'turn':
      return `Turn ${the(first)} right side out`;
    case 'close gap':
      return `Close the gap of ${the(first)}${words.stitch === 'by machine' ? '' : ' by hand'}`;
    case 'gather':
      return `Gather ${the(first)}${where}`;
    case 'box corner':
      return `Box the corners of ${the(first)}`;
    case 'bind':
      return `Bind ${the(first)}${where} with ${the(second)}`;
    case 'casing':
      return `Make a casing in ${the(first)}${where}`;
    case 'attach':
      return `Set ${the(words.attach!)} on ${the(first)}`;
    case 'fold': {
      const parts = words.only === undefined ? the(first) : `${all([words.only].flat())} of ${the(first)}`;
      return `Fold ${parts} ${words.lands ?? 'over'}`;
    }
    case 'topstitch':
      return `Topstitch ${the(first)}${where}`;
    case 'edgestitch':
      return `Edgestitch ${the(first)}${where}`;
    case 'press':
      return `Press ${the(first)}`;
  }
}

/** Edges as the step names them; distances are none. */
export function edgesOf(at: StepPlan['words']['at']): string[] {
  return at === undefined ? [] : [at].flat().filter((edge) => typeof edge === 'string');
}

/** `the bag and the facing at the top`, or each with an edge of its own: `the bag at the top and the base at the left`. */
function atEdges(works: readonly string[], edges: readonly string[]): string {
  const [first] = edges;
  if (first === undefined) return all(works);
  if (edges.every((edge) => edge === first)) return `${all(works)} at ${the(first)}`;
  return listed(works.map((work, i) => `${the(work)} at ${the(edges[i] ?? first)}`));
}
