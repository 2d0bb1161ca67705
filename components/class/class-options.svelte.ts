/** What a teacher sets for a class. What cannot be taken is told, and the last good number stays. */
import type { ClassRequest } from '../compute/cutting-types.ts';
import { asRecord, save, load } from '../page/storage.ts';

/** The numbers of a class, each with its words and its bounds. */
export const fields = [
  { name: 'makers', label: 'Makers', min: 1, max: 500 },
  { name: 'spares', label: 'Spare sets', min: 0, max: 500 },
  { name: 'machines', label: 'Sewing machines', min: 1, max: 500 },
  { name: 'irons', label: 'Irons', min: 1, max: 500 },
] as const;
export type FieldName = (typeof fields)[number]['name'];

const MOST_OF_A_SIZE = 500;

const isCount = (value: unknown, min: number, max: number): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= min && value <= max;

/** Minutes of sessions as one writes them: 90, 90, 150. */
export function readSessions(text: string): number[] | undefined {
  const parts = text.split(/[,;\s]+/).filter((part) => part !== '');
  const minutes = parts.map(Number);
  return minutes.length > 0 && minutes.every((one) => isCount(one, 1, 1440)) ? minutes : undefined;
}

/** Times of day at which sessions begin, as one writes them: 18:30, 18:30, 10:00. Nothing at all: not known. */
export function readTimes(text: string): string[] | undefined {
  const parts = text.split(/[,;\s]+/).filter((part) => part !== '');
  return parts.every((one) => /^(?:[01]?\d|2[0-3]):[0-5]\d$/.test(one)) ? parts : undefined;
}

export class ClassOptions {
  readonly #start: ClassRequest;
  readonly #key: string;
  now = $state.raw<ClassRequest>() as ClassRequest;
  /** What could not be taken, by field. */
  refused = $state<Record<string, string>>({});

  /**
   * @param key under which the browser keeps what is set
   * @param sizes that the project has: makers kept for one that is gone are not counted
   */
  constructor(start: ClassRequest, key: string, sizes: readonly string[] = []) {
    this.#start = start;
    this.#key = key;
    this.now = start;
    if (typeof document === 'undefined') return;
    const kept = load(key, asRecord) ?? {};
    const counts = fields.flatMap(({ name, min, max }) => (isCount(kept[name], min, max) ? [[name, kept[name]]] : []));
    const sessions = Array.isArray(kept.sessions) ? readSessions(kept.sessions.join(',')) : undefined;
    const begins = Array.isArray(kept.begins) ? readTimes(kept.begins.join(',')) : undefined;
    const prices = Object.entries(asRecord(kept.prices) ?? {}).filter(([, one]) => typeof one === 'number' && one >= 0);
    const makers = Object.entries(asRecord(kept.sizes) ?? {}).filter(
      ([name, one]) => sizes.includes(name) && isCount(one, 1, MOST_OF_A_SIZE),
    );
    this.now = {
      ...start,
      ...(makers.length > 0 && { sizes: Object.fromEntries(makers) as Record<string, number> }),
      ...(Object.fromEntries(counts) as Record<string, number>),
      ...(sessions && { sessions }),
      ...(begins && { begins }),
      prices: Object.fromEntries(prices) as Record<string, number>,
    };
  }

  get changed(): boolean {
    return JSON.stringify(this.now) !== JSON.stringify(this.#start);
  }

  setCount(name: FieldName, value: number): void {
    const { label, min, max } = fields.find((field) => field.name === name)!;
    if (isCount(value, min, max)) this.#take(name, { [name]: value });
    else this.refused[name] = `${label}: a whole number from ${min} to ${max}.`;
  }

  /** How many make a size. None, or an empty field, counts nobody to it. */
  setSize(size: string, value: number): void {
    const { [size]: _, ...others } = this.now.sizes ?? {};
    const makers = Number.isNaN(value) ? 0 : value;
    const field = `size ${size}`;
    if (!isCount(makers, 0, MOST_OF_A_SIZE)) {
      this.refused[field] = `Size ${size}: a whole number from 0 to ${MOST_OF_A_SIZE}.`;
      return;
    }
    const sizes = makers === 0 ? others : { ...others, [size]: makers };
    const { sizes: __, ...rest } = this.now;
    delete this.refused[field];
    this.now = Object.keys(sizes).length === 0 ? rest : { ...rest, sizes };
    save(this.#key, this.now);
  }

  setSessions(text: string): void {
    const sessions = readSessions(text);
    if (sessions) this.#take('sessions', { sessions });
    else this.refused.sessions = 'Minutes of each session, such as 90, 90, 150.';
  }

  setTimes(text: string): void {
    const begins = readTimes(text);
    if (begins) this.#take('begins', { begins });
    else this.refused.begins = 'The time each session begins, such as 18:30, 18:30, 10:00.';
  }

  /** A price; an empty field goes back to the price of materials.yaml. */
  setPrice(key: string, text: string): void {
    const { [key]: _, ...others } = this.now.prices;
    const amount = Number(text.trim().replace(',', '.'));
    if (text.trim() === '') this.#take(`price ${key}`, { prices: others });
    else if (Number.isFinite(amount) && amount >= 0)
      this.#take(`price ${key}`, { prices: { ...others, [key]: amount } });
    else this.refused[`price ${key}`] = 'A price is a number of 0 or more.';
  }

  back(): void {
    this.now = this.#start;
    this.refused = {};
    save(this.#key, undefined);
  }

  #take(field: string, change: Partial<ClassRequest>): void {
    delete this.refused[field];
    this.now = { ...this.now, ...change };
    save(this.#key, this.now);
  }
}
