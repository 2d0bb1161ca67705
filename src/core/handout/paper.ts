/** Sizes of paper in mm. A4: ISO 216. Letter: 8 1/2 × 11 in, ANSI/ASME Y14.1 (size A). */
export const papers = {
  A4: { width: 210, height: 297 },
  Letter: { width: 8.5 * 25.4, height: 11 * 25.4 },
} as const;

export type PaperName = keyof typeof papers;

/** White round everything that is read, in mm. */
export const MARGIN = 12;

/** Lines of templates may come this near to the paper's edge: printers reach that far (common practice, no source). */
export const SAFE = 10;
