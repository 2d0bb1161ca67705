/** What a learner's own documents are called in their folder. */
import { expect, test } from 'vitest';
import { OwnSheets } from '../../../components/page/own-sheets/own-sheets.svelte.ts';
import { resolved } from '../../core/project/files.ts';

const SIZES = 'sizes: { default: small, of: { small: { waist: 26 }, Extra large: { waist: 38 } } }';

test.each([
  ['', undefined, 'skirt-templates-a4-inch.pdf'],
  [SIZES, 'small', 'skirt-templates-small-a4-inch.pdf'],
  [SIZES, 'Extra large', 'skirt-templates-extra-large-a4-inch.pdf'],
])('the file of a document has its size: %s %s', (sizes, size, name) => {
  const file = `title: Skirt\n${sizes}\nmeasures: { waist: 26 }\npieces: { panel: { size: [waist, 10] } }`;
  const pattern = resolved(file, size === undefined ? {} : { size });
  const stop = $effect.root(() => {
    const sheets = new OwnSheets(() => ({}));
    const project = { id: 'skirt', file: pattern.origin.file, materials: {}, edition: 'inch' as const };
    sheets.take('/there.pdf', { name: 'templates', title: 'Templates' }, { project, pattern });
    expect(sheets.coming).toMatchObject({ at: 'done', name });
  });
  stop();
});
