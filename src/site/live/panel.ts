/// <reference types="vite/client" />
import { counted } from '../content/diagnostic.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { LiveProblems } from './messages.ts';

/*
 * In every page of the live preview: a strip at the foot that lists the mistakes in the content, with file, line and
 * column. It comes and goes as files are saved; the page itself stays usable.
 */

const STYLE = `
  :host { all: initial; position: fixed; inset: auto 0 0 0; z-index: 99; display: block; color-scheme: inherit;
    font: 1rem/1.45 var(--font-body, system-ui), system-ui, sans-serif; color: var(--ink, #23303b);
    background: var(--paper, #fbf7ee); border-top: 3px solid var(--thread, #a8402b); }
  @media print { :host { display: none; } }
  details { max-height: 60vh; overflow: auto; padding: 0 1rem; }
  summary { cursor: pointer; min-height: 2.75rem; display: flex; align-items: center; gap: .6rem; font-weight: 600; }
  summary::before { content: '▸'; color: var(--thread, #a8402b); } details[open] summary::before { content: '▾'; }
  :focus-visible { outline: 2px solid var(--teal, #1f5c6b); outline-offset: 2px; }
  h2 { margin: .5rem 0 .25rem; font-size: .875rem; font-weight: 600; overflow-wrap: anywhere; }
  .kept, .place, .fix { color: var(--ink-quiet, #5a6672); font-weight: 400; }
  ul { margin: 0 0 .75rem; padding: 0; list-style: none; }
  li { display: grid; grid-template-columns: 5rem 1fr; gap: 0 .75rem; padding: .15rem 0; }
  .place { font-variant-numeric: tabular-nums; text-align: right; }
  .fix { grid-column: 2; }
`;

/** Where a mistake stands in the text of a lesson. */
const MARK_STYLE = `
  mark[data-mistake] { color: var(--thread, #a8402b); background: none; border: 1px dashed currentColor; padding: .1em .3em; }
  mark[data-mistake='warning'], mark[data-mistake='note'] { display: inline-block; margin-inline-start: .4em;
    font-size: .8125rem; font-weight: 400; line-height: 1.35; border-style: solid; border-width: 0 0 0 3px; }
  mark[data-mistake='note'] { color: var(--ink-quiet, #5a6672); }
`;

const KIND = { error: '', warning: 'Warning: ', note: 'Note: ' } as const;

function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  className: string,
  ...content: (string | Node)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  if (className) made.className = className;
  made.append(...content);
  return made;
}

class ContentProblems extends HTMLElement {
  #open: boolean | undefined;
  readonly #shadow = this.attachShadow({ mode: 'open' });

  show({ problems, kept }: LiveProblems): void {
    this.hidden = problems.length === 0;
    this.style.display = this.hidden ? 'none' : '';
    this.setAttribute('role', 'region');
    this.setAttribute('aria-label', 'Mistakes in your files');
    const details = element('details', '', element('summary', '', counted(problems)));
    // Mistakes open by themselves; once the reader has closed or opened the list, it stays so.
    details.open = this.#open ?? problems.some(({ severity }) => severity === 'error');
    details.querySelector('summary')!.addEventListener('click', () => (this.#open = !details.open));
    for (const [file, own] of Map.groupBy(problems, (problem) => problem.file)) {
      const heading = element('h2', '', file);
      if (kept.includes(file))
        heading.append(element('span', 'kept', ' — pages still show its last state without a mistake'));
      details.append(heading, element('ul', '', ...own.map((problem) => this.#item(problem))));
    }
    const status = element('div', '', details);
    status.setAttribute('aria-live', 'polite');
    this.#shadow.replaceChildren(element('style', '', STYLE), status);
  }

  #item({ line, column, severity, message, fix }: Diagnostic): HTMLLIElement {
    const text = element('span', '', KIND[severity] + message);
    const item = element('li', '', element('span', 'place', `${line}:${column}`), text);
    if (fix) item.append(element('span', 'fix', fix));
    return item;
  }
}

if (import.meta.hot) {
  customElements.define('content-problems', ContentProblems);
  const panel = new ContentProblems();
  document.body.append(panel);
  // The end of the page stays reachable above the panel.
  new ResizeObserver(() => (document.body.style.paddingBottom = `${panel.offsetHeight}px`)).observe(panel);
  document.head.append(element('style', '', MARK_STYLE));
  import.meta.hot.on('content:problems', (live: LiveProblems) => panel.show(live));
  import.meta.hot.send('content:ask');

  // A page that stands in for another asks now and then whether that one can be shown by now.
  if (document.documentElement.hasAttribute('data-waiting')) {
    const ask = async () => {
      const answer = await fetch(location.href).catch(() => undefined);
      if (answer && answer.status !== 503) location.reload();
    };
    setInterval(() => void ask(), 1000);
  }
}
