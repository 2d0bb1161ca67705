import { fileURLToPath } from 'node:url';
import { satteri } from '@astrojs/markdown-satteri';
import mdx from '@astrojs/mdx';
import svelte from '@astrojs/svelte';
import { defineConfig, fontProviders } from 'astro/config';
import './src/site/pages/no-telemetry.ts';
import { authorsForm } from './src/author/form/integration.ts';
import { cutFonts } from './src/site/print/fonts.ts';
import { handoutsInSite } from './src/site/print/handouts-integration.ts';
import { filesInSite } from './src/site/print/files-integration.ts';
import { recordingsInSite } from './src/site/print/recordings-integration.ts';
import { contentCheck } from './src/site/integration.ts';
import { bracketsPlugin } from './src/site/content/brackets-plugin.ts';
import { picturesPlugin } from './src/site/content/pictures-plugin.ts';
import { katexPlugin } from './src/site/content/katex-plugin.ts';
import { termsPlugin } from './src/site/content/terms-plugin.ts';
import { features } from './src/site/content/lesson-text.ts';
import { published } from './src/site/content/published.ts';
import { licences } from './src/site/pages/licences.ts';
import { inSitemap } from './src/site/pages/sitemap.ts';

const root = fileURLToPath(new URL('.', import.meta.url));
const address = published(root);
const fonts = await cutFonts(`${root}.cache/fonts`, 'woff2');

/** `client:use`: an island that wakes when it is used. */
const wakeOnUse = {
  name: 'wake-on-use',
  hooks: {
    'astro:config:setup': ({ addClientDirective }) =>
      addClientDirective({ name: 'use', entrypoint: './components/page/wake-on-use.ts' }),
  },
};

export default defineConfig({
  site: address?.origin,
  base: address?.pathname ?? '/',
  trailingSlash: 'always',
  publicDir: './src/site/pages/public',
  outDir: './dist',
  cacheDir: './.cache/astro',
  fonts: [
    {
      provider: fontProviders.local(),
      name: 'Text',
      cssVariable: '--font-body',
      fallbacks: ['system-ui', 'sans-serif'],
      options: { variants: fonts.map(({ weight, file }) => ({ weight, style: 'normal', src: [file] })) },
    },
  ],
  integrations: [
    contentCheck(),
    wakeOnUse,
    // The heading of a section is a part of ours, with the way to the next one (src/layouts/SectionHead.astro).
    mdx({ optimize: { ignoreElementNames: ['h2'] } }),
    svelte({ configFile: false }),
    handoutsInSite(),
    recordingsInSite(),
    filesInSite(),
    licences(),
    address && (await import('@astrojs/sitemap')).default({ filter: (page) => inSitemap(page, address.href) }),
    authorsForm(),
  ],
  devToolbar: { enabled: false },
  compressHTML: true, // keeps the blank between two words of a sentence where the source breaks the line at a tag
  markdown: {
    syntaxHighlight: 'prism', // the other highlighter writes style elements, which the policy below forbids
    processor: satteri({ features, mdastPlugins: [picturesPlugin, katexPlugin, bracketsPlugin, termsPlugin(root)] }),
  },
  security: {
    csp: {
      directives: [
        "default-src 'self'",
        "object-src 'none'",
        "base-uri 'self'",
        "form-action 'self'",
        "img-src 'self' data: blob:",
      ],
      // Maths is set by style attributes; style elements and scripts stay forbidden unless they are the site's own.
      styleDirective: { resources: [{ resource: "'unsafe-inline'", kind: 'attribute' }] },
    },
  },
  vite: {
    cacheDir: '.cache/vite',
    // Documents need no fonts that are packed in this way.
    resolve: { alias: { 'brotli/decompress.js': `${root}components/compute/no-brotli.ts` } },
    worker: { format: 'es' },
    // A script finds its worker from where it lies itself, so that a copy of the site works below any path.
    experimental: { renderBuiltUrl: (_file, { hostType }) => (hostType === 'js' ? { relative: true } : undefined) },
    // What most islands share comes in two files, which pack tighter than forty. A page without sizes needs the first alone.
    environments: {
      client: {
        build: {
          rolldownOptions: {
            output: {
              codeSplitting: {
                groups: [
                  { name: 'libraries', test: /[\\/]node_modules[\\/]/, minShareCount: 8 },
                  { name: 'core', test: /[\\/]src[\\/]core[\\/]/, minShareCount: 8 },
                ],
              },
            },
          },
        },
      },
    },
    build: {
      assetsInlineLimit: 0, // a small font as data: would be refused by the policy
      rolldownOptions: {
        // Every compiled lesson carries a directive; and on the server the engine of the steps is there from the start.
        onLog: (level, log, pass) =>
          !['MODULE_LEVEL_DIRECTIVE', 'INEFFECTIVE_DYNAMIC_IMPORT'].includes(log.code) && pass(level, log),
      },
    },
  },
});
