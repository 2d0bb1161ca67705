import katex from 'katex';
import { defineMdastPlugin } from 'satteri';
import type { AtOffset } from './diagnostic.ts';

/** A fault in maths, with the offset in the TeX where it shows. */
type TexFault = Pick<AtOffset, 'message' | 'at'>;

/** Settings shared by the page and the content check: what passes one passes the other. */
const settings = { throwOnError: true, strict: 'error' } as const;

/** Sets TeX as HTML with MathML for screen readers. Throws katex.ParseError. */
export function setMaths(tex: string, displayMode: boolean): string {
  return katex.renderToString(tex, { ...settings, displayMode });
}

/**
 * What keeps TeX from being set, or undefined.
 *
 * @example
 * texFault('\\frac{1}{2', false)
 * // => { message: "Expected '}', got 'EOF' at end of input: \\frac{1}{2", at: 10 }
 */
export function texFault(tex: string, displayMode: boolean): TexFault | undefined {
  try {
    setMaths(tex, displayMode);
    return undefined;
  } catch (error) {
    if (!(error instanceof katex.ParseError)) throw error;
    const message = error.rawMessage
      .replace(/^LaTeX-incompatible input and strict mode is set to 'error': /, '')
      .replace(/ \[\w+\]$|\.$/, '');
    return { message, at: error.position ?? 0 };
  }
}

/**
 * Sets the maths of a lesson at build time: `$$a + b$$` in a line, `$$ … $$` on its own. It works on the Markdown tree,
 * because the site's highlighter has turned maths into code before a plugin for the HTML tree sees it.
 */
export const katexPlugin = defineMdastPlugin({
  name: 'katex',
  math: (node) => ({ raw: setMaths(node.value, true), mdxExpressions: false }),
  inlineMath: (node) => ({ raw: setMaths(node.value, false), mdxExpressions: false }),
});
