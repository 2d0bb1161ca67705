/** For how many makers things are got ready. */
import type { Diagnostic } from '../measure/index.ts';

export type Group = {
  makers: number;
  /** Whole sets of everything beside those, for slips and for whoever comes unannounced. */
  spares: number;
  /** Sewing machines in the room: each wants a needle and a spool of its own. One for each maker if left out. */
  machines?: number;
  /** Of the makers, how many make each size of the project; the others make that of the pattern. */
  sizes?: Readonly<Record<string, number>>;
};

/** One maker at home. */
export const ONE: Group = { makers: 1, spares: 0 };

/** More than this is no class. */
export const MOST_MAKERS = 500;

/** How many sets of everything are got ready. */
export const setsFor = ({ makers, spares }: Group): number => makers + spares;

/** The group with numbers that can be used, and a finding for each that was corrected. */
export function checkGroup(group: Group): { group: Group; findings: Diagnostic[] } {
  const findings: Diagnostic[] = [];
  const whole = (name: 'makers' | 'spares' | 'machines', least: number, otherwise: number): number => {
    const asked = group[name] ?? otherwise;
    if (Number.isInteger(asked) && asked >= least && asked <= MOST_MAKERS) return asked;
    findings.push({
      severity: 'error',
      place: ['class', name],
      code: `bad ${name}`,
      message: `The number of ${name} is a whole number from ${least} to ${MOST_MAKERS}; ${otherwise} is taken.`,
    });
    return otherwise;
  };
  const makers = whole('makers', 1, 1);
  const sound = { makers, spares: whole('spares', 0, 0), machines: whole('machines', 1, makers) };
  return { group: { ...sound, ...(group.sizes && { sizes: group.sizes }) }, findings };
}
