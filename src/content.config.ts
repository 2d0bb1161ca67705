// Astro looks for this file here and nowhere else. The content itself lies in the top-level folder content/.
import { defineCollection } from 'astro:content';
import { lessonFiles } from './site/pages/lesson-files.ts';

// Astro compiles the text of a lesson; all else of the content pages read by themselves (site/pages/shown-content.ts).
export const collections = { lessons: defineCollection({ loader: lessonFiles() }) };
