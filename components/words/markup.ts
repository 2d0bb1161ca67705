/** The markup of each lesson word, by name: `<Content components={markup} />`. Each folder holds one `.astro` file. */
import type { AstroComponentFactory } from 'astro/runtime/server/index.js';

const files = import.meta.glob<AstroComponentFactory>('./*/*.astro', { eager: true, import: 'default' });

export const markup = Object.fromEntries(
  Object.entries(files).map(([file, component]) => [file.replace(/^.*\/|\.astro$/g, ''), component]),
);
