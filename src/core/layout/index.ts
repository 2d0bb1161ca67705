export { layOut, searchLayouts } from './lay-out.ts';
export { wanted } from './demand.ts';
export { saleSteps, toBuy } from './purchase.ts';
export type { Progress } from './lay-out.ts';
export type { Cloth, Demand, LayOptions, Selling, Wanted } from './demand.ts';
export type { LaidCloth, Layout, Placement } from './layout.ts';
export type { StraightCut } from './cuts.ts';
export type { Purchase } from './purchase.ts';
