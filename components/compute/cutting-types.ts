/** What a page tells of cloth to cut and to buy: plain values, worked out when the page is built or by the worker. */
import type { Edition, Scene, SessionPlan, Preparation, Taught, KitRow, Group } from '../../src/core/index.ts';

/** How a cloth is laid in the study. Lengths in mm. */
export type LayoutRequest = {
  /** The material's role. */
  role: string;
  /** The key of a pre-cut, or “bolt”. */
  as: string;
  width: number;
  nap: boolean;
  manner: 'free' | 'straight cuts';
  /** Selvage on selvage, so that scissors cut double. */
  folded: boolean;
  sets: number;
  own?: OwnClothText;
};

/** Cloth as a learner wrote it, a line for each. A number without a unit is in the edition it was written in. */
export type OwnClothText = { offcuts: string; bolts: string; edition: Edition };

export type LayoutRow = {
  n: number;
  label: string;
  /** From the left edge and from the cut end, and its box; set as the page sets lengths. */
  left: string;
  up: string;
  width: string;
  height: string;
  turned: string;
};

export type LayoutSheet = { title: string; pieces: LayoutRow[]; cuts: string[] };

export type LayoutWords = {
  /** As many as can be looked at; the rest is only counted. */
  sheets: LayoutSheet[];
  more: number;
  /** The numbers, each with its words. */
  rows: { what: string; amount: string }[];
  proven: boolean;
  /** What happened, in one sentence. */
  sentence: string;
  troubles: string[];
  /** What was read of a learner's own cloth, and what could not be. */
  own?: Record<'offcuts' | 'bolts', { words: string; faults: string[] }>;
};

/** A layout in words, and a drawing of each sheet. */
export type DrawnLayout = { words: LayoutWords; scenes: Scene[] };

export type PricedLine = KitRow & { cost?: number; price?: number };

export type PricedList = {
  group: Group;
  sets: number;
  /** Where several sizes are made: how many sets of each, in words. */
  sizes?: string;
  lines: PricedLine[];
  total: number;
  perMaker: number;
  unpriced: string[];
  troubles: string[];
};

export type ClassRequest = {
  makers: number;
  spares: number;
  machines: number;
  irons: number;
  /** Minutes of each session. */
  sessions: number[];
  /** The time of day each begins, as 18:30; an empty text where that is not known. */
  begins: string[];
  /** The lessons that are held in them. */
  lessons: Taught[];
  prices: Record<string, number>;
  /** How many of the makers make each size, where they make several; the others make that of the page. */
  sizes?: Record<string, number>;
};

export type ClassPlan = {
  list: PricedList;
  /** The list as a table for a spreadsheet. */
  csv: string;
  preparation: Preparation;
  plan: SessionPlan;
};
