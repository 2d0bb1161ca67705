import type { Edition } from '../../src/core/index.ts';
import { writeAddress } from './address.ts';
import { save, load } from './storage.ts';

const inBrowser = typeof document !== 'undefined';

/** The edition this page shows. It is one choice for the whole site, kept in the browser and in the address. */
class EditionChoice {
  #chosen = $state<Edition>();
  #followers = new Set<() => void>();

  constructor() {
    if (!inBrowser) return;
    const asked = new URLSearchParams(location.search).get('edition');
    const kept = load('edition', (v) => (v === 'inch' || v === 'metric' ? v : undefined));
    this.#chosen = asked === 'inch' || asked === 'metric' ? asked : kept;
    if (this.#chosen) document.documentElement.dataset.edition = this.#chosen;
  }

  get chosen(): Edition | undefined {
    return this.#chosen;
  }

  choose(edition: Edition): void {
    this.#chosen = edition;
    save('edition', edition);
    document.documentElement.dataset.edition = edition;
    writeAddress('edition', (query) => query.set('edition', edition));
    for (const follow of this.#followers) follow();
  }

  /** Calls back after each change: what else stands in the address must change with the edition. */
  onChange(follow: () => void): void {
    this.#followers.add(follow);
  }
}

export const editionChoice = new EditionChoice();
