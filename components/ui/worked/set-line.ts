import katex from 'katex';
import { texSettings } from '../../../src/core/index.ts';

const set = new Map<string, string>();

/** A line of a sum set in KaTeX, as HTML. A site shows the same sums on many pages; each line is set once. */
export function setLine(tex: string): string {
  let html = set.get(tex);
  if (html === undefined) set.set(tex, (html = katex.renderToString(tex, { ...texSettings })));
  return html;
}
