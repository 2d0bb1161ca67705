import encodeQR from 'qr';

/** A phone reads a picture of so many letters off a screen; the standard would allow 2 953. From memory. */
const MOST = 1800;

/**
 * A text as a QR code (ISO/IEC 18004): one SVG path, and the width of the square it lies in, quiet zone included.
 * Undefined where it is too long to be read well.
 */
export function qrPath(text: string): { path: string; size: number } | undefined {
  if (text.length > MOST) return undefined;
  const rows = encodeQR(text, 'raw', { ecc: 'low', border: 4 });
  const path = rows.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('');
  return { path, size: rows.length };
}
