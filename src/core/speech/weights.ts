/**
 * How much each sign tells when steps are found in a recording, in the measure of a logarithm: a difference of 2.3 is ten
 * to one. Found by trial on invented recordings, and no more exact than they are many.
 */
export const weights = {
  // What words tell of a step.
  /** A phrase that is said of its verb, and one that is said of much else. */
  surely: 2.1,
  perhaps: 1.2,
  /** What more such phrases add. */
  further: 0.25,
  /** The name of what it is done to first, of what else it takes, and of what it makes. */
  first: 3,
  taken: 1.5,
  made: 0.7,
  /** A word of a name that is not its last, and one that is the name of a place as well. */
  partOfName: 1,
  place: 1.2,
  field: 0.8,
  note: 0.6,
  /** One of its lengths, and a length that is nearly one. */
  length: 2.6,
  nearly: 0.3,
  /** A side it is done at, and none but others. */
  side: 0.9,
  otherSide: 2.4,
  /** The first or second of several, and another of them. */
  which: 1.2,
  otherOne: 1.4,
  /** By how much a word tells less each time it is said. */
  common: 0.07,

  // What speaks for being in a step, and for its beginning.
  staying: 0.7,
  opening: 1.2,
  /** What speaks for all steps alike speaks for none: so much of the mean is taken away. */
  meanStaying: 0.8,
  meanOpening: 0.9,
  leastStaying: -0.5,
  mostStaying: 3,
  mostOpening: 7,
  /** From so much on a verb is said, and a work is named. */
  leastVerb: 0.4,
  isNamed: 0.25,
  /** What an opening lacks: a verb; a verb where the talk turns to the work, or only names it; the work. */
  noVerb: 2.3,
  topic: 0.3,
  namedOnly: 1.7,
  noName: 1.8,
  namedBefore: 0.4,
  /** An aside tells so much of what it says, and an “if” so much less. */
  aside: 0.3,
  ifSo: 1.2,
  /** The time before the first step, and behind the last. */
  welcome: 0.9,
  cutSize: 1.3,
  need: 2,
  making: 0.3,
  goodbye: 0.6,

  /** An opening that tells less than this hardly tells, and so much less again. */
  leastTelling: 0.8,
  hardlyTold: 2,
  /** By so much an opening tells more of a step than of the one before it which is done alike, or so much less is told. */
  news: 0.3,
  noNews: 1.2,
  /** How far from where it is expected a step begins: the square of that part of the whole. */
  outOfTime: 8,

  // What it costs to go on to another step.
  enter: 1.3,
  weakTurn: 1.6,
  noTurn: 3,
  /** By so much it costs less where the speaker says so. */
  announced: 1,
  starts: 5,
  onward: 5,
  /** Behind a result. */
  done: 3,
  /** For each step that is left out, and at the most. */
  skip: 1.6,
  skipMost: 3.2,
  likeSkipped: 2,
  likeNext: 1,
  /** Back to an earlier step, where something is told again and where not, and to the time before the first. */
  back: 12,
  backAgain: 1.6,
  toStart: 9,
  recall: 3.2,
};
