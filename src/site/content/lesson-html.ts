import { didYouMean, quote } from '../../core/measure/index.ts';
import type { AtOffset } from './diagnostic.ts';
import type { WrittenWord } from './lesson-text.ts';

/** The HTML that may stand in a lesson, each with its own attributes beside those of `EVERYWHERE`. */
const ELEMENTS: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(
    (
      'abbr address article aside b bdi bdo blockquote br caption cite code dd dfn div dl dt em figcaption figure ' +
      'footer h2 h3 h4 h5 h6 header hr i kbd mark p pre q rp rt ruby s samp section small span strong sub summary sup ' +
      'table tbody tfoot thead tr u ul var wbr'
    )
      .split(' ')
      .map((name) => [name, []]),
  ),
  a: ['href', 'hreflang'],
  audio: ['src', 'controls', 'loop', 'muted', 'preload'],
  col: ['span'],
  colgroup: ['span'],
  del: ['datetime'],
  details: ['open'],
  ins: ['datetime'],
  li: ['value'],
  ol: ['start', 'reversed', 'type'],
  source: ['src', 'type'],
  td: ['colspan', 'rowspan', 'headers'],
  th: ['colspan', 'rowspan', 'headers', 'scope', 'abbr'],
  time: ['datetime'],
  track: ['src', 'kind', 'srclang', 'label', 'default'],
  video: ['src', 'poster', 'controls', 'loop', 'muted', 'playsinline', 'preload', 'width', 'height'],
};

const EVERYWHERE = ['class', 'dir', 'hidden', 'id', 'lang', 'role', 'title', 'translate'];

/** Attributes that name what a page loads. */
const LOADS = ['src', 'poster'];

/** What to write in place of an element that has none in a lesson. */
export const INSTEAD: Readonly<Record<string, string>> = {
  img: 'Write ![what it shows](picture.jpg).',
  center: 'The look of the site is in src/styles.',
  font: 'The look of the site is in src/styles.',
  h1: 'Write ## before the words.',
  script: 'Use a lesson word.',
  style: 'The look of the site is in src/styles.',
  link: 'The look of the site is in src/styles.',
  iframe: 'Write a link.',
  object: 'Write a link.',
  embed: 'Write a link.',
  form: 'Use a question.',
  input: 'Use a question.',
  button: 'Use a question.',
};

/** What puts right an address of another host. */
export const BESIDE = 'Put it beside the lesson: a page asks no other host for anything.';

/**
 * Whether an address leads to the host that the page is on, as a browser reads it: on a site of either scheme, since
 * `http:a/b` lies below the page of an http site alone.
 */
export const isOwn = (address: string): boolean =>
  ['http://site.example', 'https://site.example'].every((site) => URL.parse(address, site)?.origin === site);

/** Whether a link may lead there: to a page, or to somebody's letter box or telephone. */
export function isLink(address: string): boolean {
  if (!URL.canParse(address, 'http://site.example/')) return true; // the check of links says that it is none
  return ['http:', 'https:', 'mailto:', 'tel:'].includes(new URL(address, 'http://site.example/').protocol);
}

/** What is said of a link that is no link. */
export const RUNS = { message: 'This link would run a program.', fix: 'Link to a page.' };

/** Whether a file is a picture, by its name: a page would take in any other as a program. */
export function isPicture(address: string): boolean {
  try {
    return /^[^?#:]+\.(?:jpe?g|png|webp|avif|gif|svg)$/i.test(decodeURI(address));
  } catch {
    return false;
  }
}

/** Whether a word is an element of HTML; a lesson word begins with a capital. */
export const isHtml = ({ name }: Pick<WrittenWord, 'name'>): boolean => /^\p{Ll}/u.test(name) || /[.:]/.test(name);

/** What is wrong in HTML that stands in a lesson: only plain elements with plain attributes may. */
export function htmlFaults({ name, part, spread, attributes }: WrittenWord): AtOffset[] {
  const faults: AtOffset[] = [];
  const say = (at: number, message: string, fix?: string) => faults.push({ at, severity: 'error', message, fix });
  const own = Object.hasOwn(ELEMENTS, name) ? ELEMENTS[name] : undefined;
  if (!own) {
    const other = 'Plain ones may stand there: p, ul, table and the like.';
    const instead = Object.hasOwn(INSTEAD, name) ? INSTEAD[name] : (didYouMean(name, Object.keys(ELEMENTS)) ?? other);
    say(part.start, `<${name}> has no place in a lesson.`, instead);
  }
  if (spread !== undefined)
    say(spread, `<${name}>: braces cannot stand for attributes.`, 'Write each one by its name.');
  for (const { name: attribute, value, at } of attributes) {
    if (/^on/i.test(attribute)) {
      say(at, `${quote(attribute)} would run a program, which no page of the site does.`, 'Leave it out.');
    } else if (own && ![...own, ...EVERYWHERE].includes(attribute) && !/^aria-[a-z]+$/.test(attribute)) {
      const fix = didYouMean(attribute, [...own, ...EVERYWHERE]) ?? 'Leave it out.';
      say(at, `${quote(attribute)} has no place in the <${name}> of a lesson.`, fix);
    } else if (!['string', 'number', 'boolean'].includes(typeof value)) {
      say(at, `<${name}> ${attribute}: the braces hold no plain value.`, 'A text goes in quotes.');
    } else if (LOADS.includes(attribute) && !isOwn(String(value))) {
      say(at, `What <${name}> loads comes from another host.`, BESIDE);
    } else if (attribute === 'href' && !isLink(String(value))) say(at, RUNS.message, RUNS.fix);
  }
  return faults;
}
