import { defineMdastPlugin } from 'satteri';
import type { MdastNode } from 'satteri';
import { partsOf } from '../../core/formula/index.ts';
import { asWritten } from './lesson-prose.ts';

/** Makes a size of each formula in square brackets in the running text of a lesson: `[2 * seam]` is `<Size of="2 * seam" />`. */
export const bracketsPlugin = defineMdastPlugin({
  name: 'brackets',
  options: { position: true },
  text(node, context) {
    // Notes and the like are no lessons: nothing is worked out in them.
    if (context.sourceFormat !== 'mdx') return;
    const parts = partsOf(asWritten(node, context.source));
    if (parts.length === 1) return;
    context.replaceNode(
      node,
      parts.flatMap((part, i): MdastNode[] => {
        if (i % 2 === 0) return part === '' ? [] : [{ type: 'text', value: part }];
        const of = { type: 'mdxJsxAttribute' as const, name: 'of', value: part };
        return [{ type: 'mdxJsxTextElement', name: 'Size', attributes: [of], children: [] }];
      }),
    );
  },
});
