/** What a word of a lesson is: everything that the site asks of it. Each word's folder holds one value of this type. */
import type { z } from 'zod';
import type {
  PaperQuestion,
  Edition,
  Fit,
  Pattern,
  PickQuestion,
  ProjectFile,
  Quantity,
  Subject,
  UsualSizes,
} from '../../src/core/index.ts';

/**
 * What an attribute of a lesson word names. `measure`, `piece`, `pleated piece`, `cloth`, `option`, `step`: one of the lesson's project.
 * `project`: the folder name of any project. `recording`: one of the lesson's course. `formula`: arithmetic over the
 * project's measures; `length`: the same, and it must give a length. `formula or layers`: a formula, or `layers of` a
 * step or `the project`. `term`: terms of the glossary. `caution`: a usual caution. `picture`: a picture beside the lesson. `file`: any
 * other file beside it.
 */
export type Reference =
  | 'measure'
  | 'piece'
  | 'pleated piece'
  | 'cloth'
  | 'option'
  | 'step'
  | 'project'
  | 'recording'
  | 'formula'
  | 'formula or layers'
  | 'length'
  | 'term'
  | 'caution'
  | 'picture'
  | 'file';

/** Under which heading the authoring reference lists a word, in this order. */
export const groups = ['size', 'list', 'study', 'question', 'making', 'note'] as const;

/** What an author gave to a word, by the names of its attributes. */
export type AttributeValues = Readonly<Record<string, unknown>>;

/** The text between the tags, and the formula of each size in it. */
export type QuestionText = PaperQuestion['words'];

/** What a learner's browser keeps of a word, and under which name; `as` begins the key. */
export type SavedRecord =
  | { as: 'answer' | 'guess'; name: string }
  /** `rounds`: how many right answers in a row end the set. */
  | { as: 'practice'; name: string; rounds: number }
  /** `of`: what is measured, in words. */
  | { as: 'measured'; name: string; of: string };

/** How an answer that was handed in is read: what was asked, and what could be chosen. A learner's file names it by numbers. */
export type AskedInClass =
  | /** Sums; a set of practice has several. The rest as an author wrote it. */ {
      kind: 'sum';
      of: string[];
      tolerance?: string;
      slips?: Record<string, string>;
      reword?: Record<string, string>;
      forbid?: string[];
    }
  | /** Some of them are right. `key`: as an answer holds it. */ { kind: 'choose'; picks: Choosable[] }
  | /** In their right order. */ { kind: 'order'; picks: Choosable[] }
  | /** Each with the place of its right meaning. */ {
      kind: 'pairs';
      picks: (Choosable & { means: number })[];
      meanings: string[];
    };

/** One thing to choose. `say`: what a learner reads who chooses it and should not. */
export type Choosable = { key: string; words: string; right?: true; say?: string };

/** What a view may need besides the pattern. */
export type ViewContext = {
  /** The room for a drawing. */
  fit?: Fit;
  /** Terms and what they mean. */
  glossary?: Readonly<Record<string, string>>;
  /** The other questions of the lesson, as a Practice set shows them. */
  questions?: readonly SetQuestion[];
};

/** A question of the lesson that can come up in a Practice set. */
export type SetQuestion = {
  /** The lesson word that asks it. */
  word: string;
  /** Its text. */
  words: QuestionText;
  /** What the question's island shows. */
  view: AttributeValues & { readonly name: string };
  /** Its drawing has the numbers of the exercise, and not the learner's own. */
  newNumbers: boolean;
};

/** A word as it stands in a lesson. Offsets count in the lesson's text. */
export type WordInLesson = {
  name: string;
  attributes: readonly AttributeInLesson[];
  part: { start: number; end: number };
};
/** `textAt`: the offset of the first character of its value. */
export type AttributeInLesson = { name: string; value: unknown; at: number; textAt: number };

/** A mistake, at an offset of the lesson's text. */
export type LessonMistake = {
  at: number;
  severity: 'error' | 'warning' | 'note';
  message: string;
  fix?: string | undefined;
};

/** The lesson's project in every way that differs from the lesson in one option; the lesson's own first. */
export type ProjectInLesson = {
  file: Pick<ProjectFile, 'units'>;
  variants: readonly [Readonly<Record<Edition, Pattern>>, ...Readonly<Record<Edition, Pattern>>[]];
};

/** All that a word's own check may look at. */
export type LessonAround = {
  project: ProjectInLesson;
  /** Every word of the lesson, with what it is; HTML is none. */
  words: readonly { written: WordInLesson; word: Word | undefined }[];
};

/** What a word comes to on paper. */
export type OnPaper =
  /** Questions to work out. */
  | { sums: PaperQuestion[] }
  /** Questions that are answered by choosing, ordering, matching, pointing or measuring. */
  | { picks: PickQuestion[] }
  /** `of`: the key of a usual caution. */
  | { caution: { of?: string; words: QuestionText } };

/** What paper may need besides the text. */
export type PaperContext = {
  glossary?: Readonly<Record<string, string>>;
  /** The pieces of the cut list. */
  pieces?: readonly string[];
  /** What a piece should measure; undefined where the project leaves it out. */
  measured?: (subject: Subject) => UsualSizes | undefined;
};

export type Word = {
  group: (typeof groups)[number];
  /** One sentence for the authoring reference. */
  about: string;
  /** The attributes an author may write. Numbers, lists and true/false are written in braces: `{2}`. */
  attributes: z.ZodObject;
  /** As an author would write it. */
  example: string;
  /** Attributes that name something, checked against it. */
  names?: Readonly<Record<string, Reference>>;
  /**
   * Attributes that hold texts for people; sizes in square brackets in them are worked out. `whole`: every text in it.
   * `meanings`: of a group only what its names stand for, since the names are sums or keys.
   */
  texts?: Readonly<Record<string, 'whole' | 'meanings'>>;
  /** Text between the opening and the closing tag: it must be there, it may be, or it has no place. None if left out. */
  text?: 'needed' | 'allowed' | 'none';
  /** The word makes sense in a lesson without a project, too. */
  anywhere?: boolean;
  /**
   * What it shows at a pattern, as plain JSON; the page, the worker, paper and the check share it. None where the page
   * works out everything from the pattern itself.
   */
  view?(pattern: Pattern, attributes: AttributeValues, context: ViewContext): object;
  /** Mistakes that the attributes' schema and the names cannot tell. */
  check?(written: WordInLesson, lesson: LessonAround): LessonMistake[];
  /** Its form on a worksheet or in the class plan; attributes may hold anything that an author wrote. */
  paper?(attributes: AttributeValues, words: QuestionText, context: PaperContext): OnPaper | undefined;
  /** The formula of the size that stands for the word in a text; attributes as for paper. */
  sizeInText?: (attributes: AttributeValues) => string | undefined;
  /** What the learner's browser keeps; attributes as for paper. */
  saves?(attributes: AttributeValues): SavedRecord | undefined;
  /** The pieces that it lets learners measure, where their names stand in the project's file. */
  measured?(file: ProjectFile): Extract<SavedRecord, { as: 'measured' }>[];
  /** For a question: how the page of a class reads its answers, at the lesson's own size; attributes as for paper. */
  asked?(attributes: AttributeValues, pattern: Pattern | undefined, context: ViewContext): AskedInClass | undefined;
  /**
   * For a question: whether it can come up in a Practice set, with or without new numbers, or why not. Where what can be
   * chosen is mixed anew each time, a file `again.ts` in its folder tells how.
   */
  inSets?: 'as it is' | 'with new numbers' | { because: string; fix: string };
  /** The sizes and numbers it prints that somebody may be asked for: a page keeps them back until they are answered. */
  results?(pattern: Pattern, attributes: AttributeValues): Quantity[];
  /** For a question: what it asks for. None where the pattern, with its options, has no such thing. */
  asksFor?(pattern: Pattern, attributes: AttributeValues): Quantity[];
  /** It shows every step of the making. */
  showsAllSteps?: boolean;
};
