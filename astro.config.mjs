import { fileURLToPath } from 'node:url';
import { satteri } from '@astrojs/markdown-satteri';
import mdx from '@astrojs/mdx';
import svelte from '@astrojs/svelte';
import { defineConfig, fontProviders } from 'astro/config';
import { cutPageFonts } from './src/site/fonts.ts';
import { katexPlugin } from './src/site/katex-plugin.ts';
import { features } from './src/site/lesson-text.ts';

// The kit asks no other host for anything, and neither do its tools.
process.env.ASTRO_TELEMETRY_DISABLED = '1';
process.env.ASTRO_DISABLE_UPDATE_CHECK = 'true';

// Where the site will be published, with its path: BASE_ADDRESS=https://example.org/sewing/
const published = process.env.BASE_ADDRESS ? new URL(process.env.BASE_ADDRESS) : undefined;

const fonts = await cutPageFonts(fileURLToPath(new URL('.cache/fonts/', import.meta.url)));

export default defineConfig({
  site: published?.origin,
  base: published?.pathname ?? '/',
  trailingSlash: 'always',
  publicDir: './src/site/public',
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
  integrations: [mdx(), svelte()],
  devToolbar: { enabled: false },
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
      styleDirective: { resources: ["'self'", { resource: "'unsafe-inline'", kind: 'attribute' }] },
    },
  },
  vite: {
    build: {
      assetsInlineLimit: 0, // a small font as data: would be refused by the policy
      rolldownOptions: {
        // Every compiled lesson carries a directive that the bundler mentions and nobody needs to read about.
        onLog: (level, log, pass) => log.code !== 'MODULE_LEVEL_DIRECTIVE' && pass(level, log),
      },
    },
  },
});
