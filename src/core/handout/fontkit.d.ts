/** What this folder asks of fontkit, which brings no types. */
declare module 'fontkit' {
  export type Font = { hasGlyphForCodePoint(codePoint: number): boolean };
  export function create(bytes: Uint8Array): Font;
}
