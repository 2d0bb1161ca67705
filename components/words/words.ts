import { z } from 'zod';
import { slipKinds } from '../../src/core/questions/edits.ts';
import { readTolerance } from '../../src/core/questions/tolerance.ts';
import { cautions } from './caution/cautions.ts';

/**
 * What an attribute of a lesson word names. `measure`, `piece`, `pleated piece`, `cloth`, `option`, `step`: one of the lesson's project.
 * `project`: the folder name of any project. `formula`: arithmetic over the project's measures; `length`: the same, and
 * it must give a length.
 */
export type Reference =
  'measure' | 'piece' | 'pleated piece' | 'cloth' | 'option' | 'step' | 'project' | 'formula' | 'length';

export type LessonWord = {
  /** One sentence for the authoring reference. */
  about: string;
  /** The attributes an author may write. Numbers, lists and true/false are written in braces: `{2}`. */
  attributes: z.ZodObject;
  /** As an author would write it. */
  example: string;
  /** Attributes that name something in the project, checked against it. */
  names?: Readonly<Record<string, Reference>>;
  /** Text between the opening and the closing tag: it must be there, it may be, or it has no place. None if left out. */
  text?: 'needed' | 'allowed' | 'none';
  /** The word makes sense in a lesson without a project, too. */
  anywhere?: boolean;
};

const questionName = z.string().min(1).describe('A name of its own in the lesson. Answers are kept under it.');
const questionHint = z.string().min(1).optional().describe('What to say after the first wrong answer.');
const slipNames = slipKinds.join(', ');
const tolerance = z
  .string()
  .refine((text) => readTolerance(text, 'inch') !== undefined, {
    error: 'a length belongs here, or one for each edition: 1/16 in | 1 mm',
  })
  .optional()
  .describe(
    'How far off an answer may be: 1/8 in, or one for each edition, 1/8 in | 2 mm. Left out, half a mark of the ruler.',
  );
const ownSlips = z
  .record(z.string(), z.string().min(1))
  .optional()
  .describe(
    'Wrong sums that you expect, and what to say to each: {{"card width + ease": "A card has two sides."}}. The usual ones are known without this.',
  );
const rewordedSlips = z
  .record(z.string(), z.string().min(1))
  .optional()
  .describe(`Your own sentence for a usual slip: {{"left-out": "…"}}. Slips are called ${slipNames}.`);
const forbiddenSlips = z
  .array(z.string())
  .optional()
  .describe('Usual slips that are not thought of here: {["half", "left-out seam"]}.');

/**
 * Every word an author may use in a lesson, by its name. The content check reads this table, the pages look up the
 * component of the same name, and the authoring reference lists it.
 */
export const lessonWords: Readonly<Record<string, LessonWord>> = {
  Size: {
    about:
      'A size in the words of a sentence: a measure, or a sum of measures. It follows the edition and the sliders.',
    example: 'The panel is cut <Size of="panel width" /> wide.',
    attributes: z.strictObject({ of: z.string().describe('A measure, or a formula over measures.') }),
    names: { of: 'formula' },
  },
  Working: {
    about: 'A sum, worked out: with its names, with the numbers put in, and the result. It follows the learner’s size.',
    example: '<Working of="panel width" />',
    attributes: z.strictObject({
      of: z.string().describe('A formula; of a measure that follows from others, its name will do.'),
    }),
    names: { of: 'formula' },
  },
  CutList: {
    about: 'The list of pieces to cut.',
    example: '<CutList />',
    attributes: z.strictObject({}),
  },
  MaterialsList: {
    about: 'What the project is made of.',
    example: '<MaterialsList />',
    attributes: z.strictObject({}),
  },
  ShoppingList: {
    about: 'What one maker buys, worked out from the pieces and the stitches: cloth, thread, needles and the rest.',
    example: '<ShoppingList />',
    attributes: z.strictObject({}),
  },
  LayoutStudy: {
    about:
      'The pieces on the cloth they are cut from: pick the cloth, its width, a pre-cut, offcuts of your own or several bolts, and how you cut; see how long a piece you buy.',
    example: '<LayoutStudy of="outer" />',
    attributes: z.strictObject({
      of: z.string().optional().describe('The cloth to begin with: a role under materials. Left out, the first.'),
    }),
    names: { of: 'cloth' },
  },
  Piece: {
    about: 'A drawing of one piece, to scale, with its sizes.',
    example: '<Piece name="pocket strip" />',
    attributes: z.strictObject({ name: z.string().describe('A piece of the project.') }),
    names: { name: 'piece' },
  },
  PleatStudy: {
    about: 'Sliders for the pleats of a piece; the strip, the folded front and the section follow, fold by fold.',
    example: '<PleatStudy piece="pocket strip" />',
    attributes: z.strictObject({ piece: z.string().describe('A piece with pleats.') }),
    names: { piece: 'pleated piece' },
  },
  AllowanceStudy: {
    about: 'From the finished size and the allowance of each edge to the cut size.',
    example: '<AllowanceStudy piece="flap" />',
    attributes: z.strictObject({ piece: z.string().describe('A piece with seam allowances.') }),
    names: { piece: 'piece' },
  },
  YourSize: {
    about: 'The panel in which a learner changes the size and the features, for the whole page.',
    example: '<YourSize />',
    attributes: z.strictObject({}),
  },
  AskSize: {
    about: 'A question that asks for a size, or for how many. The text between the tags is the question.',
    example: '<AskSize of="panel width" hint="The seams lie outside.">\n\nHow wide do you cut the panel?\n\n</AskSize>',
    attributes: z.strictObject({
      of: z.string().describe('The answer: a measure, or a formula over measures.'),
      tolerance,
      hint: questionHint,
      slips: ownSlips,
      reword: rewordedSlips,
      forbid: forbiddenSlips,
      id: z.string().min(1).optional().describe('A name of its own, when two questions of a lesson ask for the same.'),
    }),
    names: { of: 'formula' },
    text: 'needed',
  },
  AskChoice: {
    about:
      'A question with answers to choose from: one, or all that are right. A size in square brackets is worked out: [2 * seam].',
    example:
      '<AskChoice id="first-fold" right={["Mountain fold"]} wrong={{"Valley fold": "That one sinks away from you."}}>\n\nWhich fold makes the top of a pocket?\n\n</AskChoice>',
    attributes: z.strictObject({
      id: questionName,
      right: z.array(z.string().min(1)).min(1).describe('The right answer, or all of them.'),
      wrong: z
        .union([z.array(z.string().min(1)).min(1), z.record(z.string().min(1), z.string().min(1))])
        .describe('The others: a list, or each with what to say to whoever picks it.'),
      hint: questionHint,
    }),
    text: 'needed',
    anywhere: true,
  },
  AskOrder: {
    about: 'Steps to put in order, by dragging or with buttons. Sizes in square brackets are worked out.',
    example:
      '<AskOrder id="pleating" steps={["Fuse the interfacing", "Mark the folds", "Fold", "Press"]}>\n\nIn which order do you work?\n\n</AskOrder>',
    attributes: z.strictObject({
      id: questionName,
      steps: z.array(z.string().min(1)).min(3).describe('The steps in the right order. The page mixes them.'),
      hint: questionHint,
    }),
    text: 'needed',
    anywhere: true,
  },
  AskEdge: {
    about: 'A question for edges of a piece, answered by pointing at its drawing or from a list.',
    example: '<AskEdge piece="flap">\n\nWhich edges of the flap take a seam allowance?\n\n</AskEdge>',
    attributes: z.strictObject({
      piece: z.string().describe('A piece of the project.'),
      edges: z
        .array(z.string())
        .min(1)
        .optional()
        .describe('The edges that are right: {["left", "right"]}. Left out, those with a seam allowance.'),
      hint: questionHint,
      id: questionName.optional(),
    }),
    names: { piece: 'piece' },
    text: 'needed',
  },
  AskFold: {
    about:
      'A question for a fold of a pleated piece, answered by pointing at its flat strip or from a list. Wrong places are those where people put it.',
    example: '<AskFold piece="pocket strip" fold={3}>\n\nWhere will the third fold lie?\n\n</AskFold>',
    attributes: z.strictObject({
      piece: z.string().describe('A piece with pleats.'),
      fold: z.int().min(1).max(48).optional().describe('Which fold, counted in the order they are made: {3}.'),
      kind: z
        .enum(['mountain', 'valley'])
        .optional()
        .describe('Instead of one fold, all of a kind: each fold is a line to choose. Left out with fold, mountain.'),
      hint: questionHint,
      id: questionName.optional(),
    }),
    names: { piece: 'pleated piece' },
    text: 'needed',
  },
  AskSide: {
    about:
      'A question for what shows of the work after a step, answered by pointing at its drawing or from a list. The drawing does not tell the sides.',
    example: '<AskSide step="turn" shows="right side">\n\nWhere does the right side of the cloth show?\n\n</AskSide>',
    attributes: z.strictObject({
      step: z.string().describe('The id of a step in the project file.'),
      shows: z.string().min(1).describe('What to point at: right side, wrong side, or a piece by its name.'),
      from: z.enum(['front', 'back']).optional().describe('From where the work is seen. Left out, front.'),
      hint: questionHint,
      id: questionName.optional(),
    }),
    names: { step: 'step' },
    text: 'needed',
  },
  AskPairs: {
    about: 'Terms to match with what they mean.',
    example: '<AskPairs id="terms" terms={["ease", "facing"]}>\n\nWhat does each word mean?\n\n</AskPairs>',
    attributes: z.strictObject({
      id: questionName,
      terms: z.array(z.string()).optional().describe('Terms of the glossary, which gives their meanings.'),
      pairs: z
        .record(z.string().min(1), z.string().min(1))
        .optional()
        .describe('Pairs of your own: {{"facing": "covers the back"}}. Sizes in square brackets are worked out.'),
      hint: questionHint,
    }),
    text: 'needed',
    anywhere: true,
  },
  Predict: {
    about: 'A guess that nobody gets wrong; then the page says what happens. Put it before a study.',
    example:
      '<Predict id="wider" guesses={["[step] more", "[2 * step] more"]} shows="It is [2 * step] more: there are two.">\n\nHow much more cloth does it take?\n\n</Predict>',
    attributes: z.strictObject({
      id: questionName,
      guesses: z.array(z.string().min(1)).min(2).describe('What one may guess.'),
      shows: z.string().min(1).describe('What really happens. Sizes in square brackets are worked out.'),
    }),
    text: 'needed',
    anywhere: true,
  },
  Practice: {
    about:
      'Questions for sizes, or for how many, with new numbers again and again, until enough in a row were right at once. Its text names no sizes: each exercise lists what is given. It begins easy; with each right answer come questions that take more sums, and finer numbers. Other questions of the lesson can come up between the sums, mixed anew. On a worksheet those stand once, as questions of their own.',
    example: '<Practice of="panel width">\n\nHow wide do you cut the panel?\n\n</Practice>',
    attributes: z.strictObject({
      of: z.string().optional().describe('The answer: a formula over measures, or a measure that follows from others.'),
      asks: z
        .record(z.string().min(1), z.string().min(1))
        .optional()
        .describe(
          'Instead of one, several answers, each with its question: {{"depth + step": "How far to the next fold?"}}. The page sorts them by how many sums they take. The text between the tags then says what is practised.',
        ),
      also: z
        .array(z.string().min(1))
        .min(1)
        .optional()
        .describe(
          'Names of other questions of this lesson, chosen, ordered, matched or pointed at: {["first-fold", "terms"]}. One comes up after each sum that was right; edges and folds with new numbers. Its answers there do not touch those in the text.',
        ),
      numbers: z
        .enum(['rising', 'easy', 'finer', 'every mark'])
        .optional()
        .describe('How fine the numbers are; learners may choose otherwise. Left out, rising.'),
      rounds: z.int().min(1).max(10).optional().describe('How many in a row end it. Left out, {3}.'),
      tolerance,
      hint: questionHint,
      slips: ownSlips,
      reword: rewordedSlips,
      forbid: forbiddenSlips,
      id: questionName.optional(),
    }),
    names: { of: 'formula' },
    text: 'needed',
  },
  MyPiece: {
    about:
      'A place where learners write what their work really measures. It names the mistake that explains it best, and what can still be done.',
    example: '<MyPiece piece="facing">\n\nMeasure the piece you have cut.\n\n</MyPiece>',
    attributes: z.strictObject({
      piece: z.string().optional().describe('A piece of the project. Left out, the finished work.'),
      stage: z
        .enum(['cut', 'sewn'])
        .optional()
        .describe(
          'cut: as it lies after cutting. sewn: between its seams, or folded where it has pleats. Left out, cut.',
        ),
    }),
    names: { piece: 'piece' },
    text: 'allowed',
  },
  Step: {
    about:
      'One step of the making: before and after, what it measures now, tools, minutes and cautions, and a tick when it is done. Your own words may stand between the tags.',
    example: '<Step id="pleat">\n\nFold at one pair of ticks after the other.\n\n</Step>',
    attributes: z.strictObject({ id: z.string().describe('The id of a step in the project file.') }),
    names: { id: 'step' },
    text: 'allowed',
  },
  MakeUp: {
    about: 'All steps of the making, to be played through, with the numbers as a table.',
    example: '<MakeUp />',
    attributes: z.strictObject({}),
  },
  LayerStudy: {
    about:
      'The layers of the work after a step, from above, cut through or taken apart: how many lie where, how thick they are, and what goes through them.',
    example: '<LayerStudy step="sew-round" />',
    attributes: z.strictObject({ step: z.string().describe('The id of a step in the project file.') }),
    names: { step: 'step' },
  },
  SeamStudy: {
    about: 'Two pieces and an allowance each: what they come to once they are joined.',
    example: '<SeamStudy a="panel width" b="panel width" allowance="seam" />',
    attributes: z.strictObject({
      a: z.string().optional().describe('Width of the first piece. Left out, a usual one.'),
      b: z.string().optional().describe('Width of the second piece. Left out, a usual one.'),
      allowance: z.string().optional().describe('Seam allowance of both. Left out, a usual one.'),
    }),
    names: { a: 'length', b: 'length', allowance: 'length' },
  },
  DriftStudy: {
    about: 'What becomes of a finished size when every seam is a little too wide: at worst, and as it is likely.',
    example: '<DriftStudy of="folio width" seams={2} takes={1} />',
    attributes: z.strictObject({
      of: z.string().describe('The finished size.'),
      seams: z.int().min(1).max(40).describe('How many seams lie across it.'),
      takes: z
        .union([z.literal(1), z.literal(2)])
        .optional()
        .describe(
          'Allowances of the size that each seam takes: 2 where it joins parts, 1 at an outer edge. 2 if left out.',
        ),
    }),
    names: { of: 'length' },
  },
  Caution: {
    about: 'Where it can hurt. Your own words stand first, the usual ones for that tool after them.',
    example: '<Caution of="iron">\n\nLet each fold cool before you take hold of it.\n\n</Caution>',
    attributes: z.strictObject({
      of: z
        .enum(Object.keys(cautions))
        .optional()
        .describe(`What can hurt: ${Object.keys(cautions).join(', ')}. Left out, only your own words.`),
    }),
    text: 'allowed',
    anywhere: true,
  },
  Tip: {
    about: 'A good way to do it.',
    example: '<Tip>\n\nMeasure three cards and take the widest.\n\n</Tip>',
    attributes: z.strictObject({}),
    text: 'needed',
    anywhere: true,
  },
};
