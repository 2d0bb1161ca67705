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
import { parseArgs } from 'node:util';
import { published } from '../site/content/published.ts';
import { examineSite, siteReport } from './publish/examine.ts';
import { copyPortable } from './publish/portable.ts';

const USAGE = `npm run publish -- [choices]

  --dry-run                only look: build beside dist, and tell what would be published
  --address ADDRESS        where the site will be, such as https://example.org/sewing/;
                           “address” of content/site.yaml if left out
  --to FOLDER              also write a copy that works from any folder, such as a stick`;

type PublishOptions = { dryRun: boolean; address: URL | undefined; to: string | undefined };

/** Reads the choices; a text says what is wrong with them. */
export function readArguments(given: string[]): PublishOptions | string {
  try {
    const { values } = parseArgs({
      args: given,
      options: {
        'dry-run': { type: 'boolean', default: false },
        address: { type: 'string' },
        to: { type: 'string' },
        help: { type: 'boolean', default: false },
      },
    });
    const { address, to, help, 'dry-run': dryRun } = values;
    if (help) return USAGE;
    if (address !== undefined && !(URL.canParse(address) && /^https?:/.test(address))) {
      return `--address takes a web address, such as https://example.org/sewing/.\n\n${USAGE}`;
    }
    if (dryRun && to !== undefined) return `A dry run writes nothing, so leave out --to.\n\n${USAGE}`;
    return { dryRun, to, address: address === undefined ? undefined : new URL(address) };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`;
  }
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
  const wish = readArguments(process.argv.slice(2));
  if (typeof wish === 'string') {
    console.log(wish);
    process.exitCode = wish === USAGE ? 0 : 1;
  } else process.exitCode = publish(fileURLToPath(new URL('../..', import.meta.url)), wish);
}
