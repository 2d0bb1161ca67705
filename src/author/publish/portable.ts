/**
 * A copy of the built site that works from any folder: on a stick, on a disc, below any path. Every address in it is
 * made relative to the page or file it stands in.
 *
 * Browsers do not run programs of pages that lie in a plain folder (file:), so there one reads: text, sums, drawings and
 * documents at the course's own sizes. With the little server beside it everything works.
 */
import { createHash } from 'node:crypto';
import { cpSync, existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** A tag with its attributes; what stands in quotes may hold a closing sign. Or a whole style element. */
const TAG_OR_STYLE =
  /<style\b[^>]*>[\s\S]*?<\/style>|<script\b[^>]*>[\s\S]*?<\/script>|<[a-zA-Z][\w-]*(?:[^>"']|"[^"]*"|'[^']*')*>/g;
/** An address from the top of the host, as an attribute has it, also inside the numbers that an island is given. */
const IN_TAG = /("|&quot;)(\/(?!\/)[^"&<>\s]*)(?="|&quot;)/g;
/** The pictures of which a browser chooses one, each with its width behind it. */
const IN_SRCSET = /(?<=\ssrcset=")[^"]+(?=")/g;
const IN_STYLE = /(url\(\s*["']?)(\/(?!\/)[^"')\s]+)/g;

/**
 * Copies a built site so that it works from any folder.
 *
 * @param from the built site
 * @param to a folder, which may be there already
 * @param base the path the site was built for
 */
export function copyPortable(from: string, to: string, base: string): void {
  cpSync(from, to, { recursive: true });
  const files = readdirSync(to, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  for (const { parentPath, name } of files) {
    const full = path.join(parentPath, name);
    const file = path.relative(to, full).split(path.sep).join('/');
    const isFile = (one: string) => existsSync(path.join(to, one)) && statSync(path.join(to, one)).isFile();
    // The page for addresses that do not exist is shown at any depth, so its own addresses start from the top.
    if (name.endsWith('.html') && file !== '404.html')
      writeFileSync(full, portablePage(readFileSync(full, 'utf8'), file, base, isFile));
    if (name.endsWith('.css')) {
      writeFileSync(full, readFileSync(full, 'utf8').replace(IN_STYLE, relative(file, base, isFile)));
    }
  }
}

/**
 * A page whose addresses are relative. What its content security policy says of a style that changes with them is put
 * right, too.
 *
 * @param file path of the page from the top of the site
 * @param isFile whether a path from the top of the site is a file of it
 */
export function portablePage(html: string, file: string, base: string, isFile: (file: string) => boolean): string {
  const hashes = new Map<string, string>();
  const page = html.replace(TAG_OR_STYLE, (part) => {
    if (/^<script\b/i.test(part)) {
      const end = part.indexOf('>') + 1; // what a program says is its own affair, and its hash stands in the policy
      return part.slice(0, end).replace(IN_TAG, relative(file, base, isFile)) + part.slice(end);
    }
    if (!/^<style\b/i.test(part)) {
      const way = relative(file, base, isFile);
      const several = (list: string) => list.replace(/(^|,\s*)(\/(?!\/)[^\s,]+)/g, way);
      return part.replace(IN_TAG, way).replace(IN_SRCSET, several);
    }
    const changed = part.replace(IN_STYLE, relative(file, base, isFile));
    if (changed !== part) hashes.set(hashOf(part), hashOf(changed));
    return changed;
  });
  const allowed = [...hashes].reduce((text, [before, after]) => text.replaceAll(before, after), page);
  return allowed
    .replace("script-src 'self'", `script-src 'self' 'sha256-${hashOf(NOTE)}'`)
    .replace(/<\/body>/, () => `${NOTE}</body>`);
}

/** Tells whoever opens a page from a plain folder why nothing moves. Small programs inside a page run even there. */
const NOTE = `<script>
if (location.protocol === 'file:') {
  const note = document.createElement('p');
  note.textContent = 'You read this from a folder, where sliders and questions sleep. START-HERE.txt says how to wake them.';
  note.setAttribute('role', 'note');
  note.style.cssText = 'margin:0;padding:.6rem 1rem;border-block:2px solid var(--thread);text-align:center';
  document.querySelector('main').before(note);
}
</script>`;

/** What a policy says of a style element: the hash of what stands inside. */
const hashOf = (element: string): string =>
  createHash('sha256')
    .update(element.slice(element.indexOf('>') + 1, element.lastIndexOf('</')))
    .digest('base64');

/** Replaces an address from the top of the host by the way from a file; what is no file of the site stays as it is. */
function relative(file: string, base: string, isFile: (file: string) => boolean) {
  return (whole: string, before: string, address: string): string => {
    if (!address.startsWith(base)) return whole;
    const [, pathname = '', rest = ''] = /^([^?#]*)(.*)$/.exec(address.slice(base.length)) ?? [];
    const target = pathname === '' || pathname.endsWith('/') ? `${pathname}index.html` : pathname;
    if (!isFile(decodeURI(target))) return whole;
    const way = path.posix.relative(path.posix.dirname(file), target);
    return `${before}${way.startsWith('.') ? way : `./${way}`}${rest}`;
  };
}
