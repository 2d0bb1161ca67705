import { slug } from '../../../src/core/handout/handout.ts';
import type { PaperName, Pattern } from '../../../src/core/index.ts';
import { Client, type Sized } from '../../compute/client.svelte.ts';
import type { DocumentRequest } from '../../compute/protocol.ts';

/** How one document comes along. */
type Coming =
  | { at: 'rest' }
  /** `share` of it that is written, 0 to 1. */
  | { at: 'work'; share: number }
  | { at: 'done'; address: string; name: string; pages?: number; findings: string[] }
  | { at: 'failed'; message: string };

type Wanted = { name: string; title: string };
type Fonts = DocumentRequest['fonts'];

/** The documents at the learner's size, one at a time. */
export class OwnSheets {
  paper = $state<PaperName>('A4');
  largePrint = $state(false);
  readonly #client = new Client<'document'>();
  #isReady = false;
  /** The name of the file that was asked for; where it lies with the site already, its address. */
  #wanted: { name: string; address?: string } | undefined = $state.raw();
  /** The address of what was made last. */
  #made: string | undefined = $state.raw();

  readonly #times: () => DocumentRequest['times'];

  /**
   * Make it while a component is being set up.
   *
   * @param times where a recording shows each step
   */
  constructor(times: () => DocumentRequest['times']) {
    this.#times = times;
    $effect(() => {
      const { value } = this.#client;
      if (!value) return;
      const address = URL.createObjectURL(new Blob([value.bytes], { type: 'application/pdf' }));
      this.#made = address;
      return () => URL.revokeObjectURL(address);
    });
  }

  readonly coming: Coming = $derived.by(() => {
    const { value, stale, progress, error } = this.#client;
    if (!this.#wanted) return { at: 'rest' };
    const { name, address } = this.#wanted;
    if (address !== undefined) return { at: 'done', address, name, findings: [] };
    if (error) return { at: 'failed', message: error };
    if (stale || !value || this.#made === undefined) return { at: 'work', share: progress ?? 0 };
    return { at: 'done', address: this.#made, name, pages: value.pages, findings: value.findings };
  });

  /**
   * Fetches the writer and tries it on a few sheets, so that what is asked for next is there at once. Called when
   * somebody comes to the choices: a reader of the page never loads any of it.
   */
  prepare({ name }: Wanted, sized: Sized, fonts: Fonts): void {
    if (this.#isReady || this.#wanted) return;
    this.#isReady = true;
    this.#client.ask({ kind: 'document', document: { ...this.#document(name, fonts), trial: true } }, sized);
  }

  /** Offers a document of that size which lies with the site already. */
  take(address: string, document: Wanted, sized: Sized): void {
    this.forget();
    this.#wanted = { name: this.#fileName(document, sized), address };
  }

  /** Asks for a document at the size of a pattern. A document that is still under way is given up. */
  make(document: Wanted, sized: Sized, fonts: Fonts): void {
    this.#wanted = { name: this.#fileName(document, sized) };
    this.#client.ask({ kind: 'document', document: this.#document(document.name, fonts) }, sized);
  }

  /** Lets go of a document: a size that has changed since is another document. */
  forget(): void {
    if (this.#wanted) this.#client.stop();
    this.#wanted = undefined;
  }

  #document = (name: string, fonts: Fonts): DocumentRequest => ({
    name,
    setting: { paper: this.paper, largePrint: this.largePrint, language: window.document.documentElement.lang },
    fonts,
    times: this.#times(),
  });

  /** Documents of two sizes lie beside each other in one folder. */
  #fileName(document: Wanted, { project, pattern }: { project: { id: string }; pattern: Pattern }): string {
    const size = pattern.sizes ? [slug(pattern.sizes.chosen)] : [];
    return [project.id, document.name, ...size, this.paper.toLowerCase(), pattern.edition].join('-') + '.pdf';
  }
}
