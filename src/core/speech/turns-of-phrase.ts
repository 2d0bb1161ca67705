/** Turns of phrase by which people say what they are doing with their talk. In lower case, without apostrophes. Common practice, no source. */

/** With these a story begins, which goes on until the next turn. */
export const ANECDOTE =
  /\b(?:last (?:time|week|month|year|class|lesson)|i once|once i|i had (?:a|an|one|this|some)|a student|students? (?:of mine|once)|one of my|somebody (?:once|asked)|people (?:sew|who)|ive (?:seen|had)|years ago|when i was)\b/u;

/** Words of what has been and what will be: another step is spoken of, and not told. */
export const ASIDE =
  /\b(?:later|earlier|already|remember|yet|last (?:time|week|lesson)|next (?:week|time|lesson)|in a (?:minute|moment|bit|second)|before (?:we|you|i)|until (?:we|you)|we (?:did|made|sewed|fused|basted|pressed)|going to need|will be|gets? (?:caught|sewn)|going to get|you could|some people|somebody always|at the (?:very )?end|if you (?:are|were|dont|want|prefer|like|leave|forgot|fold))\b/u;

/** What is the case, and not what is to be done. */
export const WHEN =
  /^(?:(?:and|but|so|because) )?(?:if|because|unless|when you|thats (?:what|why|because)|otherwise)\b/u;

export const ON_ANOTHER_SIDE = /\b(?:sides?|ends?|edges?|half|halves|corners?|left|right|top|bottom)\b/u;

/** The speaker says that the next begins. */
export const ANNOUNCED =
  /\b(?:(?:next|last|final) (?:step|thing|bit|part|job)|next up|moving on|on to the next|now for the|now its time)\b/u;

/** What came of a step is told at its end: “now you’ve got a pocket”, “it should measure”, “so that’s a nice crease”. */
export const DONE =
  /^(?:(?:and|so|okay|right|then|now|there|but) )*(?:when thats done )?(?:youve (?:now |just )?(?:got|\p{L}+ \p{L}+ not)|youve (?:two|three|four|a|an)\b|you have|you should (?:have|now)|your \p{L}+ (?:should|is|measures)|it (?:should|measures|comes|looks)|that(?:s| is) (?:an?|the|your|it|how|what)\b|this is how|you end up|itll|it will|youll (?:have|end|see|get)|mine is|doesnt)/u;

/** With these the making begins. */
export const STARTS =
  /\b(?:lets (?:start|begin|get started|get going)|(?:were|we are|ill|well) (?:going to )?(?:start|begin) with|first of all|first (?:thing|step|off)|step one)\b/u;

/** “The same on the other side”: the next step is like this one. */
export const SAME_AGAIN =
  /^(?:(?:and|so|then) )?again\b|\b(?:the same|same (?:thing|deal|again|way)|(?:that|this) (?:one|side) (?:as well|too)|as well\b|likewise|other way (?:round|around)|exactly (?:that|like that)|other (?:\p{L}+ )?(?:side|one|half|end|tape|piece|strap|handle|sleeve|pocket|edge|corner)|second (?:one|side))\b/u;

/** At a turn of the talk “again” alone does. */
export const AGAIN_AT_TURN = /\bagain\b/u;

export const AGAIN =
  /\b(?:once more|one more (?:time|look|thing)|another look|(?:go|going|come|coming|get|getting) back (?:for an? \p{L}+ )?to|(?:say|show|do|repeat) (?:that|it|you|this|the \p{L}+) again|again (?:because|so)|forgot to (?:say|mention|tell|show)|should have (?:said|mentioned))\b/u;

/** With these the talk turns to something else; “then” and “so” may go on with the same. */
export const HEADING =
  /^(?:(?:and|so|yes|yeah|well) )*(?:now|next|okay|ok|alright|all right|right|finally|lastly|first|lets)\b/u;

/** Words of a welcome and of what is prepared. */
export const WELCOME =
  'hello hi welcome today video supply material gather fabric yard cut prewash wash list project introduce measure choose';

/** Words of a goodbye. */
export const GOODBYE =
  'thank watch bye goodbye finish enjoy subscribe homework see next week lesson admire congratulation proud gift';

export const NEEDS = /\b(?:youll|you|we|well) (?:need|want)\b|\bbefore we (?:start|begin)\b/u;

/**
 * Whether a sentence tells of something else than what is done now: a story, what comes later, what would be if.
 *
 * @example saidByTheWay('We will topstitch this later.') // => true
 */
export function saidByTheWay(sentence: string): boolean {
  const text = sentence.toLowerCase().replace(/['’]/gu, '');
  return ANECDOTE.test(text) || ASIDE.test(text) || WHEN.test(text);
}
