/** The finished size that a file promises: as the last step leaves the work, and as it lies open. */
import { readValue } from './raw-value.ts';
import type { Amounts } from './amounts.ts';
import type { Finished, Promised } from './pattern.ts';
import type { Place } from '../measure/index.ts';
import type { ProjectFile } from './schema.ts';
import type { Raw, RawValue, Reader } from './raw-value.ts';

type RawFinished = NonNullable<ProjectFile['finished']>;

type CompiledSize = { width: RawValue; height: RawValue; within: RawValue | undefined };

export type CompiledFinished = {
  of: string | undefined;
  /** As the last step leaves it; of a file that gives only the open size, that. */
  now: CompiledSize | undefined;
  open: CompiledSize | undefined;
  thickness: RawValue | undefined;
};

/** The size as the last step leaves the work, as it is written, and where. */
export function promisedIn({ width, height, within, closed, open }: RawFinished): {
  written: { width?: Raw | undefined; height?: Raw | undefined; within?: Raw | undefined };
  place: Place;
} {
  if (closed) return { written: closed, place: ['finished', 'closed'] };
  if (width !== undefined || height !== undefined || !open)
    return { written: { width, height, within }, place: ['finished'] };
  return { written: open, place: ['finished', 'open'] };
}

export function readFinished(raw: RawFinished, reader: Reader): CompiledFinished {
  const { written, place } = promisedIn(raw);
  const read = (from: typeof written, at: Place): CompiledSize | undefined => {
    if (from.width === undefined || from.height === undefined) return undefined;
    const width = readValue(from.width, [...at, 'width'], reader);
    const height = readValue(from.height, [...at, 'height'], reader);
    const within = from.within === undefined ? undefined : readValue(from.within, [...at, 'within'], reader);
    return width && height && { width, height, within };
  };
  const now = read(written, place);
  const thick = raw.closed?.thickness;
  return {
    of: raw.of,
    now,
    open: raw.open && (place[1] === 'open' ? now : read(raw.open, ['finished', 'open'])),
    thickness: thick === undefined ? undefined : readValue(thick, ['finished', 'closed', 'thickness'], reader),
  };
}

/** The promised sizes in mm; undefined where they cannot be worked out. */
export function finishedOf(promised: CompiledFinished | undefined, amounts: Amounts): Finished | undefined {
  if (!promised?.now) return undefined;
  const sizeOf = ({ width: across, height: up, within: off }: CompiledSize): Promised | undefined => {
    const [width, height, within] = [amounts.length(across), amounts.length(up), off && amounts.length(off)];
    if (width === undefined || height === undefined) return undefined;
    return within === undefined ? { width, height } : { width, height, within };
  };
  const now = sizeOf(promised.now);
  const open = promised.open && sizeOf(promised.open);
  const thickness = promised.thickness && amounts.length(promised.thickness);
  return (
    now && {
      ...now,
      ...(promised.of !== undefined && { of: promised.of }),
      ...(open && { open }),
      ...(thickness !== undefined && { thickness }),
    }
  );
}
