/**
 * The one way in which a file of the author is written, cut off: calls that fail, and another hand that writes in
 * between. The file is then whole, as it was or as it was to be, and what is said is true. `npm run fuzz` tries it on the
 * machine's own file system, too: `on-disk.ts`.
 */
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { CHANGED_SINCE, writeAuthorFile, type Disk } from '../../src/author/write-file.ts';
import type { Chance } from './chance.ts';
import { count, family, SLIP } from './family.ts';

const CODES = [
  'ENOSPC',
  'EDQUOT',
  'EACCES',
  'EPERM',
  'EROFS',
  'EIO',
  'EBUSY',
  'ENOENT',
  'ENOTDIR',
  'EMFILE',
  'EEXIST',
  'EISDIR',
  'ELOOP',
];
const TEXTS = ['', 'title: Folio\n', 'title: Wallet\n', 'é\r\n', 'x'.repeat(70_000), '\ufefftitle: a\n'];

/** The n-th call of the disk fails with a code, once it is done or instead of it; or another hand writes right before it. */
type Case = {
  there: string | undefined;
  before: string | undefined;
  text: string;
  fails: { call: number; code: string; isDone: boolean }[];
  hand?: { call: number; text: string | undefined };
  kind: 'file' | 'link' | 'folder gone' | 'part left';
};

const textFrom = (from: Chance): string | undefined => (from.often(0.2) ? undefined : from.of(TEXTS));

let home: string | undefined;
/** A folder of its own, which is taken away when the program ends. */
function room(): string {
  if (home === undefined) {
    const made = (home = fs.mkdtempSync(path.join(os.tmpdir(), 'writes-')));
    process.once('exit', () => fs.rmSync(made, { recursive: true, force: true }));
  }
  return home;
}
const came = new Map<string, number>();

export const writes = family<Case>(
  {
    name: 'writes',
    makes: (from) => {
      const there = textFrom(from);
      return {
        there,
        before: from.often(0.8) ? there : textFrom(from),
        text: from.of(TEXTS),
        fails: Array.from({ length: from.often(0.3) ? 0 : 1 + from.below(2) }, () => ({
          call: 1 + from.below(14),
          code: from.of(CODES),
          isDone: from.often(0.3),
        })),
        ...(from.often(0.3) && { hand: { call: 1 + from.below(12), text: textFrom(from) } }),
        kind: from.of(['file', 'file', 'link', 'folder gone', 'part left'] as const),
      };
    },
    broken({ there, before, text, fails, hand, kind }) {
      const folder = path.join(room(), 'case');
      fs.rmSync(folder, { recursive: true, force: true });
      fs.mkdirSync(folder);
      const target = path.join(folder, 'project.yaml');
      const file = kind === 'link' ? path.join(folder, 'link.yaml') : target;
      if (kind === 'link' && there !== undefined) fs.symlinkSync('project.yaml', file);
      if (there !== undefined) fs.writeFileSync(target, there);
      const part = path.join(folder, `.project.yaml.${process.pid}.part`);
      if (kind === 'part left') fs.writeFileSync(part, 'half');
      if (kind === 'folder gone') fs.rmSync(folder, { recursive: true });
      let calls = 0;
      let held = kind === 'folder gone' ? undefined : there;
      let isRemovalLost = false;
      const real = kind === 'link' && there !== undefined ? target : file;
      const put = (now: string | undefined) => {
        if (kind === 'folder gone') return;
        if (now === undefined) fs.rmSync(real, { force: true });
        else fs.writeFileSync(real, now);
        held = now;
      };
      const failing = (name: string, run: (...given: unknown[]) => unknown, ...given: unknown[]) => {
        calls++;
        if (hand?.call === calls) put(hand.text);
        const fault = fails.find(({ call }) => call === calls);
        // A look whether a file is there never throws.
        if (!fault || name === 'existsSync') return run(...given);
        if (name === 'rmSync') isRemovalLost = true;
        if (fault.isDone && name !== 'openSync' && name !== 'renameSync') run(...given);
        throw Object.assign(new Error(fault.code), { code: fault.code });
      };
      const disk = Object.fromEntries(
        Object.entries(fs)
          .filter(([name]) => name.endsWith('Sync'))
          .map(([name, run]) => [name, (...given: unknown[]) => failing(name, run as never, ...given)]),
      ) as unknown as Disk;
      const refusal = writeAuthorFile(file, text, { before }, disk);
      count(came, refusal ? (refusal.code === CHANGED_SINCE ? 'changed since' : 'refused') : 'written');
      const now = fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : undefined;
      const lines: string[] = [];
      if (refusal ? now !== held : now !== text)
        lines.push(`${refusal?.message ?? 'written'}, and it holds ${JSON.stringify(now)?.slice(0, 60)}`);
      // Another hand may come between the last look and the change of names, which no file system tells.
      if (!refusal && held !== before && (hand === undefined || held !== hand.text))
        lines.push('wrote over what it did not know');
      if (refusal && (refusal.message === '' || SLIP.test(refusal.message + refusal.fix)))
        lines.push(`says “${refusal.message}”`);
      if (!isRemovalLost && kind !== 'part left' && fs.existsSync(part)) lines.push('left a part of a file behind');
      return lines;
    },
  },
  came,
);
