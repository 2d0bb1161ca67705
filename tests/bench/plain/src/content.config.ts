import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { z } from 'astro/zod';

const schema = z.object({ title: z.string(), summary: z.string(), minutes: z.number() });
export const collections = {
  lessons: defineCollection({ loader: glob({ pattern: '**/*.mdx', base: './content' }), schema }),
};
