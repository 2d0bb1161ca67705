export { MaterialsFile, ProjectFile } from './schema.ts';
export { oncePer, type PatternCache } from './cache.ts';
export { resolveProject, type Settings } from './resolve.ts';
export { inSize } from './in-size.ts';
export { wayOf, type ProjectWay } from './ways.ts';
export { formatChosen, isOnStep, readPlainNumber } from './chosen.ts';
export { check } from './check.ts';
export { checkAll, metIn, MOST_COMBINATIONS, MOST_SLIDERS, type Occurrence, type WorkOut } from './check-all.ts';
export { ALL_STEPS, layersAsked, layersSaid } from './steps/layers-said.ts';
export { ledgerOf, makeUp, makeUpSteps } from './steps/make-up.ts';
export { matchingOf, matchWords, printOf, type Matching } from './matching.ts';
export { checkMaterials, readMaterial, type Materials } from './materials.ts';
export { cutList, materialsList, type CutRow, type MaterialRow } from './lists.ts';
export {
  MOST_POCKETS,
  planFolds,
  planPleats,
  type PleatFault,
  type PleatFold,
  type PleatFolds,
  type PleatPlan,
  type PleatResult,
  type PleatSettings,
  type Pocket,
  type StripRun,
} from './pleats.ts';
export { MOST_PLEATS, planEdgePleats, type EdgePleatPlan, type EdgePleatWish } from './edge-pleats.ts';
export { steppedPleats } from './shapes.ts';
export { needleWords, suits, weightOf, type NeedlePoint, type NeedleStack, type Suits, type Weight } from './needle.ts';
export { inText, scopeOf, textsIn, type WrittenText } from './texts.ts';
export { saySewing, type Sewing } from './sewing.ts';
export { threadPer } from './thread.ts';
export { unusedMeasures } from './unused.ts';
export { publishedSize, publishedSizes, type PublishedSize } from './sizes.ts';
export type { StepPlan } from './steps/plan.ts';
export type { IronLimit, Ledger, SewnRow, Step, Thickest, Timer } from './step.ts';
export type {
  Adjustable,
  Choice,
  Cutting,
  FoldLine,
  Grain,
  HoldCheck,
  Making,
  Material,
  Measure,
  Notch,
  OptionChoice,
  Origin,
  Pattern,
  Piece,
  Price,
  Role,
  Size,
  Sizes,
  Source,
} from './pattern.ts';
