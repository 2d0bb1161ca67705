import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** A small content folder without a mistake; tests change one file of it. */
export const GOOD: Readonly<Record<string, string>> = {
  'content/site.yaml': 'name: The Long Table\n',
  'content/materials.yaml': 'lawn: { kind: cloth }\n',
  'content/glossary.yaml': 'ease: Room beyond the size of the thing that goes in.\n',
  'content/projects/folio/project.yaml': `title: Folio
measures:
  card width: { in: 4 1/4, mm: 105, between: { in: [3, 5], mm: [75, 125] } }
  ease: { in: 1/8, mm: 3 }
  seam: { in: 1/4, mm: 6 }
  panel width:
    is: card width + 2 * ease + 2 * seam
materials:
  lining: lawn
pieces:
  strip:
    from: lining
    size: [panel width, strip length]
    pleats: { pockets: 3, depth: { in: 2 1/4, mm: 57 }, step: { in: 3/4, mm: 19 } }
  facing:
    from: lining
    size: [panel width, 3 in]
holds:
  - { what: a card, size: [card width, 2 in], in: pocket 1 of strip, ease: ease }
options:
  flap: { drops: [facing] }
`,
  'content/courses/pleats/course.yaml': `title: Pleats
summary: Fold pockets.
level: first steps
project: folio
lessons: [01-size.mdx, 02-fold.mdx]
sessions: [{ title: First evening }]
`,
  'content/courses/pleats/01-size.mdx': `---
title: Size it
summary: Four sums.
minutes: 20
session: 1
---

The panel is <Size of="panel width" /> wide, that is $w + 2e$.

<YourSize />

<AskSize of="card width + 2 * ease" tolerance="1/16 in | 1 mm">

How wide is a pocket?

</AskSize>
`,
  'content/courses/pleats/02-fold.mdx': `---
title: Fold it
summary: All at once.
minutes: 30
---

<PleatStudy piece="strip" />

<Tip>

Press each fold.

</Tip>

<Caution of="iron" />
`,
};

/**
 * Writes a content folder for one test, which takes it away when it ends.
 *
 * @param changes files that differ from the good ones; undefined leaves a file out
 * @returns the folder that holds content/
 */
export function contentFolder(changes: Record<string, string | undefined> = {}): string {
  const root = mkdtempSync(path.join(tmpdir(), 'sewing-content-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  for (const [file, text] of Object.entries({ ...GOOD, ...changes })) {
    if (text === undefined) continue;
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
  return root;
}

/** A good file with one part exchanged; the part has to be there. */
export function exchanged(file: string, part: string, by: string): Record<string, string> {
  const text = GOOD[file];
  if (!text?.includes(part)) throw new Error(`${file} has no ${part}`);
  return { [file]: text.replace(part, () => by) };
}
