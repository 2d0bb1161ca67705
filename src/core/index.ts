/** The core's one door: everything that computes, with no page, no file and no browser in it. */
export * from './measure/index.ts';
export * from './formula/index.ts';
export * from './geometry/index.ts';
export { layersInWords } from './cloth/index.ts';
export { feet, sayIron, tools, verbIn, verbNamed, verbNames } from './steps/index.ts';
export type { AnyVerb, CautionKey, Hardware, Instruction, Minutes, Tool, VerbName } from './steps/index.ts';
export * from './project/index.ts';
export * from './layout/index.ts';
export * from './kit/index.ts';
export * from './drawing/index.ts';
export * from './questions/index.ts';
export * from './handout/index.ts';
export * from './speech/index.ts';
