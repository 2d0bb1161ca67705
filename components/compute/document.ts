/** Documents to print, for the worker, and the writer of PDF with them. */
import {
  projectDocuments,
  missingCharacterText,
  writePdf,
  type Fonts,
  type Handout,
  type Pattern,
} from '../../src/core/index.ts';
import { cautions, defersTo } from '../words/caution/cautions.ts';
import { RequestError, type Handler } from './serve-requests.ts';
import type { DocumentRequest } from './protocol.ts';

/** So many sheets are a trial. */
const TRIAL = 3;

let letters: Promise<Fonts> | undefined;

/** Fetches the fonts, once. */
function lettersOf(addresses: DocumentRequest['fonts']): Promise<Fonts> {
  letters ??= load(addresses).catch((cause: unknown) => {
    letters = undefined;
    throw new RequestError('The letters for the document could not be fetched. Try again when you are online.', {
      cause,
    });
  });
  return letters;
}

async function load({ regular, strong }: DocumentRequest['fonts']): Promise<Fonts> {
  const [one, other] = await Promise.all(
    [regular, strong].map(async (address) => {
      const answer = await fetch(address);
      if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
      return new Uint8Array(await answer.arrayBuffer());
    }),
  );
  return { regular: one!, strong: other! };
}

/** The document that was made last: a trial makes it for the request that follows. */
let last: { of: Pattern; key: string; handout: Handout } | undefined;

function handoutOf(pattern: Pattern, { name, setting, times }: DocumentRequest): Handout {
  const key = JSON.stringify([name, setting, times]);
  if (last?.of === pattern && last.key === key) return last.handout;
  const handout = projectDocuments(pattern, { cautions, defersTo, times: () => times })
    .find((one) => one.name === name)
    ?.make(setting);
  if (!handout) throw new RequestError('Your project leaves this document out, so there is nothing to print.');
  last = { of: pattern, key, handout };
  return handout;
}

export const document: Handler<'document'> = async (pattern, { document }, { progress, pause }) => {
  const fetching = lettersOf(document.fonts);
  // Where the document fails first, nobody waits for the letters.
  fetching.catch(() => {});
  const handout = handoutOf(pattern, document);
  const fonts = await fetching;
  if (document.trial) {
    for (const page of handout.pages.slice(0, TRIAL)) {
      await pause();
      await writePdf({ ...handout, pages: [page] }, fonts);
    }
    return undefined;
  }
  const { bytes, unshown } = await writePdf(handout, fonts, async (done, all) => {
    progress(done / all);
    await pause();
  });
  const findings = unshown.length > 0 ? [...handout.findings, missingCharacterText(unshown)] : [...handout.findings];
  return { bytes: new Uint8Array(bytes), pages: handout.pages.length, findings };
};
