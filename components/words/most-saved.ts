/** How much of what a lesson’s words keep a hand-in has room for, of each lesson. */
export const mostSaved = { answer: 1000, practice: 200, measured: 200 } as const;
