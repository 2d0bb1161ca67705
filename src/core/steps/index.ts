/**
 * The verbs of the step language. Everything that is asked of a step (its fields, title, tools, minutes, cautions, and
 * what it does to the cloth) is read off its file in verbs/.
 */
export { always } from './always.ts';
export { cautionsOf, isPinned, usualTools } from './cautions.ts';
export { COOLEST, sayHeat, sayIron } from './heat.ts';
export { feet, hardware, tools } from './tools.ts';
export { keptBy, setsAtPoint, sew, takesWork, titleOf, verbIn, verbNamed, verbNames } from './instruction.ts';
export { stepFields, type StepField } from './step-fields.ts';
export { lineFrom } from './verbs/fold.ts';
export { LEARNER, minutesOf } from './minutes.ts';
export type { Always } from './always.ts';
export type { AnyVerb, Pressing, StepContext, Traits } from './verb.ts';
export type { CautionKey, Foot, Hardware, Material, Tool } from './tools.ts';
export type { Cell, Field, Fields } from './fields.ts';
export type { Instruction, VerbName } from './instruction.ts';
export type { Minutes } from './minutes.ts';
