import { fileURLToPath } from 'node:url';
import { satteri } from '@astrojs/markdown-satteri';
import mdx from '@astrojs/mdx';
import svelte from '@astrojs/svelte';
import { defineConfig, fontProviders } from 'astro/config';
import './src/site/pages/no-telemetry.ts';
import { authorsBench } from './src/author/bench/integration.ts';
import { compiledOnce } from './src/site/pages/compiled-once.ts';
import { cutFonts } from './src/site/print/fonts.ts';
import { handoutsInSite } from './src/site/print/handouts-integration.ts';
import { contentCheck } from './src/site/integration.ts';
import { katexPlugin } from './src/site/content/katex-plugin.ts';
import { features } from './src/site/content/lesson-text.ts';
import { pagesByTwo } from './src/site/pages/pages-by-two.ts';
import { published } from './src/site/content/published.ts';
import { sitemap } from './src/site/pages/sitemap.ts';
import { withoutIn } from './src/site/pages/workers.ts';

const root = fileURLToPath(new URL('.', import.meta.url));
const address = published(root);
const fonts = await cutFonts(`${root}.cache/fonts`, 'woff2');

/** Looks at where a file lies in the kit; the folder that holds the kit may have any name. */
const lies = (pattern) => (id) => pattern.test(id.startsWith(root) ? id.slice(root.length) : id);

/** What several islands share and many lessons do without. */
const lessRead =
  /\/(drawing|compute|questions|class|zod|qr|layout|kit|shopping-list|drift-study)\/|ShoppingTable|\/bindings\/(input|select)|\/project\/lists|\/shared\/clone/;

/** What shows the making. */
const making =
  /components\/(compute|page\/(in-view|idle-queue|out-of-sight)|words\/(layer-study\/(layers|packed-places)|seam-study\/seam|step\/shown))/;

/** What asks. */
const asking = /components\/(ui\/question|words\/(ask-|my-piece|practice|predict))|\/questions\/choices/;

/** The islands of nearly every lesson. */
const onEveryLesson =
  /components\/page\/(tape\/|size\/SizeSheet|Switches|UpdateInlineSizes)|astrojs\/svelte\/dist\/client/;

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
  build: { concurrency: 1e5 }, // all pages are asked for at once, to be shared out (src/site/pages/pages-by-two.ts)
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
    pagesByTwo(),
    wakeOnUse,
    mdx({ optimize: true }),
    svelte({ configFile: false }),
    handoutsInSite(),
    sitemap(),
    authorsBench(),
  ],
  devToolbar: { enabled: false },
  compressHTML: true, // keeps the blank between two words of a sentence where the source breaks the line at a tag
  markdown: {
    syntaxHighlight: 'prism', // the other highlighter writes style elements, which the policy below forbids
    processor: satteri({ features, mdastPlugins: [katexPlugin] }),
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
    plugins: [compiledOnce(`${root}.cache/components.json`)],
    resolve: { alias: withoutIn(root) },
    environments: {
      client: {
        build: {
          rolldownOptions: {
            // What nearly every island needs comes in one file, which packs tighter than many, and the small islands of
            // every lesson in another. What draws, what shows the making, and what questions share come in files of
            // their own, for pages and readers without them.
            output: {
              codeSplitting: {
                groups: [
                  {
                    name: 'lesson',
                    test: (id) => ![lessRead, making, asking].some((part) => lies(part)(id)),
                    minShareCount: 2,
                    priority: 2,
                  },
                  { name: 'islands', test: lies(onEveryLesson), priority: 1 },
                  { name: 'drawing', test: lies(/\/drawing\//), minShareCount: 2 },
                  { name: 'pieces', test: lies(/words\/(cut-list|materials-list)|\/project\/lists/) },
                  { name: 'making', test: lies(making), minShareCount: 2 },
                  { name: 'questions', test: lies(asking), minShareCount: 2 },
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
