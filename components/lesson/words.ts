import { z } from 'zod';
import { readTolerance } from '../questions/ask-size/answer.ts';
import { cautions } from './cautions.ts';

/**
 * What an attribute of a lesson word names. `measure`, `piece`, `pleated piece`, `option`: one of the lesson's project.
 * `project`: the folder name of any project. `formula`: arithmetic over the project's measures; `length`: the same, and
 * it must give a length.
 */
export type Reference = 'measure' | 'piece' | 'pleated piece' | 'option' | 'project' | 'formula' | 'length';

export type LessonWord = {
  /** One sentence for the authoring reference. */
  about: string;
  /** The attributes an author may write. Numbers, lists and true/false are written in braces: `{2}`. */
  attributes: z.ZodObject;
  /** Attributes that name something in the project, checked against it. */
  names?: Readonly<Record<string, Reference>>;
  /** Text between the opening and the closing tag: it must be there, it may be, or it has no place. None if left out. */
  text?: 'needed' | 'allowed' | 'none';
  /** The word makes sense in a lesson without a project, too. */
  anywhere?: boolean;
};

/**
 * Every word an author may use in a lesson, by its name. The content check reads this table, the pages look up the
 * component of the same name, and the authoring reference lists it.
 */
export const lessonWords: Readonly<Record<string, LessonWord>> = {
  Size: {
    about:
      'A size in the words of a sentence: a measure, or a sum of measures. It follows the edition and the sliders.',
    attributes: z.strictObject({ of: z.string() }),
    names: { of: 'formula' },
  },
  Working: {
    about: 'A sum, worked out: with its names, with the numbers put in, and the result. It follows the learner’s size.',
    attributes: z.strictObject({ of: z.string() }),
    names: { of: 'formula' },
  },
  CutList: { about: 'The list of pieces to cut.', attributes: z.strictObject({}) },
  MaterialsList: { about: 'What the project is made of.', attributes: z.strictObject({}) },
  Piece: {
    about: 'A drawing of one piece, to scale, with its sizes.',
    attributes: z.strictObject({ name: z.string() }),
    names: { name: 'piece' },
  },
  PleatStudy: {
    about: 'Sliders for the pleats of a piece; the strip, the folded front and the section follow, fold by fold.',
    attributes: z.strictObject({ piece: z.string() }),
    names: { piece: 'pleated piece' },
  },
  AllowanceStudy: {
    about: 'From the finished size and the allowance of each edge to the cut size.',
    attributes: z.strictObject({ piece: z.string() }),
    names: { piece: 'piece' },
  },
  YourSize: {
    about: 'The panel in which a learner changes the size and the features, for the whole page.',
    attributes: z.strictObject({}),
  },
  AskSize: {
    about:
      'A question that asks for a size, or for how many; the text between the tags is the question. ' +
      'Two questions about the same size on one page each need an id.',
    attributes: z.strictObject({
      of: z.string(),
      tolerance: z
        .string()
        .refine((text) => readTolerance(text, 'inch') !== undefined, {
          error: 'a length belongs here, or one for each edition: 1/16 in | 1 mm',
        })
        .optional(),
      hint: z.string().min(1).optional(),
      id: z.string().min(1).optional(),
    }),
    names: { of: 'formula' },
    text: 'needed',
  },
  Caution: {
    about: 'Where it can hurt. With of, the usual caution for that tool comes with it.',
    attributes: z.strictObject({ of: z.enum(Object.keys(cautions)).optional() }),
    text: 'allowed',
    anywhere: true,
  },
  Tip: { about: 'A good way to do it.', attributes: z.strictObject({}), text: 'needed', anywhere: true },
};
