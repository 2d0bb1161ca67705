/** A kind of attack: what is tried with a seed, and how a case is shown again. */
export type Family = {
  readonly name: string;
  /** Tries the case of a seed; gives what went wrong, in a line each. Never throws for a fault of what it tries. */
  readonly tries: (seed: number) => readonly string[];
  /** The case of a seed, as somebody can write or paste it. */
  readonly tells: (seed: number) => string;
  /** What the cases since the start of the run came to, in a line each. */
  readonly sums?: () => readonly string[];
};
