/** Words as they are compared: topstitching, topstitched and top stitch are one. */

const idle = new Set(
  (
    'the a an of to and or in on at it is be with for from by as that this these those your my our its you we i they them so ' +
    'then now just all will can do does have has how what which when where there here up out off into onto over are was were ' +
    'not no if but about like get got going go gonna want need make one two three each other behind both how far side'
  ).split(' '),
);

const irregular = new Map([
  ...['sewn', 'sewed', 'sewing', 'sews'].map((word) => [word, 'sew'] as const),
  ...['laid', 'lays', 'laying', 'lie', 'lies', 'lying'].map((word) => [word, 'lay'] as const),
  ...['bound', 'binds'].map((word) => [word, 'bind'] as const),
  ...['drew', 'drawn'].map((word) => [word, 'draw'] as const),
  ...['zipper', 'zippers', 'zips'].map((word) => [word, 'zip'] as const),
  ...['zigzagging'].map((word) => [word, 'zigzag'] as const),
]);

/**
 * The part of a word that stays when it is bent: stems of English, as far as the words of a sewing room need them.
 *
 * @example stem('topstitching') // => 'topstitch'
 * @example stem('pleats') // => 'pleat'
 */
export function stem(word: string): string {
  const known = irregular.get(word);
  if (known) return known;
  let root = word;
  if (root.length > 3 && /[^s]s$/u.test(root))
    root = root.replace(/(?<=ss|sh|ch|x|z)es$/u, '').replace(/(?<!s)s$/u, '');
  if (root.length > 4) {
    const cut = root.replace(/(?:ing|ed)$/u, '');
    if (cut !== root && /[aeiouy]/u.test(cut))
      root = cut.replace(/([bdgmnprt])\1$/u, '$1').replace(/(?<=[^aeiou])(?:at|iz)$/u, '$&e');
  }
  return root.length > 3 ? root.replace(/e$/u, '') : root;
}

/** The words of a text in lower case, without signs. */
export const plainWords = (text: string): string[] =>
  text
    .toLowerCase()
    .replace(/['’]/gu, '')
    .match(/[\p{L}]+/gu) ?? [];

/** The words of a text that tell something, as stems, in order. */
export const stemsOf = (text: string): string[] =>
  plainWords(text)
    .filter((word) => !idle.has(word))
    .map(stem);

/** So many other words may stand between two of a phrase. */
const BETWEEN = 4;

/** The place of a phrase’s last word where its first stands at a place; -1 where it is not said there. */
export function phraseAt(said: readonly string[], phrase: readonly string[], first: number): number {
  let at = first;
  for (let k = 1; k < phrase.length; k++) {
    let behind = at + 1;
    while (behind <= at + 1 + BETWEEN && said[behind] !== phrase[k]) behind++;
    if (behind > at + 1 + BETWEEN) return -1;
    at = behind;
  }
  return at;
}
