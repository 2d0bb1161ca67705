import { across } from './dimension.ts';
import { box, polyline } from './path.ts';
import { layOutSheet } from './sheet.ts';
import { lengthWriter } from './lengths.ts';
import type { Scene, Shape } from './scene.ts';
import type { DrawingSetting } from './sheet.ts';

/** A finished width in mm: as it was meant, as it likely comes out, and at worst. */
export type Drift = { readonly meant: number; readonly likely: number; readonly worst: number };

/** How tall the strip is drawn, as a share of its width. */
const TALL = 0.28;

/** A finished width as it was meant, and what is left of it when every seam takes a little too much. To scale. */
export function drawDrift({ meant, likely, worst }: Drift, setting: DrawingSetting): Scene {
  const { set, say } = lengthWriter(setting);
  const tall = TALL * meant;
  const row = (name: string, mm: number, words: string) =>
    across({ name, marks: [0, Math.max(mm, 0)], labels: [`${words} ${set(mm)}`] });
  const title = 'The finished width, as meant and as sewn';
  return layOutSheet(
    {
      title,
      cloth: { x: 0, y: 0, width: meant, height: tall },
      below: [row('worst', worst, 'at worst'), row('likely', likely, 'likely'), row('meant', meant, 'meant')],
      draw: ({ x, top, bottom }): Shape[] => {
        const block = (width: number) => box(x(0), top, Math.max(0, x(width) - x(0)), bottom - top);
        return [
          { kind: 'path', name: 'at worst', role: 'right side', path: block(worst) },
          { kind: 'path', name: 'meant', role: 'hidden', path: block(meant) },
          { kind: 'path', name: 'likely', role: 'hidden', path: block(likely) },
          {
            kind: 'path',
            name: 'edge at worst',
            role: 'cut',
            path: polyline({ x: x(Math.max(0, worst)), y: top }, { x: x(Math.max(0, worst)), y: bottom }),
            now: true,
          },
        ];
      },
      words: { hidden: 'as meant, and as is likely' },
      now: { role: 'cut', words: 'where it ends at worst' },
      text: [
        `${title}.`,
        `Meant: ${say(meant)}.`,
        `Likely, when the seams err on their own: ${say(likely)}.`,
        `At worst, when all err the same way: ${say(worst)}.`,
      ],
    },
    setting,
  );
}
