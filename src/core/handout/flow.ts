import { letteringWidth, wrap } from '../drawing/lettering.ts';
import { polyline } from '../drawing/path.ts';
import { editionWords } from './handout.ts';
import { line } from './place.ts';
import { MARGIN, papers } from './paper.ts';
import { LEADING, typeOf } from './type.ts';
import { firstLine } from './true-scale.ts';
import type { Shape } from '../drawing/scene.ts';
import type { Heading, Page, HandoutSetting } from './handout.ts';

/** Something as wide as the page's text that is never divided: a line of text, a row of a table, a drawing. */
export type Block = {
  /** mm, with the blank after it. */
  readonly height: number;
  /** Its shapes with its upper left corner at a place of the sheet. */
  draw: (x: number, y: number) => Shape[];
  /** It stands on the page of what follows. */
  readonly keep?: boolean;
  /** Stands again at the top of a page that begins within its table. */
  readonly head?: Block;
  /** At the top of a page it is left out: a blank. */
  readonly blank?: boolean;
};

/**
 * Fills pages from the top. The first carries the title; every page says at its foot what it belongs to and which of
 * how many it is.
 *
 * @param after how many pages of another kind follow, for the count
 */
export function flow(blocks: readonly Block[], heading: Heading, setting: HandoutSetting, after = 0): Page[] {
  const type = typeOf(setting);
  const { width, height } = papers[setting.paper];
  const across = width - 2 * MARGIN;
  const foot = height - MARGIN - 1.9 * type.small;
  const title = wrap(heading.title, type.title, across);
  const about = [heading.project, editionWords[heading.edition], setting.school ?? ''].filter(Boolean).join(' · ');
  const aboutLines = wrap(about, type.text, across);
  const head = title.length * type.title * 1.22 + aboutLines.length * type.text * LEADING + 5;

  const pages: Shape[][] = [];
  let y = Infinity;
  let counter = 0;
  const open = () => {
    const shapes: Shape[] = [];
    y = MARGIN;
    if (pages.length === 0) {
      title.forEach((text, i) => {
        const baseline = MARGIN + type.title * (0.8 + 1.22 * i);
        shapes.push(line(`title ${i + 1}`, text, MARGIN, baseline, type.title, { strong: true }));
      });
      const under = MARGIN + title.length * type.title * 1.22;
      aboutLines.forEach((text, i) => {
        shapes.push(line(`about ${i + 1}`, text, MARGIN, under + type.text * (1 + LEADING * i), type.text));
      });
      y += head;
    }
    pages.push(shapes);
  };
  const put = (block: Block) => {
    counter++;
    const shapes = pages.at(-1)!;
    for (const shape of block.draw(MARGIN, y)) shapes.push({ ...shape, name: `${counter} ${shape.name}` });
    y += block.height;
  };

  open();
  let table: Block | undefined;
  for (const [i, block] of blocks.entries()) {
    // What must stay with the next stands or falls with it, and with what that must stay with. What is longer than a
    // page begins on one of its own, and goes on where it no longer fits.
    const within = i > 0 && blocks[i - 1]!.keep;
    let needed = block.height;
    for (let k = i; !within && blocks[k]?.keep && k + 1 < blocks.length; k++) needed += blocks[k + 1]!.height;
    const fresh = pages.at(-1)!.length === 0;
    if (y + Math.min(needed, foot - MARGIN) > foot + 1e-6 && !fresh) {
      if (block.blank) continue;
      open();
      if (block.head && block.head === table) put(block.head);
    }
    table = block.head ?? table;
    if (block.blank && pages.at(-1)!.length === 0) continue;
    put(block);
  }

  const count = pages.length + after;
  return pages.map((shapes, i): Page => {
    const baseline = height - MARGIN - 0.2 * type.small;
    const pageOf = `page ${i + 1} of ${count}`;
    const room = across - letteringWidth(pageOf, type.small) - 4;
    const foot: Shape[] = [
      {
        kind: 'path',
        name: 'foot line',
        role: 'leader',
        path: polyline(
          { x: MARGIN, y: baseline - 1.2 * type.small },
          { x: width - MARGIN, y: baseline - 1.2 * type.small },
        ),
      },
      line('foot', firstLine(`${heading.title} · ${about}`, type.small, room), MARGIN, baseline, type.small),
      line('page', pageOf, width - MARGIN, baseline, type.small, { anchor: 'end' }),
    ];
    return {
      ...(i === 0 && { bookmark: heading.title }),
      scene: { title: heading.title, width, height, scale: 1, shapes: [...shapes, ...foot], text: [] },
    };
  });
}
