/** Which steps of a project this learner has done. Kept in the browser, for all lessons of the project. */
import { ANSWERED } from '../../page/answered.ts';
import { asRecord, load, onStorageChange, save } from '../../page/storage.ts';

export class Ticks {
  readonly #key: string;
  #done = $state.raw<ReadonlySet<string>>(new Set());
  /** Whether the browser keeps what is done here; else the page remembers it. */
  #isKept = true;

  constructor(project: string) {
    this.#key = `steps:${project}`;
    if (typeof document === 'undefined') return;
    this.#done = this.#saved();
    // As long as the page is there.
    onStorageChange(this.#key, () => {
      this.#done = this.#saved();
      this.#tell();
    });
  }

  has(id: string): boolean {
    return this.#done.has(id);
  }

  /** Another tab may have done other steps meanwhile; they stay done. */
  set(id: string, done: boolean): void {
    const now = new Set(this.#isKept ? this.#saved() : this.#done);
    if (done) now.add(id);
    else now.delete(id);
    this.#done = now;
    const kept = now.size === 0 ? undefined : Object.fromEntries([...now].map((one) => [one, true]));
    this.#isKept = save(this.#key, kept) === undefined;
    this.#tell();
  }

  #saved(): Set<string> {
    const kept = load(this.#key, asRecord) ?? {};
    return new Set(Object.keys(kept).filter((id) => kept[id] === true));
  }

  /** The lesson's tape looks anew once the page shows the tick. */
  #tell(): void {
    requestAnimationFrame(() => document.dispatchEvent(new CustomEvent(ANSWERED)));
  }
}

const ticks = new Map<string, Ticks>();

/** On the server nobody has done anything. */
export function ticksOf(project: string): Ticks {
  let found = ticks.get(project);
  if (!found) ticks.set(project, (found = new Ticks(project)));
  return found;
}
