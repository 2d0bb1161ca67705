// Lessons as plain Astro MDX, with sums in KaTeX and nothing of the kit.
import mdx from '@astrojs/mdx';
import { satteri } from '@astrojs/markdown-satteri';
import { defineConfig } from 'astro/config';
import katex from 'katex';
import { defineMdastPlugin } from 'satteri';

// HTML alone, as the kit's own sums: MathML beside it would take longer.
const set = (node) => ({
  raw: katex.renderToString(node.value, { output: 'html', strict: false }),
  mdxExpressions: false,
});

export default defineConfig({
  integrations: [mdx({ optimize: true })],
  markdown: {
    syntaxHighlight: 'prism',
    processor: satteri({
      features: { math: true },
      mdastPlugins: [defineMdastPlugin({ name: 'katex', math: set, inlineMath: set })],
    }),
  },
  devToolbar: { enabled: false },
  vite: {
    build: {
      // As the kit does: a warning for every lesson, which says nothing.
      rolldownOptions: { onLog: (level, log, pass) => log.code !== 'MODULE_LEVEL_DIRECTIVE' && pass(level, log) },
    },
  },
});
