import type { Handout } from './handout.ts';

/** A character that the fonts lack, and the first text it stands in. */
export type MissingCharacter = { readonly character: string; readonly in: string };

/** The characters of a document that its fonts cannot show, each once. */
export function missingCharacters(
  { title, pages }: Handout,
  hasGlyph: (codePoint: number) => boolean,
): MissingCharacter[] {
  const met = new Set<string>();
  const found: MissingCharacter[] = [];
  const look = (text: string) => {
    for (const character of text) {
      if (met.has(character)) continue;
      met.add(character);
      if (!hasGlyph(character.codePointAt(0)!)) found.push({ character, in: text });
    }
  };
  for (const { bookmark, scene } of pages) {
    for (const shape of scene.shapes) if (shape.kind === 'text') look(shape.text);
    if (bookmark !== undefined) look(bookmark);
  }
  look(title);
  return found;
}

/**
 * The same in plain sentences, for whoever prints.
 *
 * @example sayUnshown([{ character: '縫', in: '縫う' }]) // => 'The font cannot show 縫 (U+7E2B) in “縫う”. A question mark stands for it.'
 */
export function missingCharacterText(all: readonly MissingCharacter[]): string {
  const texts = [...new Set(all.map((one) => one.in))];
  return texts
    .map((text) => {
      const here = all.filter((one) => one.in === text);
      const names = here.map(({ character }) => `${character} (${codeOf(character)})`).join(', ');
      const short = text.length > 40 ? `${text.slice(0, 40)}…` : text;
      return `The font cannot show ${names} in “${short}”. A question mark stands for ${here.length > 1 ? 'each' : 'it'}.`;
    })
    .join(' ');
}

const codeOf = (character: string): string =>
  `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
