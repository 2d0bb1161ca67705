/** The addresses in a page of the built site. */

/** A tag with its attributes; what stands in quotes may hold a closing sign. */
const TAG = /<([a-zA-Z][\w-]*)((?:[^>"']|"[^"]*"|'[^']*')*)>/g;
const ATTRIBUTE = /([\w:-]+)=(?:"([^"]*)"|'([^']*)')/g;
/** A program or a comment holds no tags, whatever it looks like. */
const NO_TAGS = /<script\b[^>]*>[\s\S]*?<\/script>|<!--[\s\S]*?-->/g;

export type HtmlTag = { name: string; attributes: Map<string, string> };

/** The tags of a page, those of its programs too. */
export function tagsOf(html: string): HtmlTag[] {
  // Of a program its first tag stays.
  const plain = html.replace(NO_TAGS, (part) => (part.startsWith('<!--') ? '' : part.slice(0, part.indexOf('>') + 1)));
  return [...plain.matchAll(TAG)].map(([, name = '', attributes = '']) => ({
    name: name.toLowerCase(),
    attributes: new Map(
      [...attributes.matchAll(ATTRIBUTE)].map(([, key = '', one, other]) => [
        key.toLowerCase(),
        unescaped(one ?? other ?? ''),
      ]),
    ),
  }));
}

const SIGNS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'", '#x27': "'" };
const unescaped = (text: string): string => text.replace(/&(#?\w+);/g, (whole, name: string) => SIGNS[name] ?? whole);

const ADDRESSES = ['href', 'src', 'component-url', 'renderer-url', 'before-hydration-url'];

/** Every address that a page leads to or loads. */
export function addressesIn(tags: readonly HtmlTag[]): string[] {
  return tags.flatMap(({ attributes }) => [
    ...ADDRESSES.flatMap((name) => attributes.get(name) ?? []),
    ...(attributes
      .get('srcset')
      ?.split(',')
      .map((one) => one.trim().split(/\s/)[0] ?? '') ?? []),
  ]);
}
