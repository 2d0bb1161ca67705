/**
 * Adds to a PDF file that it is to be printed at actual size, which viewers that know this preference then offer. The
 * writer cannot say so itself. The preferences are written anew at the end of the file, as an incremental update.
 *
 * Source: ISO 32000-1:2008, 7.5.6 (incremental updates) and 12.2, table 150 (viewer preferences).
 *
 * @param file with a plain cross-reference table, and with viewer preferences as an object of their own
 * @throws where the file is not like that
 */
export function printedAtActualSize(file: Uint8Array): Uint8Array {
  const text = new TextDecoder('latin1').decode(file);
  const preferences = /\/ViewerPreferences (\d+) 0 R/.exec(text)?.[1];
  const [, trailer, before] =
    /trailer\s*<<([^]*)>>\s*startxref\s*(\d+)\s*%%EOF\s*$/.exec(text.slice(text.lastIndexOf('trailer'))) ?? [];
  if (preferences === undefined || trailer === undefined)
    throw new Error('This is no file that the writer of PDF makes.');
  const object = `${preferences} 0 obj\n<< /DisplayDocTitle true /PrintScaling /None >>\nendobj\n`;
  const update = [
    object + 'xref',
    `${preferences} 1`,
    `${String(file.length).padStart(10, '0')} 00000 n `,
    `trailer\n<<${trailer}/Prev ${before}\n>>`,
    `startxref\n${file.length + object.length}`,
    '%%EOF\n',
  ].join('\n');
  const whole = new Uint8Array(file.length + update.length);
  whole.set(file);
  whole.set(new TextEncoder().encode(update), file.length);
  return whole;
}
