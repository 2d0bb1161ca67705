/**
 * npm run publish: builds the site and says whether it is fit to be seen: links, size, what a host needs to know.
 *
 *     npm run publish -- --dry-run                       only looks; dist stays as it is
 *     npm run publish -- --address https://example.org/sewing/
 *     npm run publish -- --to /media/STICK/course        a copy that works from any folder
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { published } from '../site/content/published.ts';
import { helpOf, readArguments, tell, type Command } from './arguments.ts';
import { examineSite, siteReport } from './publish/examine.ts';
import { copyPortable } from './publish/portable.ts';

const COMMAND = {
  name: 'npm run publish',
  about: 'Builds the site, checks every link, and tells what a host needs to know.',
  choices: {
    'dry-run': { about: 'only look: build beside dist, and tell what would be published' },
    address: {
      takes: 'ADDRESS',
      about: 'where the site will be, as https://example.org/sewing/; that of content/site.yaml if left out',
    },
    to: { takes: 'FOLDER', about: 'also write a copy that works from any folder, such as a stick' },
  },
} as const satisfies Command;

type PublishOptions = { dryRun: boolean; address: URL | undefined; to: string | undefined };
type Refused = Extract<ReturnType<typeof readArguments>, { ok: false }>;

/** Reads the choices, or says what is wrong with them. */
export function readChoices(given?: string[]): ({ ok: true } & PublishOptions) | Refused {
  const asked = readArguments(COMMAND, given);
  if (!asked.ok) return asked;
  const wrong = (message: string): Refused => ({ ok: false, answer: `${message}\n\n${helpOf(COMMAND)}`, code: 1 });
  const { address, to, 'dry-run': dryRun } = asked.values;
  if (address !== undefined && !(URL.canParse(address) && /^https?:/.test(address)))
    return wrong('--address takes a web address, such as https://example.org/sewing/.');
  if (dryRun && to !== undefined) return wrong('A dry run writes nothing, so leave out --to.');
  return { ok: true, dryRun, to, address: address === undefined ? undefined : new URL(address) };
}

/** What lies beside a copy for a stick, for whoever finds it. */
const START_HERE = `This folder is a sewing course.

Open index.html to read it: text, sums, drawings and documents, at the course's own sizes.
A browser does not run the programs of pages that lie in a plain folder. For sliders, questions and your own size, start
the little server: node open.mjs, or python3 -m http.server and open the address it prints.
Put on any web host, the whole folder works as it is.
`;

function publish(root: string, { dryRun, address: asked, to }: PublishOptions): number {
  const out = path.join(root, dryRun ? '.cache/publish' : 'dist');
  const environment = { ...process.env, ...(asked && { BASE_ADDRESS: asked.href }) };
  const target = to === undefined ? undefined : path.resolve(root, to);
  if (target !== undefined && existsSync(target) && readdirSync(target).some((name) => !name.startsWith('.'))) {
    if (!existsSync(path.join(target, 'open.mjs'))) {
      console.error(`${target} holds other files already. Name a new folder, or an empty one.`);
      return 1;
    }
  }
  const build = [path.join(root, 'src/author/astro.ts'), 'build', '--outDir', out, '--silent'];
  const { status } = spawnSync(process.execPath, build, { cwd: root, stdio: 'inherit', env: environment });
  if (status !== 0) return status ?? 1;
  const address = published(root, environment);
  const base = (address?.pathname ?? '/').replace(/\/?$/, '/');
  const found = examineSite(out, base);
  console.log(`${dryRun ? 'A dry run: nothing is published. ' : ''}The site has ${found.pages} pages.\n`);
  console.log(siteReport(found, address));
  if (found.dead.length > 0) return 1;
  if (target !== undefined) {
    copyPortable(out, target, base);
    copyFileSync(path.join(root, 'src/author/publish/open.mjs'), path.join(target, 'open.mjs'));
    writeFileSync(path.join(target, 'START-HERE.txt'), START_HERE);
    console.log(`\nA copy that works from any folder is in ${target}. START-HERE.txt says how it is opened.`);
  }
  if (!dryRun) console.log(`\nPut everything in ${out} on your host; /authoring/publishing/ on the site says how.`);
  return 0;
}

if (import.meta.main) {
  const wish = readChoices();
  if (wish.ok) process.exitCode = publish(fileURLToPath(new URL('../..', import.meta.url)), wish);
  else tell(wish);
}
