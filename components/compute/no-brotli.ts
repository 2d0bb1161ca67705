/**
 * In place of the unpacker of WOFF2 that the font library brings along, dictionary and all: documents are set in
 * TrueType, so that no learner has to fetch it.
 */
export default function unpack(): never {
  throw new Error('Documents are set in TrueType fonts, not in WOFF2.');
}
