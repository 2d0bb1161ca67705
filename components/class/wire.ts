/** A hand-in as a file and as a code to copy or scan; and reading both, whoever they come from. */
import type { HandIn } from './hand-in.ts';
import { knownOnly } from './known.ts';
import { cleanName } from './names.ts';
import { HandInFile } from './schema.ts';

/** Begins every code, so that other texts are told from it. */
export const MARK = 'SEW1.';
/** A hand-in is a few kB, and that of a very long course a few hundred; more is not one. In characters. */
export const MOST_TEXT = 1_000_000;
/** What a code may grow to when it is unpacked, in bytes: a small text can hold a very large one. */
const MOST_UNPACKED = 1_000_000;
/**
 * In letters of a code, four of which are three bytes. A browser unpacks all that it is given at a time before it hands
 * over the first of it, and DEFLATE makes at most 1032 bytes of one (zlib, technical details).
 */
const AT_A_TIME = 684;

export type HandInResult = { ok: true; value: HandIn } | { ok: false; sentence: string };

const no = (sentence: string): HandInResult => ({ ok: false, sentence });

/** A hand-in as the text of a file. */
export const toFile = (handIn: HandIn): string => JSON.stringify({ 'hand-in': 1, ...knownOnly(handIn) });

/**
 * A hand-in as one word of letters, digits, `-` and `_`: base64url (RFC 4648, section 5) of DEFLATE (RFC 1951).
 */
export async function toCode(handIn: HandIn): Promise<string> {
  const packed = new Blob([toFile(handIn)]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  const bytes = new Uint8Array(await new Response(packed).arrayBuffer());
  const text = btoa(String.fromCharCode(...bytes));
  return MARK + text.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** Reads a file or a code. Nothing in it is trusted: its size, its shape and each of its texts are checked. */
export async function readHandIn(text: string): Promise<HandInResult> {
  if (text.length > MOST_TEXT) return no('It is too large for a hand-in.');
  const trimmed = text.trim();
  let json = trimmed;
  if (trimmed.startsWith(MARK)) {
    const unpacked = await unpack(trimmed.slice(MARK.length).replace(/\s+/gu, ''));
    if (unpacked === undefined) return no('The code is damaged. Copy all of it, from SEW1 to its end.');
    json = unpacked;
  }
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch {
    return no('It is not a hand-in.');
  }
  const { 'hand-in': version, ...rest } = Object(value) as Record<string, unknown>;
  if (version !== 1) return no('It is not a hand-in.');
  const handIn = asHandIn(rest);
  return handIn ? { ok: true, value: handIn } : no('It is a hand-in with something in it that does not belong.');
}

/** A value of the right shape, with nothing in it that the kit does not know. */
export function asHandIn(value: unknown): HandIn | undefined {
  const read = HandInFile.safeParse(value);
  return read.success ? knownOnly({ ...read.data, name: cleanName(read.data.name) }) : undefined;
}

async function unpack(code: string): Promise<string | undefined> {
  try {
    let given = 0;
    const packed = new ReadableStream<Uint8Array<ArrayBuffer>>({
      pull(to) {
        if (given >= code.length) return to.close();
        const letters = code
          .slice(given, (given += AT_A_TIME))
          .replaceAll('-', '+')
          .replaceAll('_', '/');
        to.enqueue(Uint8Array.from(atob(letters), (sign) => sign.charCodeAt(0)));
      },
    });
    const reader = packed.pipeThrough(new DecompressionStream('deflate-raw')).getReader();
    const decoder = new TextDecoder('utf-8', { fatal: true });
    let text = '';
    let size = 0;
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      size += part.value.length;
      if (size > MOST_UNPACKED) {
        await reader.cancel();
        return undefined;
      }
      text += decoder.decode(part.value, { stream: true });
    }
    return text + decoder.decode();
  } catch {
    return undefined;
  }
}
