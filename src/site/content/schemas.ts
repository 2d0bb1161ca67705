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

/** Words that came out wrong, each with what was said. */
const Misheard = z.record(z.string(), Text);

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
      .describe(
        'Language of the pages, as a language tag: en, en-GB, en-US. English so far, since the kit’s own sentences are.',
      ),
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
export const classOf = (site: SiteFile | undefined): SiteFile['class'] =>
  site?.class ?? SiteFile.shape.class.parse(undefined);

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
          minutes: Minutes.optional().describe(
            'How long it takes, lessons and making together. Left out, as long as it has to.',
          ),
          begins: z
            .string()
            .regex(/^(?:[01]?\d|2[0-3]):[0-5]\d$/, 'A time of day, such as "18:30".')
            .optional()
            .describe('The time of day it begins, such as "18:30". Left out, plans count the minutes.'),
        }),
      )
      .default([])
      .describe('The sessions of the course when it is held in a room, in order.'),
    misheard: Misheard.optional().describe(
      'Words that the timed texts of its recordings have wrong, each with what was said: “plate: pleat”.',
    ),
  })
  .describe('A course: its lessons in order.');
export type CourseFile = z.output<typeof CourseFile>;

/** A time in a recording, 1:23 or 1:02:03, read as seconds from its start. */
const Moment = z
  .string()
  .regex(/^(\d{1,2}:)?\d{1,3}:[0-5]\d(\.\d{1,3})?$/, {
    error: 'a time in the recording belongs here, such as 1:23 or 1:02:03',
  })
  .transform((time) => time.split(':').reduce((sum, part) => 60 * sum + Number(part), 0));

const WebAddress = z.url({
  protocol: /^https?$/,
  error: 'a web address belongs here, such as https://example.org/folio',
});

/** content/courses/<id>/recordings/<name>.yaml */
export const RecordingFile = z
  .strictObject({
    title: Text.optional().describe('Name of the recording. Left out, the title of its project.'),
    project: Text.optional().describe('Folder name of the project that is made in it. Left out, the course’s.'),
    address: WebAddress.optional().describe(
      'Where the recording is published. Readers get a link, which asks that host for nothing before they follow it.',
    ),
    'address at a second': z
      .string()
      .regex(/^https?:\/\/\S*\{second\}\S*$/, {
        error: 'an address with {second} in it belongs here, such as https://example.org/folio?from={second}',
      })
      .optional()
      .describe(
        'The same with {second} where the second stands, so that a link opens at a step: https://example.org/folio?from={second}.',
      ),
    misheard: Misheard.optional().describe(
      'Words that the timed text has wrong, each with what was said: “plate: pleat”. Those of course.yaml are mended, too.',
    ),
    corrections: z
      .array(
        z.strictObject({
          at: Moment.describe('When it is said: 1:23 or 1:02:03.'),
          note: Text.describe('What is right. Sizes in square brackets are worked out.'),
        }),
      )
      .default([])
      .describe('What is said wrong in the recording. Readers see each at its second.'),
  })
  .describe('What belongs to a recording beside its words.');
export type RecordingFile = z.output<typeof RecordingFile>;

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
