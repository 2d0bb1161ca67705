/** What a part of a lesson's page finds around it: a learner of a demo project, and an address and storage of its own. */
import { afterAll } from 'vitest';
import { addressNow } from '../../components/page/address.ts';
import { editionChoice } from '../../components/page/edition.svelte.ts';
import { Learner } from '../../components/page/learner.svelte.ts';
import type { Edition, ProjectFile } from '../../src/core/index.ts';
import { folio, shelf } from '../core/project/files.ts';

// What the last page would still write into its address is written while there is one.
afterAll(() => void addressNow());

/** Goes to a page where nothing was chosen or answered before. */
export function newPage(query = ''): void {
  addressNow();
  localStorage.clear();
  visit(query);
}

/** Opens the page anew: what the browser keeps is still there. */
export function visit(query = ''): void {
  history.replaceState(null, '', `/lesson/${query}`);
}

/** The learner of a page in an edition. */
export function learner(edition: Edition = 'inch', file: ProjectFile = folio()): Learner {
  editionChoice.choose(edition);
  return new Learner({ id: 'demo', file, materials: shelf(), edition: 'inch' });
}

/** A text with each kind of blank as a plain one. */
export const plain = (text: string | undefined): string => (text ?? '').replace(/[\s\u202f\u2009]+/gu, ' ');
