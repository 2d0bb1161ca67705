/** The package brings no types of its own; this is the part that the kit uses. */
declare module 'subset-font' {
  export default function subsetFont(
    font: Buffer,
    text: string,
    options?: { targetFormat?: 'sfnt' | 'truetype' | 'woff' | 'woff2' },
  ): Promise<Buffer>;
}
