/**
 * Recordings of our own, as captions come out of a machine, and the truth beside them: when each step begins, and every
 * length that is said. They are invented, and no proof that real speech is read as well.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { LengthInLines, SpokenLine, ToldStep } from '../../../src/core/index.ts';

export type Truth = {
  steps: { step: string; from: number; again?: boolean }[];
  lengths: { at: number; said: string; meant: string }[];
};

const seconds = (time: string): number => time.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
const file = (name: string): string =>
  readFileSync(path.join(import.meta.dirname, '../../fixtures/recordings', name), 'utf8');

/** The lines of a recording. These files are well formed. */
export const linesOf = (name: string): SpokenLine[] =>
  file(`${name}.vtt`)
    .trim()
    .split('\n\n')
    .slice(1)
    .map((cue) => {
      const [times, ...text] = cue.split('\n');
      const [from, to] = times!.split(' --> ');
      return { from: seconds(from!), to: seconds(to!), text: text.join(' ') };
    });

export const truthOf = (name: string): Truth => JSON.parse(file(`${name}.truth.json`)) as Truth;

/** The steps that do not begin within ten seconds of the truth, and the share of those that do. */
export function begun(told: readonly ToldStep[], { steps }: Truth): { share: number; missed: string[] } {
  const asked = steps.filter(({ step }) => step !== 'start' && step !== 'end');
  const missed = asked.filter(
    ({ step, from }) => !told.some((one) => one.step === step && Math.abs(one.from - from) <= 10),
  );
  return { share: 1 - missed.length / asked.length, missed: missed.map(({ step, from }) => `${step} at ${from}`) };
}

const sizes: Readonly<Record<string, number>> = { in: 25.4, ft: 304.8, yd: 914.4, mm: 1, cm: 10, m: 1000 };

/** The numbers of `~5.25 x 3 (in)` and `44..45 in` in mm. */
const meantBy = (meant: string): number[] => {
  const [, numbers, unit] = /^~?([\d. x]+?) \(?(\w+)\)?~?$/u.exec(meant)!;
  return numbers!.split(/ x |\.\./u).map((number) => Number(number) * sizes[unit!]!);
};

const same = ({ values }: LengthInLines, meant: string): boolean => {
  const right = meantBy(meant);
  return right.length === values.length && right.every((mm, i) => Math.abs(mm - values[i]!) < 0.05);
};

/**
 * How the lengths of a recording were read: the share that is right, what was missed, and what is wrong and yet certain.
 * “ask” in the truth stands for what nobody can know.
 */
export function readAgainst(found: readonly LengthInLines[], { lengths }: Truth, certain: number) {
  const left = new Set(found);
  const missed: string[] = [];
  const asked = lengths.filter(({ meant }) => meant !== 'ask');
  for (const { at, said, meant } of lengths) {
    const near = [...left].filter(({ from }) => Math.abs(from - at) < 2.5);
    const right = near.find((length) => meant === 'ask' || same(length, meant));
    if (right) left.delete(right);
    else if (meant !== 'ask') missed.push(`${said} at ${at}`);
  }
  const wrong = [...left]
    .filter(({ sure }) => sure >= certain)
    .map(({ text, from }) => `${text} at ${Math.round(from)}`);
  return { share: 1 - missed.length / asked.length, missed, wrong };
}
