/**
 * Svelte compiles every component twice for a site, to be run by the server and by a browser: an eighth of a build's
 * work. What comes of it depends on nothing that an instructor writes, so that it is kept from one build to the next.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { findPackageJSON } from 'node:module';
import path from 'node:path';
import type { Plugin } from 'vite';

/** What else decides how a component comes out. */
const COMPILERS = ['svelte', '@sveltejs/vite-plugin-svelte'].map(
  (name) => (JSON.parse(readFileSync(findPackageJSON(name, import.meta.url)!, 'utf8')) as { version: string }).version,
);

/** The plugins that compile components, and modules with runes. */
const COMPILES = /^vite-plugin-svelte:compile/;

/**
 * @param file where the results lie; one that is not there, or cannot be read, holds none
 */
export function compiledOnce(file: string): Plugin {
  const kept = new Map(Object.entries(read(file)));
  /** Those of this build: what no build has asked for any more is not kept on. */
  const used = new Map<string, unknown>();
  return {
    name: 'compiled-once',
    apply: 'build',
    configResolved({ plugins }) {
      for (const { name, transform } of plugins) {
        if (!COMPILES.test(name) || typeof transform !== 'object') continue;
        const compile = transform.handler;
        transform.handler = async function (code, id, ...more) {
          const { consumer, isProduction } = this.environment.config;
          const key = digest(JSON.stringify([COMPILERS, name, consumer, isProduction, id, code]));
          // Nothing may come of it, too: that is kept as null.
          const known = kept.has(key) ? kept.get(key) : ((await compile.call(this, code, id, ...more)) ?? null);
          used.set(key, known);
          return (known ?? undefined) as Awaited<ReturnType<typeof compile>>;
        };
      }
    },
    buildEnd(error) {
      // What browsers run comes last.
      if (error || this.environment.config.consumer !== 'client') return;
      if (used.size === kept.size && [...used.keys()].every((key) => kept.has(key))) return;
      write(file, JSON.stringify(Object.fromEntries(used)));
    },
  };
}

const digest = (text: string): string => createHash('sha256').update(text).digest('base64url');

function read(file: string): Record<string, unknown> {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
  } catch {
    return {};
  }
}

/** In one go: another build may be reading. Where it cannot be kept, the next build compiles again. */
function write(file: string, text: string): void {
  try {
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(`${file}.${process.pid}`, text);
    renameSync(`${file}.${process.pid}`, file);
  } catch {
    /* as above */
  }
}
