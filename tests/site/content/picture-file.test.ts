import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import sharp, { type Sharp } from 'sharp';
import { expect, onTestFinished, test } from 'vitest';
import { readPicture } from '../../../src/site/content/picture-file.ts';

function folder(): string {
  const made = mkdtempSync(path.join(tmpdir(), 'pictures-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

const plain = (width: number, height: number, alpha = false) =>
  sharp({ create: { width, height, channels: alpha ? 4 : 3, background: { r: 90, g: 120, b: 110, alpha: 0.5 } } });

// Another program writes the pictures: sharp, which is also what makes them smaller for a page.
test.each([
  ['jpeg', (s: Sharp) => s.jpeg()],
  ['jpeg', (s: Sharp) => s.jpeg({ progressive: true })],
  ['png', (s: Sharp) => s.png()],
  ['gif', (s: Sharp) => s.gif()],
  ['webp', (s: Sharp) => s.webp()],
  ['webp', (s: Sharp) => s.webp({ lossless: true })],
  ['webp', (s: Sharp) => s.ensureAlpha(0.5).webp()],
  ['avif', (s: Sharp) => s.avif({ effort: 0 })],
] as const)('%s tells its size', async (kind, write) => {
  const file = path.join(folder(), 'a');
  for (const [width, height] of [
    [640, 427],
    [33, 1201],
  ] as const) {
    await write(plain(width, height)).toFile(file);
    expect(readPicture(file)).toMatchObject({ kind, width, height });
  }
});

test.each([1, 2, 3, 4, 5, 6, 7, 8])('a camera held in way %i', async (orientation) => {
  const file = path.join(folder(), 'a.jpg');
  await plain(600, 400).jpeg().withMetadata({ orientation }).toFile(file);
  const { width, height } = await sharp(await sharp(file).rotate().toBuffer()).metadata();
  expect(readPicture(file)).toMatchObject({ width, height });
});

test('what is no picture, or breaks off, is none', async () => {
  const file = path.join(folder(), 'a.jpg');
  for (const text of ['', 'words', '\xff', 'GIF89a', 'RIFF0000WEBPVP8 ']) {
    writeFileSync(file, text, 'latin1');
    expect(readPicture(file), text).toBeUndefined();
  }
  const whole = await plain(600, 400).jpeg().toBuffer();
  writeFileSync(file, whole.subarray(0, 60));
  expect(readPicture(file)).toBeUndefined();
  // A picture of a telephone: its box names the brand and the size. Source: ISO/IEC 23008-12.
  const heic = Buffer.alloc(64);
  heic.write('\0\0\0\x18ftypheic', 'latin1');
  heic.write('ispe', 40, 'latin1');
  heic.writeUInt32BE(4032, 48);
  heic.writeUInt32BE(3024, 52);
  writeFileSync(file, heic);
  expect(readPicture(file)).toEqual({ kind: 'heic', width: 4032, height: 3024, bytes: 64 });
});

test('no bytes make it fail', () => {
  const file = path.join(folder(), 'a.jpg');
  const start = fc.constantFrom(
    '\xff\xd8\xff',
    '\x89PNG',
    'GIF',
    'RIFF0000WEBPVP8X',
    '\0\0\0\0ftypavif',
    '\xff\xd8\xff\xe1\0\x40Exif\0\0MM',
  );
  fc.assert(
    fc.property(start, fc.uint8Array({ maxLength: 120 }), (head, rest) => {
      writeFileSync(file, Buffer.concat([Buffer.from(head, 'latin1'), rest]));
      const found = readPicture(file);
      expect(found === undefined || (found.width > 0 && found.height > 0)).toBe(true);
    }),
  );
});
