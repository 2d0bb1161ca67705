/** Where the kit lies. Its pages are made by tools to which a path is an address, and some signs have a meaning there. */
import path from 'node:path';

/** `#` and `?` end the path of an address, and `%` begins a character written as a code, as `%20` for a blank. */
const SIGNS = /[#?%]/;

/**
 * Why no page can be made where the kit lies, and what to do; undefined where it can.
 *
 * @param root the kit's own folder
 * @example kitFolderFault('/home/ada/C#/kit') // => 'The kit lies in /home/ada/C#/kit\nNo page can be made there: …'
 */
export function kitFolderFault(root: string): string | undefined {
  const name = root.split(path.sep).find((part) => SIGNS.test(part));
  if (name === undefined) return undefined;
  const sign = SIGNS.exec(name)![0];
  return (
    `The kit lies in ${path.resolve(root)}\n` +
    `No page can be made there: the ${sign} in “${name}” has a meaning of its own in addresses.\n` +
    `Rename that folder without it, or move the kit to another, and run the command again there.`
  );
}
