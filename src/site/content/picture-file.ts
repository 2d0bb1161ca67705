/** What the first bytes of a picture tell: its kind, whatever its name says, and how large it is. */
import { closeSync, openSync, readSync, statSync } from 'node:fs';

export type PictureFile = {
  kind: 'jpeg' | 'png' | 'gif' | 'webp' | 'avif' | 'heic';
  /** As it is shown, turned as the camera says, in pixels. */
  width: number;
  height: number;
  bytes: number;
};

/** As much of a file is read: a camera keeps a small picture and more before the size of a JPEG. */
const READ = 1 << 20;

/** @returns undefined for a file that is none of these pictures */
export function readPicture(file: string): PictureFile | undefined {
  const { size: bytes } = statSync(file);
  const buffer = Buffer.alloc(Math.min(bytes, READ));
  const open = openSync(file, 'r');
  try {
    readSync(open, buffer, 0, buffer.length, 0);
  } finally {
    closeSync(open);
  }
  const found = pictureIn(buffer);
  return found && found.width > 0 && found.height > 0 ? { ...found, bytes } : undefined;
}

function pictureIn(b: Buffer): Omit<PictureFile, 'bytes'> | undefined {
  try {
    if (b.readUInt16BE(0) === 0xffd8) return jpeg(b);
    if (b.toString('latin1', 1, 4) === 'PNG')
      return { kind: 'png', width: b.readUInt32BE(16), height: b.readUInt32BE(20) };
    if (b.toString('latin1', 0, 3) === 'GIF')
      return { kind: 'gif', width: b.readUInt16LE(6), height: b.readUInt16LE(8) };
    if (b.toString('latin1', 8, 12) === 'WEBP') return webp(b);
    return b.toString('latin1', 4, 8) === 'ftyp' ? boxed(b) : undefined;
  } catch {
    return undefined; // It breaks off before it has told its size.
  }
}

/** JPEG: marker by marker up to the frame that has the size. Source: ITU-T T.81, annex B. */
function jpeg(b: Buffer): Omit<PictureFile, 'bytes'> | undefined {
  let isTurned = false;
  for (let at = 2; ;) {
    while (b[at] === 0xff && b[at + 1] === 0xff) at += 1;
    if (b.readUInt8(at) !== 0xff) return undefined;
    const marker = b.readUInt8(at + 1);
    const length = b.readUInt16BE(at + 2);
    if (marker === 0xe1 && b.toString('latin1', at + 4, at + 8) === 'Exif')
      isTurned = orientation(b.subarray(at + 10, at + 2 + length)) >= 5;
    // C4, C8 and CC are tables and a reserve.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)) {
      const [height, width] = [b.readUInt16BE(at + 5), b.readUInt16BE(at + 7)];
      return isTurned ? { kind: 'jpeg', width: height, height: width } : { kind: 'jpeg', width, height };
    }
    at += 2 + length;
  }
}

/** How the camera was held: from 5 on, width and height change places. Source: Exif 2.3, tag 0x0112. */
function orientation(tiff: Buffer): number {
  const isLittle = tiff.toString('latin1', 0, 2) === 'II';
  const two = (at: number) => (isLittle ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const four = (at: number) => (isLittle ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at));
  const start = four(4);
  for (let i = 0; i < two(start); i += 1) {
    const entry = start + 2 + 12 * i;
    if (two(entry) === 0x0112) return two(entry + 8);
  }
  return 1;
}

/** WebP in its three forms. Source: RFC 9649. */
function webp(b: Buffer): Omit<PictureFile, 'bytes'> | undefined {
  const form = b.toString('latin1', 12, 16);
  const kind = 'webp';
  if (form === 'VP8 ') return { kind, width: b.readUInt16LE(26) & 0x3fff, height: b.readUInt16LE(28) & 0x3fff };
  if (form === 'VP8X') return { kind, width: 1 + b.readUIntLE(24, 3), height: 1 + b.readUIntLE(27, 3) };
  if (form !== 'VP8L') return undefined;
  const bits = b.readUInt32LE(21);
  return { kind, width: 1 + (bits & 0x3fff), height: 1 + ((bits >>> 14) & 0x3fff) };
}

/** AVIF and HEIC lie in the same boxes; the largest size that one of them names is the picture's. Source: ISO/IEC 23008-12. */
function boxed(b: Buffer): Omit<PictureFile, 'bytes'> | undefined {
  const brand = b.toString('latin1', 8, 12);
  const kind = /^avi[fs]$/.test(brand) ? 'avif' : /^(?:he[ivx][cmsx]|mif1|msf1)$/.test(brand) ? 'heic' : undefined;
  if (kind === undefined) return undefined;
  let [width, height] = [0, 0];
  for (let at = b.indexOf('ispe'); at >= 0; at = b.indexOf('ispe', at + 4)) {
    const [w, h] = [b.readUInt32BE(at + 8), b.readUInt32BE(at + 12)];
    if (w * h > width * height) [width, height] = [w, h];
  }
  return { kind, width, height };
}
