/**
 * How long the documents of the largest demo project take, in both papers and both editions, and what they weigh: made
 * and written as PDF, without the disk.
 *
 *     node tests/bench/handouts.ts
 */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { cautions, defersTo } from '../../components/words/caution/cautions.ts';
import { printFonts } from '../../src/site/print/fonts.ts';
import { everything, plannedHandouts } from '../../src/site/print/handouts.ts';
import { readContent } from '../../src/site/content/read-content.ts';
import { projectDocuments, resolveProject, writePdf } from '../../src/core/index.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const content = readContent(root);
const fonts = await printFonts(path.join(root, '.cache/fonts'));

const project = content.projects
  .flatMap(({ value }) => (value ? [value] : []))
  .toSorted((a, b) => Object.keys(b.pieces).length - Object.keys(a.pieces).length)[0];
if (!project) throw new Error('There is no project in content.');

let pages = 0;
const start = performance.now();
for (const edition of ['inch', 'metric'] as const) {
  const pattern = resolveProject(project, { edition, materials: content.materials.value ?? {} });
  for (const paper of ['A4', 'Letter'] as const) {
    for (const { make } of projectDocuments(pattern, { cautions, defersTo })) {
      const handout = make({ paper });
      await writePdf(handout, fonts);
      pages += handout.pages.length;
    }
  }
}
const seconds = (performance.now() - start) / 1000;
console.log(
  `documents of “${project.title}”, two papers, two editions: ${seconds.toFixed(2)} s for ${pages} pages (at most 3 s)`,
);

const again = performance.now();
let [files, heaviest, all] = [0, 0, 0];
for (const { id } of content.courses) {
  for (const planned of plannedHandouts(content, id, everything)) {
    if (planned.kind !== 'document') continue;
    const handout = planned.make();
    const { bytes } = await writePdf(handout, fonts);
    files++;
    all += handout.pages.length;
    heaviest = Math.max(heaviest, (bytes.length / handout.pages.length) * 20);
  }
}
console.log(
  `every document of every course: ${((performance.now() - again) / 1000).toFixed(2)} s for ${files} files, ${all} pages`,
);
console.log(`twenty pages weigh at most ${(heaviest / 1024).toFixed(0)} kB (at most 1000 kB)`);
