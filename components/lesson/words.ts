import { z } from 'zod';

/**
 * What an attribute of a lesson word names. `measure`, `piece`, `option`: one of the lesson's project; `project`: the
 * name of another project's folder; `formula`: arithmetic over the project's measures that must give a length, an area or a number.
 */
export type Reference = 'measure' | 'piece' | 'option' | 'project' | 'formula';

export type LessonWord = {
  /** One sentence for the authoring reference. */
  about: string;
  /** The attributes an author may write. Numbers, lists and true/false are written in braces: `{2}`. */
  attributes: z.ZodObject;
  /** Attributes that name something in the project, checked against it. */
  names?: Readonly<Record<string, Reference>>;
  /** Text between the opening and the closing tag: it must be there, it may be, or it has no place. Default: none. */
  text?: 'needed' | 'allowed' | 'none';
};

/**
 * Every word an author may use in a lesson, by its name. The content check reads this table, the pages look up the
 * component of the same name, and the authoring reference lists it.
 */
export const lessonWords: Readonly<Record<string, LessonWord>> = {
  Measure: {
    about: 'A measure, or the size of a piece, in the words of a sentence; it follows the edition and the sliders.',
    attributes: z
      .strictObject({
        name: z.string().optional(),
        piece: z.string().optional(),
        side: z.enum(['width', 'height']).optional(),
      })
      .refine((a) => (a.name === undefined) !== (a.piece === undefined), {
        error: 'give either a name, or a piece and its side',
      }),
    names: { name: 'measure', piece: 'piece' },
  },
  CutList: { about: 'The list of pieces to cut.', attributes: z.strictObject({}) },
  MaterialsList: { about: 'What to buy for the project.', attributes: z.strictObject({}) },
  PieceDrawing: {
    about: 'A drawing of one piece, to scale, with its sizes.',
    attributes: z.strictObject({ piece: z.string() }),
    names: { piece: 'piece' },
  },
  PleatStudy: {
    about: 'Sliders for the pleats of a piece; the strip, the folded front and the section follow.',
    attributes: z.strictObject({ piece: z.string() }),
    names: { piece: 'piece' },
  },
  AllowanceStudy: {
    about: 'From the finished size and the allowance of each edge to the cut size.',
    attributes: z.strictObject({ piece: z.string() }),
    names: { piece: 'piece' },
  },
  YourSize: {
    about: 'The panel in which a learner changes the size and the features.',
    attributes: z.strictObject({}),
  },
  AskSize: {
    about: 'A question that asks for a size; the text between the tags is the question.',
    attributes: z.strictObject({ of: z.string(), tolerance: z.string().optional() }),
    names: { of: 'formula', tolerance: 'formula' },
    text: 'needed',
  },
  Caution: { about: 'Where it can hurt.', attributes: z.strictObject({ of: z.string().optional() }), text: 'needed' },
  Tip: { about: 'A good way to do it.', attributes: z.strictObject({}), text: 'needed' },
};
