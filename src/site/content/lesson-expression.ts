/** What may stand between braces in a lesson: a comment, or a plain value. Nothing in a lesson is ever run as a program. */

/**
 * The comments of an expression that holds nothing else.
 *
 * @returns the text of each comment, and its offset in the expression; undefined where there is anything beside them
 */
export function commentsIn(expression: string): { text: string; start: number; end: number }[] | undefined {
  const comments: { text: string; start: number; end: number }[] = [];
  const comment = /\s*(\/\*([\s\S]*?)\*\/)/y;
  let read = 0;
  for (let found = comment.exec(expression); found; found = comment.exec(expression)) {
    read = comment.lastIndex;
    comments.push({ text: found[2]!.trim(), start: read - found[1]!.length, end: read });
  }
  return expression.slice(read).trim() === '' ? comments : undefined;
}

/**
 * The value of an expression that is a literal, or a list or record of literals: JSON, or a text in single quotes.
 *
 * @returns undefined for everything else
 */
export function plainValue(expression: string): unknown {
  const text = expression.trim();
  const single = /^'([^'\\]*)'$/.exec(text);
  if (single) return single[1];
  try {
    return JSON.parse(text, (key, value: unknown) => {
      // In a program this key would be no key.
      if (key === '__proto__') throw new SyntaxError(key);
      return value;
    });
  } catch {
    return undefined;
  }
}
