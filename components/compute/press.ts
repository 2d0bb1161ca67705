/**
 * Makes a document at the learner's size, away from the page: a worker that is loaded when somebody comes to the
 * choices, and the writer of PDF with it.
 */
import {
  projectDocuments,
  resolveProject,
  sayUnshown,
  writePdf,
  type Fonts,
  type Handout,
  type HandoutSetting,
} from '../../src/core/index.ts';
import type { Sized } from './sized.ts';
import { cautions, defersTo } from '../words/caution/cautions.ts';

/** What a page asks for. */
export type Order = Sized & {
  /** The document's name, as `projectDocuments` has it. */
  document: string;
  setting: HandoutSetting;
  /** Addresses of the fonts. */
  fonts: { regular: string; strong: string };
  /** A few sheets are written and thrown away: what is asked for next finds the writer ready. */
  trial?: boolean;
};

/** So many sheets are a trial. */
const TRIAL = 3;

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

/** What was asked for last: a trial gives way to it. */
let latest: Order | undefined;

/** Lets messages in; false once something else has been asked for. */
async function stillWanted(order: Order): Promise<boolean> {
  await new Promise((resolve) => setTimeout(resolve));
  return latest === order;
}

addEventListener('message', async ({ data: order }: MessageEvent<Order>) => {
  latest = order;
  try {
    const letters = (fonts ??= load(order.fonts));
    if (order.trial) await tryOut(order, letters);
    else await print(order, letters);
  } catch (error) {
    fonts = undefined;
    // Nobody has asked for a trial: what is wrong is told when somebody asks.
    if (!order.trial) tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
});

let last: { key: string; handout: Handout } | undefined;

/** The document asked for; made once where a trial asked for the same. */
function made({ file, materials, edition, values, options, document, setting }: Order): Handout {
  const key = JSON.stringify([edition, values, options, document, setting]);
  if (last?.key === key) return last.handout;
  const pattern = resolveProject(file, { edition, values, options, materials });
  const handout = projectDocuments(pattern, { cautions, defersTo })
    .find(({ name }) => name === document)
    ?.make(setting);
  if (!handout) throw new Error('Your project leaves this document out, so there is nothing to print.');
  last = { key, handout };
  return handout;
}

async function print(order: Order, letters: Promise<Fonts>): Promise<void> {
  const handout = made(order);
  const { bytes, unshown } = await writePdf(handout, await letters, (done, all) =>
    tell({ kind: 'progress', done, all }),
  );
  const findings = unshown.length > 0 ? [...handout.findings, sayUnshown(unshown)] : [...handout.findings];
  tell({ kind: 'done', bytes: new Uint8Array(bytes), findings });
}

/** A sheet at a time, so that nobody waits for a trial to end. */
async function tryOut(order: Order, letters: Promise<Fonts>): Promise<void> {
  const handout = made(order);
  const ready = await letters;
  for (const page of handout.pages.slice(0, TRIAL)) {
    if (!(await stillWanted(order))) return;
    await writePdf({ ...handout, pages: [page] }, ready);
  }
}
