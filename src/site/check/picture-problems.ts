/** What is wrong with the pictures of a lesson: with their names, their place, and what is in their files. */
import { existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { wordCalled } from '../../../components/words/index.ts';
import { didYouMean, quote } from '../../core/measure/index.ts';
import { asAddress } from '../content/addresses.ts';
import { BESIDE, isOwn, isPicture } from '../content/lesson-html.ts';
import type { WrittenWord } from '../content/lesson-text.ts';
import { readPicture } from '../content/picture-file.ts';

type Said = { severity: 'error' | 'warning'; message: string; fix?: string | undefined };

/** The pictures that a lesson word names, and where in the lesson. */
export function picturesOf({ name, attributes }: WrittenWord): { file: string; at: number }[] {
  const names = wordCalled(name)?.names ?? {};
  return attributes.flatMap(({ name: attribute, value, textAt }) =>
    names[attribute] === 'picture' && typeof value === 'string' && value !== '' ? [{ file: value, at: textAt }] : [],
  );
}

/** A picture of fewer pixels looks coarse on a page, one of more is slow to make smaller. Common practice, no source. */
const [NARROWEST, WIDEST] = [480, 12_000];
/** In bytes. */
const HEAVIEST = 25e6;

/**
 * @param address as an address has it: `my%20sleeve.jpg`
 * @param folder of the lesson
 */
export function pictureProblems(address: string, folder: string): Said[] {
  const wrong = (message: string, fix?: string): Said[] => [{ severity: 'error', message, fix }];
  if (/^(?:[a-z]:(?:[\\/]|%5C)|file:)/i.test(address)) {
    const own = plain(address).split(/[\\/]/u).at(-1) ?? address;
    return wrong(
      'This names a file of your own computer.',
      `Put it beside the lesson, and write its name alone: ${own}`,
    );
  }
  if (!isOwn(address)) return wrong('This picture comes from another host.', BESIDE);
  const name = plain(address);
  if (/\.hei[cf]$/i.test(name))
    return wrong(`${quote(name)} is a picture of a telephone (HEIC), which few browsers show.`, AS_JPEG);
  if (!isPicture(address)) {
    if (/\.(?:jpe?g|png|webp|avif|gif|svg)$/i.test(name))
      return wrong(`${quote(name)} holds a sign that has a meaning in addresses: ? # or :`, `Call it ${better(name)}.`);
    const fix = 'Pictures end in .jpg, .png, .webp, .avif, .gif or .svg.';
    return wrong(`${quote(name)} is no picture that a page can show.`, fix);
  }
  const file = path.resolve(folder, name);
  const beside = existsSync(path.dirname(file)) ? readdirSync(path.dirname(file)) : [];
  if (!existsSync(file)) {
    const called = path.basename(name);
    const same = beside.find((one) => alike(one) === alike(called));
    const fix = name.includes('\\')
      ? `Write it with /: ${name.replaceAll('\\', '/')}`
      : same === undefined
        ? didYouMean(called, beside)
        : `The file is called ${quote(same)}: capitals and marks count. Call both ${better(same)}.`;
    return wrong(`There is no picture ${quote(name)} beside this lesson.`, fix);
  }
  // Where capitals do not count the file is found all the same, and on a web host it is not.
  const exact = beside.find((one) => one === path.basename(file));
  const other = exact ?? beside.find((one) => alike(one) === alike(path.basename(file)));
  if (exact === undefined && other !== undefined)
    return wrong(`The file is called ${quote(other)}, with other capitals.`, `Write ${other}.`);
  if (!isBelow(file, folder))
    return wrong(`The picture ${quote(name)} lies outside the folder of this course.`, 'Put a copy beside the lesson.');
  if (/\.svg$/i.test(file))
    return RUNS_IN_SVG.test(readFileSync(file, 'utf8'))
      ? wrong(`${quote(name)} would run a program or load something.`, 'Save the drawing as a plain SVG.')
      : [];
  return inFile(file, name);
}

const AS_JPEG = 'Open it on the telephone or the computer, and export or share it as JPEG (.jpg).';

function inFile(file: string, name: string): Said[] {
  const picture = readPicture(file);
  if (!picture) {
    const message = `${quote(name)} holds no picture, or one that breaks off.`;
    return [
      { severity: 'error', message, fix: 'Save it again as JPEG or PNG: to give it another name is not enough.' },
    ];
  }
  const { kind, width, height, bytes } = picture;
  if (kind === 'heic') {
    const message = `${quote(name)} is a picture of a telephone (HEIC), whatever its name says.`;
    return [{ severity: 'error', message, fix: AS_JPEG }];
  }
  const size = `${width} by ${height} pixels`;
  if (bytes > HEAVIEST || Math.max(width, height) > WIDEST) {
    const message = `${quote(name)} is very large: ${size}${bytes > 1e6 ? `, ${Math.round(bytes / 1e6)} MB` : ''}.`;
    return [{ severity: 'warning', message, fix: 'Make it smaller: 2400 pixels across are enough for any page.' }];
  }
  if (width < NARROWEST) {
    const message = `${quote(name)} is small: ${size}. A page shows it coarse, or very small.`;
    return [{ severity: 'warning', message, fix: `Take a picture of at least ${NARROWEST} pixels across.` }];
  }
  return [];
}

function plain(address: string): string {
  try {
    return decodeURI(address);
  } catch {
    return address;
  }
}

/** The same name in other capitals, or with its marks composed in another way. */
const alike = (name: string): string => name.normalize('NFC').toLowerCase();

const better = (name: string): string => {
  const { name: stem, ext } = path.parse(name);
  return `${asAddress(stem)}${ext.toLowerCase()}`;
};

/** In a page a drawing runs nothing; a browser that opens it by itself would run these. */
const RUNS_IN_SVG =
  /<\s*(?:\w+:)?(?:script|foreignObject|iframe|handler)|\son[a-z]+\s*=|javascript:|<!ENTITY|<\?xml-stylesheet/i;

/** A link to a file is that file: what lies outside the course would be published with it. */
function isBelow(file: string, folder: string): boolean {
  return realpathSync(file).startsWith(realpathSync(folder) + path.sep);
}
