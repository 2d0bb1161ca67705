import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineMdastPlugin, type MdastNode, type MdastPluginEntry } from 'satteri';
import { parse } from 'yaml';
import { termId, termsIn } from './glossary-terms.ts';

/** Where a term stays plain: it is a name there, leads elsewhere already, or is quoted. */
const PLAIN = new Set(['heading', 'link', 'linkReference', 'definition', 'image', 'code', 'inlineCode']);

/**
 * Makes a button of each term of the glossary where a section of a lesson uses it for the first time: it opens what the
 * page holds of the term (src/layouts/Terms.astro), with no script. Later uses stay plain, so that the text reads calmly.
 *
 * @param root of the project
 */
export function termsPlugin(root: string): MdastPluginEntry {
  const lessons = path.join(root, 'content', 'courses') + path.sep;
  const glossary = glossaryIn(path.join(root, 'content', 'glossary.yaml'));
  return ({ fileURL, sourceFormat }) => {
    if (sourceFormat !== 'mdx' || !fileURL || !fileURLToPath(fileURL).startsWith(lessons)) return null;
    const terms = glossary();
    if (terms.length === 0) return null;
    let used = new Set<string>();
    return defineMdastPlugin({
      name: 'terms',
      heading({ depth }) {
        if (depth === 2) used = new Set();
      },
      text(node, context) {
        let above: Readonly<MdastNode> | undefined = context.parent(node);
        for (; above; above = context.parent(above)) if (PLAIN.has(above.type)) return;
        const parts: MdastNode[] = [];
        let from = 0;
        for (const { term, start, end } of termsIn(node.value, terms)) {
          if (used.has(term)) continue;
          used.add(term);
          parts.push({ type: 'text', value: node.value.slice(from, start) });
          parts.push(button(term, node.value.slice(start, end)));
          from = end;
        }
        if (parts.length === 0) return;
        parts.push({ type: 'text', value: node.value.slice(from) });
        context.replaceNode(
          node,
          parts.filter((part) => part.type !== 'text' || part.value !== ''),
        );
      },
    });
  };
}

function button(term: string, words: string): MdastNode {
  const given = { type: 'button', class: 'term', popovertarget: termId(term) };
  return {
    type: 'mdxJsxTextElement',
    name: 'button',
    attributes: Object.entries(given).map(([name, value]) => ({ type: 'mdxJsxAttribute' as const, name, value })),
    children: [{ type: 'text', value: words }],
  };
}

/**
 * The terms of the site; none where the file cannot be read, which the content check reports. It is read anew where it has
 * changed, and not for every lesson.
 */
function glossaryIn(file: string): () => string[] {
  let known: { written: number; terms: string[] } | undefined;
  return () => {
    try {
      const written = statSync(file).mtimeMs;
      if (known?.written !== written) known = { written, terms: termsOf(parse(readFileSync(file, 'utf8'))) };
      return known.terms;
    } catch {
      return [];
    }
  };
}

const termsOf = (glossary: unknown): string[] =>
  typeof glossary === 'object' && glossary !== null ? Object.keys(glossary) : [];
