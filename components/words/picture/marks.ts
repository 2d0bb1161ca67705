/**
 * Where a mark lies, in hundredths of the picture from its left and from its top.
 *
 * @returns undefined for what is no place on a picture
 * @example placeOf('30 40') // => { left: 30, top: 40 }
 */
export function placeOf(written: string): { left: number; top: number } | undefined {
  const [, left, top] = /^\s*(\d{1,3}(?:\.\d+)?)%?[\s,]+(\d{1,3}(?:\.\d+)?)%?\s*$/u.exec(written) ?? [];
  const place = { left: Number(left), top: Number(top) };
  return place.left <= 100 && place.top <= 100 ? place : undefined;
}
