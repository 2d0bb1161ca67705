/**
 * How often a property is tried. Every run of the suite tries the same cases, so that a failure can be found again;
 * `SEED=7 npm test` tries others.
 */
export const runs = (numRuns: number): { numRuns: number; seed: number } => ({
  numRuns,
  seed: Number(process.env['SEED'] ?? 1),
});
