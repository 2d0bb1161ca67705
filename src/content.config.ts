// Astro looks for this file here and nowhere else. The content itself lies in the top-level folder content/.
import { defineCollection } from 'astro:content';
import { z } from 'zod';
import type { MaterialsFile, ProjectFile } from './core/project/schema.ts';
import type { CourseFile, GlossaryFile, SiteFile } from './site/content/schemas.ts';
import { contentLoaders, type LessonData } from './site/pages/loader.ts';

const loaderOf = contentLoaders();

// A loader reads with the schema of its files, so here each type is only named.
export const collections = {
  site: defineCollection({ loader: loaderOf('site'), schema: z.custom<SiteFile>() }),
  materials: defineCollection({ loader: loaderOf('materials'), schema: z.custom<MaterialsFile>() }),
  glossary: defineCollection({ loader: loaderOf('glossary'), schema: z.custom<GlossaryFile>() }),
  projects: defineCollection({ loader: loaderOf('projects'), schema: z.custom<ProjectFile>() }),
  courses: defineCollection({ loader: loaderOf('courses'), schema: z.custom<CourseFile>() }),
  lessons: defineCollection({ loader: loaderOf('lessons'), schema: z.custom<LessonData>() }),
};
