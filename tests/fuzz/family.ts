import { chance, type Chance } from './chance.ts';

/** A kind of attack: what is tried with a seed, and how a case is shown again. */
export type Family = {
  readonly name: string;
  /** Tries the case of a seed; gives what went wrong, in a line each. Never throws for a fault of what it tries. */
  readonly tries: (seed: number) => readonly string[] | Promise<readonly string[]>;
  /** The case of a seed, as somebody can write or paste it. */
  readonly tells: (seed: number) => string;
  /** Tries a case as `tells` wrote it, which lasts also where the kit has changed and the seed makes another. */
  readonly again?: (text: string) => readonly string[];
  /** What the cases since the start of the run came to, in a line each. */
  readonly sums?: () => readonly string[];
};

/** What a family is made of: `makes` a case, and what is `broken` by it, in a line each. */
type Made<Case> = {
  name: string;
  makes: (from: Chance) => Case;
  broken: (one: Case, from: Chance) => readonly string[] | Promise<readonly string[]>;
  tells?: (one: Case) => string;
};

/**
 * A family whose cases are made of a seed alone. A throw is a failure, whatever threw.
 *
 * @param came how often each outcome came so far: a family in which one outcome never comes proves nothing of it
 */
export function family<Case>(
  { name, makes, broken, tells = (one) => JSON.stringify(one) }: Made<Case>,
  came: ReadonlyMap<string, number> = new Map(),
): Family {
  return {
    name,
    async tries(seed) {
      const from = chance(seed);
      try {
        return await broken(makes(from), from);
      } catch (error) {
        return [`threw ${error instanceof Error ? (error.stack ?? error.message).slice(0, 600) : String(error)}`];
      }
    },
    tells: (seed) => tells(makes(chance(seed))),
    sums: () => [...came].sort().map(([outcome, times]) => `${outcome}: ${times}`),
  };
}

/** Counts an outcome. */
export const count = (came: Map<string, number>, outcome: string): void =>
  void came.set(outcome, (came.get(outcome) ?? 0) + 1);

/** What no sentence for people holds: a slip of the program that made it. */
export const SLIP = /NaN|Infinity|undefined|\[object |function \w+\(/u;
