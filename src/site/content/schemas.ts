import { z } from 'zod';

/*
 * The files that belong to the site; a project's are in src/core/project/schema.ts. The descriptions are the authoring
 * reference and the hints of an editor.
 */

const Text = z.string().min(1, { error: 'a few words belong here' });
const Minutes = z
  .int()
  .min(1)
  .max(24 * 60);

/** content/site.yaml */
export const SiteFile = z
  .strictObject({
    name: Text.describe('Name of the school or the instructor, shown on every page.'),
    summary: Text.optional().describe('One or two sentences for the home page.'),
    edition: z
      .enum(['inch', 'metric'])
      .default('inch')
      .describe('The edition a new visitor sees first: inch or metric. Inch if left out.'),
    language: z
      .string()
      .regex(/^en(-[A-Z]{2})?$/, {
        error: 'English belongs here, en, en-GB or en-US: the kit’s own sentences are in no other language yet',
      })
      .default('en')
      .describe('Language of the pages, as a language tag: en, en-GB, en-US. English so far, since the kit’s own sentences are.'),
    spelling: z
      .enum(['british', 'american'])
      .default('american')
      .describe('Spelling of the words that the kit itself adds: british or american. American if left out.'),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, { error: 'three capitals belong here, such as EUR or USD' })
      .default('EUR')
      .describe('The currency that prices are in: EUR, USD, GBP. EUR if left out.'),
    class: z
      .strictObject({
        makers: z.int().min(1).max(500).default(8).describe('How many makers a class has. 8 if left out.'),
        spares: z.int().min(0).max(500).default(1).describe('Whole sets of everything beside those. 1 if left out.'),
        machines: z.int().min(1).max(500).default(4).describe('Sewing machines in the room. 4 if left out.'),
        irons: z.int().min(1).max(500).default(2).describe('Irons in the room. 2 if left out.'),
      })
      .prefault({})
      .describe('What a class usually has; the list for a class begins with it.'),
    address: z
      .url({ protocol: /^https?$/, error: 'a web address belongs here, such as https://example.org/sewing/' })
      .optional()
      .describe(
        'Where the site will be published, with its path: https://example.org/sewing/. Left out, the top of any host.',
      ),
  })
  .describe('The school, and how its pages speak.');
export type SiteFile = z.output<typeof SiteFile>;

/** The usual class of a site, also where site.yaml cannot be read. */
export const classOf = (site: SiteFile | undefined): SiteFile['class'] => site?.class ?? SiteFile.shape.class.parse(undefined);

/**
 * The language that pages and documents name as theirs. A tag with a region stands as it is; plain English takes the
 * region of its spelling.
 *
 * @example languageTag({ language: 'en', spelling: 'british' }) // => 'en-GB'
 */
export const languageTag = ({ language, spelling }: Pick<SiteFile, 'language' | 'spelling'>): string =>
  language !== 'en' ? language : spelling === 'american' ? 'en-US' : 'en-GB';

/** content/glossary.yaml */
export const GlossaryFile = z
  .record(z.string(), Text.describe('What the term means, in one sentence.'))
  .describe('Terms of the trade.');
export type GlossaryFile = z.output<typeof GlossaryFile>;

/** From the easiest. */
export const levels = ['first steps', 'some experience', 'experienced'] as const;

/** content/courses/<id>/course.yaml */
export const CourseFile = z
  .strictObject({
    title: Text.describe('Name of the course.'),
    summary: Text.describe('Two or three sentences: what a maker can do afterwards.'),
    level: z.enum(levels).describe('Who can follow it: first steps, some experience or experienced.'),
    project: Text.optional().describe('Folder name of the project that the lessons make. A lesson may name another.'),
    lessons: z
      .array(z.string().regex(/\.mdx$/, { error: 'the file name of a lesson belongs here, such as 01-sizing.mdx' }))
      .min(1)
      .describe('File names of the lessons, in order.'),
    sessions: z
      .array(
        z.strictObject({
          title: Text.describe('What is done together.'),
          minutes: Minutes.optional().describe('How long it takes, lessons and making together. Left out, as long as it has to.'),
        }),
      )
      .default([])
      .describe('The sessions of the course when it is held in a room, in order.'),
  })
  .describe('A course: its lessons in order.');
export type CourseFile = z.output<typeof CourseFile>;

/** The lines between --- and --- at the top of content/courses/<id>/<nn-name>.mdx */
export const LessonFront = z
  .strictObject({
    title: Text.describe('Name of the lesson.'),
    project: Text.optional().describe('Folder name of the project whose numbers it uses. Left out, the course’s.'),
    summary: Text.describe('One or two sentences for the course page.'),
    minutes: Minutes.describe('How long the lesson takes in a class, beside the making.'),
    session: z
      .int()
      .min(1)
      .optional()
      .describe('The session of the course it belongs to, counted from 1. Left out, the first that has room for it.'),
  })
  .describe('The top of a lesson.');
export type LessonFront = z.output<typeof LessonFront>;
