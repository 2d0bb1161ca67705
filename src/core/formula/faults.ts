/** What is said of formulas that fail, to those who can mend them. */
export * as mismatches from './mismatches.ts';
export * as refusals from './refusals.ts';
