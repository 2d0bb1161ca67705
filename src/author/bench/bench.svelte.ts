import {
  capital,
  checkAll,
  metIn,
  resolveProject,
  type Edition,
  type MetFinding,
  type Pattern,
  type ProjectFile,
} from '../../core/index.ts';
import type { Place } from '../../site/content/located-yaml.ts';
import { fieldsOf, type Answer, type Change, type Entry, type Field, type OnBench } from './messages.ts';

/** How it stands with a box whose value differs from the file, or did a moment ago. */
export type Standing =
  | { kind: 'written'; line: number }
  | { kind: 'refused'; message: string; mend?: string | undefined }
  | { kind: 'conflict'; theirs: string | undefined };

const keyOf = (place: Place): string => JSON.stringify(place);
const isBelow = (place: Place, top: Place): boolean => top.every((step, i) => String(place[i]) === String(step));

const SILENT = 'npm start does not answer. Is it still running?';

/** How long after the last key the whole project is checked, in ms: the sums follow at once, the making takes longer. */
const PAUSE = 200;

/** One project on the bench: its file as it lies on disk, what is typed over it, and what follows from both. */
export class Bench {
  readonly #address: string;
  #bench = $state.raw<OnBench>();
  /** What stands in a box, where the file says something else. */
  #typed = $state<Record<string, string>>({});
  /** What the file said when the author began to type. */
  readonly #seen = new Map<string, string>();
  readonly #sent = new Set<string>();
  #standing = $state<Record<string, Standing>>({});
  /** For screen readers, and for everyone at the foot of the form. */
  said = $state('');
  /** The last change that was written. */
  last = $state.raw<{ field: Field; was: string; value: string }>();
  findings = $state.raw<MetFinding[]>([]);

  constructor(address: string) {
    this.#address = address;
  }

  get bench(): OnBench | undefined {
    return this.#bench;
  }

  /** The project with everything that is typed. */
  readonly #project: ProjectFile | undefined = $derived.by(() => {
    if (!this.#bench) return undefined;
    const project = structuredClone(this.#bench.project);
    for (const [key, value] of Object.entries(this.#typed)) put(project, JSON.parse(key) as Place, value);
    return project;
  });

  /** The project worked out in both editions. */
  readonly patterns: Record<Edition, Pattern> | undefined = $derived.by(() => {
    const project = this.#project;
    if (!project || !this.#bench) return undefined;
    const { materials } = this.#bench;
    return {
      inch: resolveProject(project, { edition: 'inch', materials }),
      metric: resolveProject(project, { edition: 'metric', materials }),
    };
  });

  /** Checks the project a moment after each change. Called once, while the page is set up. */
  followFindings(): void {
    $effect(() => {
      const project = this.#project;
      const materials = this.#bench?.materials;
      if (!project) return;
      const later = setTimeout(() => (this.findings = inOrder(checkAll(project, materials))), PAUSE);
      return () => clearTimeout(later);
    });
  }

  async read(): Promise<void> {
    const answer = await fetch(this.#address).catch(() => undefined);
    if (!answer?.ok) {
      const { message = SILENT } =
        ((await answer?.json().catch(() => undefined)) as { message?: string } | undefined) ?? {};
      this.said = message;
      return;
    }
    this.#take((await answer.json()) as OnBench);
  }

  /** The file is new; what is being typed stays, and where the file changed below it, that is shown. */
  #take(bench: OnBench): void {
    this.#bench = bench;
    if (bench.broken) return;
    const now = new Map(fieldsOf(bench).map((field) => [keyOf(field.place), field.value]));
    for (const key of Object.keys(this.#typed)) {
      const theirs = now.get(key);
      if (theirs === this.#typed[key]) this.#forget(key);
      else if (theirs !== this.#seen.get(key)) this.#standing[key] = { kind: 'conflict', theirs };
    }
  }

  value = (field: Field): string => this.#typed[keyOf(field.place)] ?? field.value;
  standing = (field: Field): Standing | undefined => this.#standing[keyOf(field.place)];
  /** Findings of an entry, and of one box of it. */
  about = ({ place }: Pick<Entry, 'place'>): MetFinding[] =>
    // What was refused is said beside its box already.
    this.findings.filter((one) => isBelow(one.place, place) && this.#standing[keyOf(one.place)]?.kind !== 'refused');
  isFaulty = ({ place }: Field): boolean =>
    this.findings.some(({ severity, place: at }) => severity === 'error' && keyOf(at) === keyOf(place));

  type(field: Field, value: string): void {
    const key = keyOf(field.place);
    if (!this.#seen.has(key)) this.#seen.set(key, field.value);
    if (value === field.value) this.#forget(key);
    else this.#typed[key] = value;
    if (this.#standing[key]?.kind !== 'conflict') delete this.#standing[key];
  }

  /** Writes what is typed, unless someone else changed that value meanwhile. */
  async write(field: Field): Promise<void> {
    const key = keyOf(field.place);
    const value = this.#typed[key];
    if (value === undefined || this.#standing[key]?.kind === 'conflict' || this.#sent.has(key)) return;
    // The return key leaves a box as well, and would send the same change twice.
    this.#sent.add(key);
    await this.#send(field, { place: field.place, was: this.#seen.get(key) ?? field.value, value });
    this.#sent.delete(key);
  }

  /** Writes a value that the file does not have yet. Returns why not, where it cannot be. */
  async add(place: Place, value: string): Promise<string | undefined> {
    const answer = await this.#ask({ place, value });
    if (answer?.kind === 'written') {
      this.last = undefined;
      this.said = `Written to line ${answer.line}: ${place.at(-1)} is ${value}.`;
      this.#take(answer.bench);
      return undefined;
    }
    if (answer?.kind === 'refused') return `${answer.message} ${answer.mend ?? ''}`.trim();
    return answer ? 'The file has one of that name by now.' : SILENT;
  }

  /** Puts back what the last change replaced. */
  async undo(): Promise<void> {
    if (!this.last) return;
    const { field, was, value } = this.last;
    await this.#send(field, { place: field.place, was: value, value: was });
  }

  /** Of two versions the file's. */
  takeTheirs(field: Field): void {
    this.#forget(keyOf(field.place));
    delete this.#standing[keyOf(field.place)];
    this.said = 'The file’s value stays.';
  }

  /** Of two versions the author's, knowing the other. */
  async takeMine(field: Field): Promise<void> {
    const key = keyOf(field.place);
    const standing = this.#standing[key];
    if (standing?.kind !== 'conflict' || standing.theirs === undefined) return;
    await this.#send(field, { place: field.place, was: standing.theirs, value: this.#typed[key] ?? field.value });
  }

  #forget(key: string): void {
    delete this.#typed[key];
    this.#seen.delete(key);
    if (this.#standing[key]?.kind === 'conflict') delete this.#standing[key];
  }

  async #send(field: Field, change: Change): Promise<void> {
    const key = keyOf(field.place);
    const answer = await this.#ask(change);
    if (!answer) {
      this.#standing[key] = { kind: 'refused', message: SILENT };
      return;
    }
    if (answer.kind === 'written') {
      this.#forget(key);
      this.#standing[key] = { kind: 'written', line: answer.line };
      this.last = { field, was: change.was ?? '', value: change.value };
      this.said = `Written to line ${answer.line}: ${change.was} is ${change.value} now.`;
      this.#take(answer.bench);
    } else if (answer.kind === 'conflict') {
      this.#standing[key] = { kind: 'conflict', theirs: answer.theirs };
      this.said = 'Not written: the file has another value there by now.';
      this.#take(answer.bench);
    } else {
      this.#standing[key] = answer;
      this.said = `Not written. ${answer.message}`;
    }
  }

  async #ask(change: Change): Promise<Answer | undefined> {
    const response = await fetch(this.#address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(change),
    }).catch(() => undefined);
    return response?.ok ? ((await response.json()) as Answer) : undefined;
  }
}

/** Mistakes first. */
const inOrder = (findings: MetFinding[]): MetFinding[] =>
  (['error', 'warning', 'note'] as const).flatMap((one) => findings.filter(({ severity }) => severity === one));

/** The front of a finding's sentence: “Metric edition: ”. */
export function met(finding: MetFinding): string {
  const where = metIn(finding);
  return where && `${capital(where)}: `;
}

/** Puts a typed value where the file has one; one of another kind than belongs there is left to the writing to refuse. */
function put(project: ProjectFile, place: Place, typed: string): void {
  let group: unknown = project;
  for (const step of place.slice(0, -1)) group = (group as Record<string | number, unknown> | undefined)?.[step];
  if (typeof group !== 'object' || group === null) return;
  const [last] = place.slice(-1) as [string | number];
  const slots = group as Record<string | number, unknown>;
  const before = slots[last];
  if (typeof before === 'string' && typed.trim() !== '') slots[last] = typed;
  else if (typeof before === 'number') {
    // Most numbers may be formulas too; those that may not are few, and the file's schema knows them.
    slots[last] =
      Number.isFinite(Number(typed)) && typed.trim() !== '' ? Number(typed) : isPlain(place) ? before : typed;
  } else if (typeof before === 'boolean') slots[last] = typed === 'true';
}

/** Numbers that are never a formula. */
const isPlain = (place: Place): boolean => ['minutes', 'through'].includes(String(place.at(-1))) || place[0] === 'grid';
