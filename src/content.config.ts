// Astro looks for this file here and nowhere else. The content itself lies in the top-level folder content/.
import { createRequire } from 'node:module';
import { defineCollection } from 'astro:content';
import { z } from 'zod';
import type { MaterialsFile, ProjectFile } from './core/project/schema.ts';
import type { Shelved } from './site/pages/loader.ts';
import type { CourseFile, GlossaryFile, SiteFile } from './site/content/schemas.ts';

// Node reads what loads the content by itself, sooner than Astro would put it together module by module.
const { contentLoaders } = createRequire(import.meta.url)(
  './site/pages/loader.ts',
) as typeof import('./site/pages/loader.ts');
const loaderOf = contentLoaders();

// What comes from a loader was read with its schema already, mistakes and their places included: here it is only named.
export const collections = {
  site: defineCollection({ loader: loaderOf('site'), schema: z.custom<SiteFile>() }),
  materials: defineCollection({ loader: loaderOf('materials'), schema: z.custom<MaterialsFile>() }),
  glossary: defineCollection({ loader: loaderOf('glossary'), schema: z.custom<GlossaryFile>() }),
  projects: defineCollection({ loader: loaderOf('projects'), schema: z.custom<ProjectFile>() }),
  courses: defineCollection({ loader: loaderOf('courses'), schema: z.custom<CourseFile>() }),
  lessons: defineCollection({ loader: loaderOf('lessons'), schema: z.custom<Shelved>() }),
};
