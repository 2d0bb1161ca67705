import { z } from 'zod';

/** content/site.yaml: the school and how its pages speak. */
export const SiteFile = z.strictObject({
  /** Name of the school or the instructor, shown on every page. */
  name: z.string().min(1),
  /** One or two sentences for the home page. */
  summary: z.string().optional(),
  /** The edition a new visitor sees first. */
  edition: z.enum(['inch', 'metric']).default('inch'),
  /** Language of the lessons, as a language tag: en, en-GB, de. */
  language: z
    .string()
    .regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, { error: 'a language tag belongs here, such as en or en-GB' })
    .default('en'),
  /** Spelling of the words the kit itself adds: gray or grey, color or colour. */
  spelling: z.enum(['british', 'american']).default('american'),
  /** Where the site will be published, with its path: https://example.org/sewing/. The build's BASE_ADDRESS overrides it. */
  address: z
    .url({ protocol: /^https?$/, error: 'a web address belongs here, such as https://example.org/sewing/' })
    .optional(),
});
export type SiteFile = z.output<typeof SiteFile>;

/** content/glossary.yaml: one sentence for each term of the trade. */
export const GlossaryFile = z.record(z.string(), z.string().min(1));
export type GlossaryFile = z.output<typeof GlossaryFile>;

/** content/courses/<id>/course.yaml: lessons in order. */
export const CourseFile = z.strictObject({
  title: z.string().min(1),
  /** Two or three sentences: what the maker can do afterwards. */
  summary: z.string().min(1),
  level: z.enum(['first steps', 'some experience', 'experienced']),
  /** Folder name of the project that the lessons make; a lesson may name another. */
  project: z.string().min(1).optional(),
  /** File names of the lessons in order: 01-sizing.mdx. */
  lessons: z
    .array(z.string().regex(/\.mdx$/, { error: 'the file name of a lesson belongs here, such as 01-sizing.mdx' }))
    .min(1),
  /** What is done together, in order, when the course is held in a room. */
  sessions: z
    .array(
      z.strictObject({
        title: z.string().min(1),
        /** Length of the session. */
        minutes: z
          .int()
          .min(1)
          .max(24 * 60)
          .optional(),
      }),
    )
    .default([]),
});
export type CourseFile = z.output<typeof CourseFile>;

/** The lines between --- and --- at the top of a lesson. */
export const LessonFront = z.strictObject({
  title: z.string().min(1),
  /** Folder name of the project whose numbers the lesson uses; left out, the course's. */
  project: z.string().min(1).optional(),
  /** One or two sentences for the course page. */
  summary: z.string().min(1),
  /** How long the lesson takes. */
  minutes: z
    .int()
    .min(1)
    .max(24 * 60),
  /** Which session of the course it belongs to, counted from 1. */
  session: z.int().min(1).optional(),
});
export type LessonFront = z.output<typeof LessonFront>;
