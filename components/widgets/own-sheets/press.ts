/**
 * Makes a document at the learner's size, away from the page: a worker that is loaded when the first is asked for, and
 * the writer of PDF with it.
 */
import {
  projectDocuments,
  resolveProject,
  sayUnshown,
  writePdf,
  type Fonts,
  type HandoutSetting,
} from '../../../src/core/index.ts';
import type { Sized } from '../../cutting/sized.ts';
import { cautions, defersTo } from '../../lesson/cautions.ts';

/** What a page asks for. */
export type Order = Sized & {
  /** The document's name, as `projectDocuments` has it. */
  document: string;
  setting: HandoutSetting;
  /** Addresses of the fonts. */
  fonts: { regular: string; strong: string };
};

export type News =
  | { kind: 'progress'; done: number; all: number }
  | { kind: 'done'; bytes: Uint8Array<ArrayBuffer>; findings: string[] }
  | { kind: 'failed'; message: string };

const tell = (news: News): void => postMessage(news);

let fonts: Promise<Fonts> | undefined;

async function load({ regular, strong }: Order['fonts']): Promise<Fonts> {
  const [one, other] = await Promise.all(
    [regular, strong].map(async (address) => {
      const answer = await fetch(address);
      if (!answer.ok)
        throw new Error('The letters for the document could not be fetched. Try again when you are online.');
      return new Uint8Array(await answer.arrayBuffer());
    }),
  );
  return { regular: one!, strong: other! };
}

addEventListener('message', async ({ data: order }: MessageEvent<Order>) => {
  try {
    const { file, materials, edition, values, options, document, setting } = order;
    const pattern = resolveProject(file, { edition, values, options, materials });
    const handout = projectDocuments(pattern, { cautions, defersTo })
      .find(({ name }) => name === document)
      ?.make(setting);
    if (!handout) throw new Error('Your project leaves this document out, so there is nothing to print.');
    const { bytes, unshown } = await writePdf(handout, await (fonts ??= load(order.fonts)), (done, all) =>
      tell({ kind: 'progress', done, all }),
    );
    const findings = unshown.length > 0 ? [...handout.findings, sayUnshown(unshown)] : [...handout.findings];
    tell({ kind: 'done', bytes: new Uint8Array(bytes), findings });
  } catch (error) {
    fonts = undefined;
    tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
});
