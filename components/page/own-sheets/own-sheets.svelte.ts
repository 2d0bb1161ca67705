import type { Pattern, PaperName } from '../../../src/core/index.ts';
import { sized } from '../../compute/sized.ts';
import type { Project } from '../learner.svelte.ts';
import type { News, Order } from '../../compute/press.ts';

/** How one document comes along. */
type Coming =
  | { at: 'rest' }
  | { at: 'work'; done: number; all: number }
  | { at: 'done'; address: string; name: string; pages?: number; findings: string[] }
  | { at: 'failed'; message: string };

type Wanted = { name: string; title: string };

const start = (): Worker => new Worker(new URL('../../compute/press.ts', import.meta.url), { type: 'module' });

/** The documents at the learner's size: one at a time, made by a worker of its own that starts when it is needed. */
export class OwnSheets {
  paper = $state<PaperName>('A4');
  largePrint = $state(false);
  coming = $state<Coming>({ at: 'rest' });
  #worker: Worker | undefined;

  /**
   * Fetches the writer and tries it on a few sheets, so that what is asked for next is there at once. Called when
   * somebody comes to the choices: who only reads the page never loads any of it.
   */
  ready(document: Wanted, project: Project, pattern: Pattern, fonts: Order['fonts']): void {
    if (this.#worker) return;
    this.#worker = start();
    this.#worker.onerror = () => (this.#worker = undefined); // off line, say: whoever asks tries anew
    this.#worker.postMessage($state.snapshot({ ...this.#order(document, project, pattern, fonts), trial: true }));
  }

  /** Offers a document of that size which lies with the site already. */
  take(address: string, document: Wanted, project: Project, pattern: Pattern): void {
    this.forget();
    this.coming = { at: 'done', address, name: this.#fileName(document, project, pattern), findings: [] };
  }

  /** Asks for a document at the size of a pattern. A document that is still under way is given up. */
  make(document: Wanted, project: Project, pattern: Pattern, fonts: Order['fonts']): void {
    this.forget();
    let pages = 0;
    this.coming = { at: 'work', done: 0, all: 1 };
    this.#worker ??= start();
    this.#worker.onmessage = ({ data: news }: MessageEvent<News>) => {
      if (news.kind === 'progress') {
        pages = news.all;
        this.coming = { at: 'work', done: news.done, all: news.all };
      } else if (news.kind === 'failed') this.coming = { at: 'failed', message: news.message };
      else {
        const address = URL.createObjectURL(new Blob([news.bytes], { type: 'application/pdf' }));
        const name = this.#fileName(document, project, pattern);
        this.coming = { at: 'done', address, name, pages, findings: news.findings };
      }
    };
    this.#worker.onerror = () => {
      this.coming = {
        at: 'failed',
        message: 'The document could not be made. Load the page again, and try once more.',
      };
    };
    this.#worker.postMessage($state.snapshot(this.#order(document, project, pattern, fonts)));
  }

  #fileName = (document: Wanted, project: Project, { edition }: Pattern): string =>
    `${project.id}-${document.name}-${this.paper.toLowerCase()}-${edition}.pdf`;

  #order(document: Wanted, project: Project, pattern: Pattern, fonts: Order['fonts']): Order {
    return {
      ...sized(project, pattern),
      document: document.name,
      setting: { paper: this.paper, largePrint: this.largePrint, language: window.document.documentElement.lang },
      fonts,
    };
  }

  /** Lets go of a document: a size that has changed since is another document. */
  forget(): void {
    if (this.coming.at === 'done') URL.revokeObjectURL(this.coming.address);
    if (this.coming.at === 'work') {
      this.#worker?.terminate();
      this.#worker = undefined;
    }
    this.coming = { at: 'rest' };
  }
}
