/** The families of attacks, a line each. */
import { addresses } from './addresses.ts';
import { chains } from './chains/family.ts';
import { files } from './files.ts';
import { formulas } from './formulas.ts';
import { handIns } from './hand-ins.ts';
import { lengths } from './lengths.ts';
import { lessons } from './lessons.ts';
import { progress } from './progress.ts';
import { server } from './server.ts';
import { storage } from './storage.ts';
import { writes } from './writes.ts';
import { tables } from './csv.ts';
import type { Family } from './family.ts';

export const families: readonly Family[] = [
  ...[chains, lengths, formulas, files, lessons, handIns],
  ...[progress, storage, addresses, tables, server, writes],
];
