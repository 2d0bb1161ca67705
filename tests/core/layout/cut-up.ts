import { random } from '../../../src/core/layout/random.ts';

export type Rect = { width: number; height: number };

/**
 * A rectangle cut up at random into so many with nothing left over, so that the least length they can be laid in is
 * known. By straight cuts; where `pinwheels` are asked for, also into five round a centre, which no straight cut parts.
 */
export function cutUp(seed: number, width: number, height: number, count: number, pinwheels = false): Rect[] {
  const { below } = random(seed);
  const parts: Rect[] = [{ width, height }];
  for (let guard = 0; parts.length < count && guard < 20 * count; guard++) {
    // The largest of three, so that no sliver is cut further while a large one waits.
    const picks = [below(parts.length), below(parts.length), below(parts.length)];
    const i = picks.reduce((a, b) => (parts[b]!.width * parts[b]!.height > parts[a]!.width * parts[a]!.height ? b : a));
    const { width: w, height: h } = parts[i]!;
    if (pinwheels && w > 4 && h > 4 && parts.length + 4 <= count && below(2) === 0) {
      const [x1, y1] = [1 + below(w - 2), 1 + below(h - 2)];
      const [x2, y2] = [x1 + 1 + below(w - x1 - 1), y1 + 1 + below(h - y1 - 1)];
      parts.splice(
        i,
        1,
        { width: x2, height: y1 },
        { width: w - x2, height: y2 },
        { width: w - x1, height: h - y2 },
        { width: x1, height: h - y1 },
        { width: x2 - x1, height: y2 - y1 },
      );
    } else if (w >= h && w > 1) {
      const at = 1 + below(w - 1);
      parts.splice(i, 1, { width: at, height: h }, { width: w - at, height: h });
    } else if (h > 1) {
      const at = 1 + below(h - 1);
      parts.splice(i, 1, { width: w, height: at }, { width: w, height: h - at });
    }
  }
  return parts;
}
