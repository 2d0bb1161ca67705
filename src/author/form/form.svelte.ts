import type { Diagnostic } from '../../core/measure/index.ts';
import {
  capital,
  checkAll,
  metIn,
  resolveProject,
  type Edition,
  type Occurrence,
  type Pattern,
  type ProjectFile,
} from '../../core/index.ts';
import type { Place } from '../../site/content/located-yaml.ts';
import {
  allFields,
  type ChangeResult,
  type ValueChange,
  type FormEntry,
  type FormField,
  type FormState,
} from './messages.ts';

/** How it stands with a box whose value differs from the file, or did a moment ago. */
export type FieldStatus =
  | { kind: 'written'; line: number }
  | { kind: 'refused'; message: string; fix?: string | undefined }
  | { kind: 'conflict'; theirs: string | undefined };

const keyOf = (place: Place): string => JSON.stringify(place);
const isBelow = (place: Place, top: Place): boolean => top.every((step, i) => String(place[i]) === String(step));

const SILENT = 'npm start does not answer. Is it still running?';

/** In ms. Checking a large project takes a second. */
const LONGEST_WAIT = 20_000;

/** How long after the last key the whole project is checked, in ms: the sums follow at once, the making takes longer. */
const PAUSE = 200;

/** One project as a form: its file as it lies on disk, what is typed over it, and what follows from both. */
export class FormClient {
  readonly #address: string;
  #form = $state.raw<FormState>();
  /** What stands in a box, where the file says something else. */
  #typed = $state<Record<string, string>>({});
  /** What the file said when the author began to type. */
  readonly #seen = new Map<string, string>();
  readonly #sent = new Set<string>();
  #status = $state<Record<string, FieldStatus>>({});
  /** For screen readers, and for everyone at the foot of the form. */
  said = $state('');
  /** The last change that was written. */
  last = $state.raw<{ field: FormField; was: string; value: string }>();
  findings = $state.raw<Diagnostic<Occurrence>[]>([]);

  constructor(address: string) {
    this.#address = address;
  }

  get state(): FormState | undefined {
    return this.#form;
  }

  /** The project with everything that is typed. */
  readonly #project: ProjectFile | undefined = $derived.by(() => {
    if (!this.#form) return undefined;
    const project = structuredClone(this.#form.project);
    for (const [key, value] of Object.entries(this.#typed)) put(project, JSON.parse(key) as Place, value);
    return project;
  });

  /** The project worked out in both editions. */
  readonly patterns: Record<Edition, Pattern> | undefined = $derived.by(() => {
    const project = this.#project;
    if (!project || !this.#form) return undefined;
    const { materials } = this.#form;
    return {
      inch: resolveProject(project, { edition: 'inch', materials }),
      metric: resolveProject(project, { edition: 'metric', materials }),
    };
  });

  /** Checks the project a moment after each change. Called once, while the page is set up. */
  followFindings(): void {
    $effect(() => {
      const project = this.#project;
      const materials = this.#form?.materials;
      if (!project) return;
      const later = setTimeout(
        () => (this.findings = inOrder(checkAll(project, materials, undefined, { ends: false }))),
        PAUSE,
      );
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
    this.#take((await answer.json()) as FormState);
  }

  /** The file is new; what is being typed stays, and where the file changed below it, that is shown. */
  #take(form: FormState): void {
    this.#form = form;
    if (form.broken) return;
    const now = new Map(allFields(form).map((field) => [keyOf(field.place), field.value]));
    for (const key of Object.keys(this.#typed)) {
      const theirs = now.get(key);
      if (theirs === this.#typed[key]) this.#forget(key);
      else if (theirs !== this.#seen.get(key)) this.#status[key] = { kind: 'conflict', theirs };
    }
  }

  value = (field: FormField): string => this.#typed[keyOf(field.place)] ?? field.value;
  status = (field: FormField): FieldStatus | undefined => this.#status[keyOf(field.place)];
  /** Findings of an entry, and of one box of it. */
  about = ({ place }: Pick<FormEntry, 'place'>): Diagnostic<Occurrence>[] =>
    // What was refused is said beside its box already.
    this.findings.filter((one) => isBelow(one.place, place) && this.#status[keyOf(one.place)]?.kind !== 'refused');
  isFaulty = ({ place }: FormField): boolean =>
    this.findings.some(({ severity, place: at }) => severity === 'error' && keyOf(at) === keyOf(place));

  type(field: FormField, value: string): void {
    const key = keyOf(field.place);
    if (!this.#seen.has(key)) this.#seen.set(key, field.value);
    if (value === field.value) this.#forget(key);
    else this.#typed[key] = value;
    if (this.#status[key]?.kind !== 'conflict') delete this.#status[key];
  }

  /** Writes what is typed, unless someone else changed that value meanwhile. */
  async write(field: FormField): Promise<void> {
    const key = keyOf(field.place);
    const value = this.#typed[key];
    if (value === undefined || this.#status[key]?.kind === 'conflict' || this.#sent.has(key)) return;
    // The return key leaves a box as well, and would send the same change twice.
    this.#sent.add(key);
    try {
      await this.#send(field, { place: field.place, was: this.#seen.get(key) ?? field.value, value });
    } finally {
      this.#sent.delete(key);
    }
  }

  /** Writes a value that the file does not have yet. Returns why not, where it cannot be. */
  async add(place: Place, value: string): Promise<string | undefined> {
    const answer = await this.#ask({ place, value });
    if (answer.kind === 'written') {
      this.last = undefined;
      this.said = `Written to line ${answer.line}: ${place.at(-1)} is ${value}.`;
      this.#take(answer.form);
      return undefined;
    }
    if (answer.kind === 'refused') return `${answer.message} ${answer.fix ?? ''}`.trim();
    return 'The file has one of that name by now.';
  }

  /** Puts back what the last change replaced. */
  async undo(): Promise<void> {
    if (!this.last) return;
    const { field, was, value } = this.last;
    await this.#send(field, { place: field.place, was: value, value: was });
  }

  /** Of two versions the file's. */
  takeTheirs(field: FormField): void {
    this.#forget(keyOf(field.place));
    delete this.#status[keyOf(field.place)];
    this.said = 'The file’s value stays.';
  }

  /** Of two versions the author's, knowing the other. */
  async takeMine(field: FormField): Promise<void> {
    const key = keyOf(field.place);
    const status = this.#status[key];
    if (status?.kind !== 'conflict' || status.theirs === undefined) return;
    await this.#send(field, { place: field.place, was: status.theirs, value: this.#typed[key] ?? field.value });
  }

  #forget(key: string): void {
    delete this.#typed[key];
    this.#seen.delete(key);
    if (this.#status[key]?.kind === 'conflict') delete this.#status[key];
  }

  async #send(field: FormField, change: ValueChange): Promise<void> {
    const key = keyOf(field.place);
    const answer = await this.#ask(change);
    if (answer.kind === 'written') {
      this.#forget(key);
      this.#status[key] = { kind: 'written', line: answer.line };
      this.last = { field, was: change.was ?? '', value: change.value };
      this.said = `Written to line ${answer.line}: ${change.was} is ${change.value} now.`;
      this.#take(answer.form);
    } else if (answer.kind === 'conflict') {
      this.#status[key] = { kind: 'conflict', theirs: answer.theirs };
      this.said = 'Not written: the file has another value there by now.';
      this.#take(answer.form);
    } else {
      this.#status[key] = answer;
      this.said = `Not written. ${answer.message}`;
    }
  }

  /** Whatever goes wrong on the way, there is an answer, and soon. */
  async #ask(change: ValueChange): Promise<ChangeResult> {
    try {
      const response = await fetch(this.#address, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(change),
        signal: AbortSignal.timeout(LONGEST_WAIT),
      });
      if (response.ok) return (await response.json()) as ChangeResult;
      const { message } = (await response.json()) as { message: string };
      return { kind: 'refused', message };
    } catch {
      return { kind: 'refused', message: SILENT };
    }
  }

  /** Whether something is typed that the file does not have. */
  get isUnwritten(): boolean {
    return Object.keys(this.#typed).length > 0;
  }
}

/** Mistakes first. */
const inOrder = (findings: Diagnostic<Occurrence>[]): Diagnostic<Occurrence>[] =>
  (['error', 'warning', 'note'] as const).flatMap((one) => findings.filter(({ severity }) => severity === one));

/** The front of a finding's sentence: “Metric edition: ”. */
export function met(finding: Diagnostic<Occurrence>): string {
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
