export { MOST_MAKERS, ONE, setsFor, type Group } from './group.ts';
export { kitFor, kitSteps, type Kit, type KitLine, type KitOptions } from './kit.ts';
export {
  boltOf,
  clothNeed,
  demandOf,
  inProject,
  isByLength,
  isCloth,
  piecesOf,
  sellingOf,
  STRAIGHTENING,
  stripWords,
  washedWidth,
  type ClothNeed,
} from './cloth.ts';
export { sharesOf, type Share } from './shares.ts';
export { threadIn, threadNeed, WASTE, type ThreadNeed } from './thread.ts';
export { needlesNeed, type NeedleNeed } from './needles.ts';
export { countedNeed, type CountedNeed } from './counted.ts';
export { digitsOf, formatMoney, priced, type Per, type Priced } from './price.ts';
export { kitRows, type KitRow } from './rows.ts';
export { csv, kitCsv } from './csv.ts';
export { shopAmount, shopLength } from './shop.ts';
export {
  alongSelvage,
  biasFromSquare,
  continuousBias,
  doubleFold,
  squareForBias,
  squaresForBias,
  stripsFor,
} from './strips.ts';
export { prepare, tasksOf, type Preparation, type Station, type ClassTask, type Visit } from './tasks.ts';
export { runRoom, type RoomRun, type Stations, type Waiting } from './queue.ts';
export { outlookOf, type Outlook, type Room, type TaskOutlook } from './simulate.ts';
export { oneMoreWords, SESSION_NOTE, sessionHeads, sessionLines, type SessionLine } from './session-words.ts';
export { planSessions, type PlannedSitting, type SessionPlan, type SessionOptions, type Taught } from './sessions.ts';
