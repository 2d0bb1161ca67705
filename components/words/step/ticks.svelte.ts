/** Which steps of a project this learner has done. Kept in the browser, for all lessons of the project. */
import { ANSWERED } from '../../page/answered.ts';
import { asRecord, save, load } from '../../page/storage.ts';

export class Ticks {
  readonly #key: string;
  #done = $state<Record<string, true>>({});

  constructor(project: string) {
    this.#key = `steps:${project}`;
    if (typeof document === 'undefined') return;
    const kept = load(this.#key, asRecord) ?? {};
    for (const [id, done] of Object.entries(kept)) if (done === true) this.#done[id] = true;
  }

  has(id: string): boolean {
    return this.#done[id] === true;
  }

  set(id: string, done: boolean): void {
    if (done) this.#done[id] = true;
    else delete this.#done[id];
    save(this.#key, Object.keys(this.#done).length === 0 ? undefined : this.#done);
    // The lesson's tape looks anew once the page shows the tick.
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
