// Astro looks for this file here and nowhere else. The content itself lies in the top-level folder content/.
import { defineCollection } from 'astro:content';
import { z } from 'zod';
import { MaterialsFile, ProjectFile } from './core/project/schema.ts';
import { contentLoaders } from './site/loader.ts';
import { CourseFile, GlossaryFile, LessonFront, SiteFile } from './site/schemas.ts';

const loaderOf = contentLoaders();

export const collections = {
  site: defineCollection({ loader: loaderOf('site'), schema: SiteFile }),
  materials: defineCollection({ loader: loaderOf('materials'), schema: MaterialsFile }),
  glossary: defineCollection({ loader: loaderOf('glossary'), schema: GlossaryFile }),
  projects: defineCollection({ loader: loaderOf('projects'), schema: ProjectFile }),
  courses: defineCollection({ loader: loaderOf('courses'), schema: CourseFile }),
  lessons: defineCollection({
    loader: loaderOf('lessons'),
    schema: LessonFront.extend({ course: z.string(), slug: z.string(), fileName: z.string() }),
  }),
};
