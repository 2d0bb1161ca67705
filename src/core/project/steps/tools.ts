/** The tools of a step, and what can hurt in it. Common practice, no source. */
import { materialsIn } from './thickness.ts';
import type { CautionKey, IronLimit } from '../step.ts';
import type { Pattern } from '../pattern.ts';
import type { StepPlan } from './plan.ts';
import type { Verb } from './verbs.ts';
import type { Work } from '../../cloth/index.ts';

const MACHINE = 'sewing machine';
const IRON = 'iron';
const RULER = 'ruler';
const SCISSORS = 'scissors';
/** Stands for pins or, where holes stay, clips. */
const HOLD = 'pins';

const usual: Record<Verb, readonly string[]> = {
  fuse: [IRON, 'press cloth'],
  join: [MACHINE, HOLD],
  'sew round': [MACHINE, HOLD],
  'french seam': [MACHINE, HOLD, IRON, SCISSORS],
  'flat-felled seam': [MACHINE, HOLD, IRON, SCISSORS],
  pleat: [RULER, 'marking pen', IRON, 'clips'],
  tuck: [MACHINE, RULER, 'marking pen', HOLD],
  hem: [MACHINE, IRON, RULER, HOLD],
  lay: [HOLD],
  baste: [MACHINE],
  trim: ['rotary cutter', 'cutting mat', RULER],
  grade: [SCISSORS],
  'clip corners': [SCISSORS],
  'turn over': [],
  turn: ['point turner', IRON],
  'close gap': ['hand needle'],
  gather: [MACHINE, HOLD],
  'box corner': [MACHINE, RULER, HOLD],
  bind: [MACHINE, IRON, 'clips'],
  casing: [MACHINE, IRON, RULER, HOLD],
  attach: ['setting tool', RULER, 'awl'],
  fold: [],
  topstitch: [MACHINE],
  edgestitch: [MACHINE],
  press: [IRON, 'press cloth'],
};

const cautionOf: Readonly<Record<string, CautionKey>> = {
  [MACHINE]: 'needle',
  [IRON]: 'iron',
  [SCISSORS]: 'scissors',
  'rotary cutter': 'blade',
  [HOLD]: 'pins',
};

/** Coolest setting of an iron, one dot of the care symbol: 110 °C (ISO 3758, as relayed by a care-label page). */
export const COOLEST = 110;

/** Plain names of the tools, the usual ones of the verb first and the author's own after them. */
export function toolsOf({ verb, words }: StepPlan, work: Work, pattern: Pattern): string[] {
  const tools: string[] = verb === 'close gap' && words.stitch === 'by machine' ? [MACHINE] : [...usual[verb]];
  if (verb === 'join' && words.press !== undefined) tools.push(IRON);
  const holesStay = materialsIn(pattern, work).some((material) => material.holes === 'stay');
  const held = tools.map((tool) => (tool === HOLD && holesStay ? 'clips' : tool));
  return [...new Set([...held, ...(words.tools ?? [])])];
}

/** How hot an iron may be for everything in the heap, as far as the shelf knows; undefined where none is used. */
export function ironLimitOf(tools: readonly string[], work: Work, pattern: Pattern): IronLimit | undefined {
  if (!tools.some((tool) => tool.startsWith(IRON))) return undefined;
  let least: IronLimit | undefined;
  for (const { heat, label } of materialsIn(pattern, work)) {
    if (heat !== undefined && heat < (least?.celsius ?? Infinity)) least = { celsius: heat, material: label };
  }
  return least;
}

/** What can hurt: from the tools, the hardware, and what heat does to the materials in the heap. */
export function cautionsOf(plan: StepPlan, work: Work, pattern: Pattern): CautionKey[] {
  const tools = toolsOf(plan, work, pattern);
  const cautions = tools.flatMap((tool) => cautionOf[tool] ?? []);
  const melts = materialsIn(pattern, work).some((material) => (material.heat ?? Infinity) < COOLEST);
  if (melts && tools.includes(IRON)) cautions.push('coating');
  if (plan.verb === 'attach') {
    const role = pattern.materials[plan.words.attach!];
    const isMagnet = /magnet/iu.test(`${plan.words.attach!} ${role?.use ?? ''} ${role?.label ?? ''}`);
    cautions.push(isMagnet ? 'magnet' : 'snap');
  }
  return cautions;
}
