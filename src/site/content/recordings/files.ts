import path from 'node:path';
import { isAddress, noAddress } from '../addresses.ts';
import type { Diagnostic } from '../diagnostic.ts';
import { KINDS, type Kind } from './timed-text.ts';

/** The files of one recording, as paths from the root with forward slashes. */
export type RecordingFiles = {
  name: string;
  said: string;
  kind: Kind;
  settings: string | undefined;
  media: string | undefined;
  poster: string | undefined;
};

/** What a page can play, with the name of each kind that browsers know. */
export const PLAYED: Readonly<Record<string, string>> = { webm: 'video/webm', mp4: 'video/mp4' };
const PICTURES = ['jpg', 'jpeg', 'png', 'webp', 'avif'];

/**
 * The recordings in a folder, by what its files are called: each has a timed text, and beside it what there is.
 *
 * @param folder from the root
 * @param names of the files in it, in order
 */
export function recordingsIn(
  folder: string,
  names: readonly string[],
): { recordings: RecordingFiles[]; problems: Diagnostic[] } {
  const problems: Diagnostic[] = [];
  const say = (name: string, severity: Diagnostic['severity'], message: string, fix?: string) =>
    problems.push({ file: `${folder}/${name}`, line: 1, column: 1, severity, message, fix });
  const byName = Map.groupBy(names, (name) => path.posix.parse(name).name);
  const recordings = [...byName].flatMap(([name, files]): RecordingFiles[] => {
    const one = (endings: readonly string[]) => {
      const found = endings.flatMap((ending) =>
        files.filter((file) => path.posix.extname(file).slice(1).toLowerCase() === ending),
      );
      for (const file of found.slice(1))
        say(file, 'warning', `${found[0]} is read instead of this file.`, 'Keep one of them.');
      return found[0];
    };
    const said = one(KINDS);
    const media = one(Object.keys(PLAYED));
    const poster = one(PICTURES);
    const settings = one(['yaml']);
    if (said === undefined) {
      if (media !== undefined)
        say(media, 'warning', 'Nothing is written down of what is said here.', `Put ${name}.vtt beside it.`);
      return [];
    }
    if (!isAddress(name)) problems.push(noAddress(`${folder}/${said}`));
    const at = (file: string | undefined) => (file === undefined ? undefined : `${folder}/${file}`);
    const kind = path.posix.extname(said).slice(1).toLowerCase() as Kind;
    return [{ ...{ name, kind, said: at(said)! }, settings: at(settings), media: at(media), poster: at(poster) }];
  });
  return { recordings, problems };
}
