/** The notices of all that a built site ships and others made: `licences.txt`, which every page links to. */
import { existsSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';

/** Astro reads this file before it does anything else, and a build alone collects. */
const collecting = () => import('rollup-license-plugin');

/** From the site's root. */
const FILE = 'licences.txt';
/** What is shipped as files, and so is in no script: the fonts of the text and, with their styles, those of sums. */
const AS_FILES = ['@expo-google-fonts/inter', 'katex'];

/** What a package's text says and its package.json does not. */
const licenseOverrides = { 'png-js': 'MIT' };

type Notice = { name: string; version: string; license: string; licenseText?: string | null };

/** Collects what the scripts of pages and of their worker hold, and writes it with the notices of the fonts. */
export function licences(): AstroIntegration {
  const notices = new Map<string, Notice>();
  const add = (notice: Notice) => notices.set(`${notice.name} ${notice.version}`, notice);
  const collectorBy = ({ createViteLicensePlugin }: Awaited<ReturnType<typeof collecting>>) =>
    createViteLicensePlugin({
      outputFilename: false,
      licenseOverrides,
      additionalFiles: {
        [FILE]: (packages: Notice[]) => {
          packages.forEach(add);
          return tellNotices([...notices.values()]);
        },
      },
    });
  return {
    name: 'licences',
    hooks: {
      async 'astro:config:setup'({ command, updateConfig }) {
        if (command !== 'build') return;
        const by = await collecting();
        const ofPages = { ...collectorBy(by), applyToEnvironment: ({ name }: { name: string }) => name === 'client' };
        updateConfig({ vite: { plugins: [ofPages], worker: { plugins: () => [collectorBy(by)] } } });
      },
      async 'astro:build:done'({ dir }) {
        for (const name of AS_FILES) add(await noticeOf(name));
        await writeFile(path.join(fileURLToPath(dir), FILE), tellNotices([...notices.values()]));
      },
    },
  };
}

async function noticeOf(name: string): Promise<Notice> {
  const { getLicense, getLicenseText, readPackageMeta } = await collecting();
  const home = path.dirname(createRequire(import.meta.url).resolve(`${name}/package.json`));
  const meta = await readPackageMeta(home);
  const license = getLicense(name, meta);
  const texts = [await getLicenseText(name, license, home)];
  const ofFont = path.join(home, 'LICENSE_FONT');
  if (existsSync(ofFont)) texts.push(readFileSync(ofFont, 'utf8'));
  return { name, version: meta.version, license, licenseText: texts.join('\n\n') };
}

/** By name, each with its licence and the text that came with it. */
export function tellNotices(notices: readonly Notice[]): string {
  const told = notices
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
    .map(({ name, version, license, licenseText }) => {
      const text = licenseText?.trim() ?? 'The package names this licence and brings no text of it.';
      return `${'='.repeat(72)}\n${name} ${version} (${license})\n\n${text.replaceAll('\r\n', '\n')}\n`;
    });
  return `This site ships fonts and programs that others made and let everybody use. Their notices:\n\n${told.join('\n')}`;
}
