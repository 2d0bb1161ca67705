/** What the finished work must hold: where it goes, and whether it fits. */
import { capital, closest, formatLength, listed, quote, plainName, SAME } from '../measure/index.ts';
import { sides, widestInside } from '../geometry/index.ts';
import { publishedSize, type PublishedSize } from './sizes.ts';
import { readNumber, readValue } from './raw-value.ts';
import type { CompiledPiece } from './shapes.ts';
import type { Diagnostic, Place, Edition, Grid } from '../measure/index.ts';
import type { HoldCheck, Piece, Size } from './pattern.ts';
import type { ProjectFile } from './schema.ts';
import type { Reader, RawValue } from './raw-value.ts';

/** Of a pleated piece: every pocket, the highest, the lowest, or one by its number from the bottom. */
export type Which = 'every' | 'top' | 'bottom' | number;

export type CompiledHold = {
  what: string;
  place: Place;
  piece: string;
  which: Which | undefined;
  behind: boolean;
  published: PublishedSize | undefined;
  own: { width: RawValue; height: RawValue } | undefined;
  turned: boolean;
  state: 'open' | 'closed';
  ease: RawValue | undefined;
  cover: RawValue | undefined;
};

/** The share of a thing's height that a pocket should cover at least. Common practice, no source. */
const COVER = 1 / 2;

/** Reads the hold at an index of the file's list. */
export function readHold(
  index: number,
  file: ProjectFile,
  pieces: ReadonlyMap<string, CompiledPiece>,
  reader: Reader,
): CompiledHold | undefined {
  const raw = file.holds![index]!;
  const place: Place = ['holds', index];
  const where = readWhere(raw.in, pieces);
  if ('finding' in where) {
    const { start, end, ...rest } = where.finding;
    reader.findings.push({ severity: 'error', place: [...place, 'in'], start, end, ...rest });
  }
  let own: CompiledHold['own'];
  let published: PublishedSize | undefined;
  if (raw.size) {
    const width = readValue(raw.size[0], [...place, 'size', 0], reader);
    const height = readValue(raw.size[1], [...place, 'size', 1], reader);
    own = width && height && { width, height };
  } else {
    const found = publishedSize(raw.what);
    published = found.size;
    if (!published) {
      const message = `No published size is known here for ${quote(raw.what)}.`;
      const fix = found.suggestion
        ? `Do you mean ${quote(found.suggestion)}? Or give its size: [4, 6].`
        : 'Give its size, as it goes in: [4, 6].';
      const finding: Diagnostic = { severity: 'error', place: [...place, 'what'], code: 'unknown-size', message, fix };
      reader.findings.push({ ...finding, start: 0, end: raw.what.length });
    }
  }
  const ease = raw.ease === undefined ? undefined : readValue(raw.ease, [...place, 'ease'], reader);
  const cover = raw.cover === undefined ? undefined : readNumber(raw.cover, [...place, 'cover'], reader);
  const lost = (raw.ease !== undefined && !ease) || (raw.cover !== undefined && !cover);
  if ('finding' in where || lost || (!own && !published)) return undefined;
  return {
    what: raw.what,
    place,
    piece: where.piece,
    which: where.which,
    behind: where.behind ?? false,
    published,
    own,
    turned: raw.turned ?? false,
    state: raw.state ?? 'open',
    ease,
    cover,
  };
}

type Where = { piece: string; which: Which | undefined; behind?: true };
type Lost = { finding: Omit<Diagnostic, 'severity' | 'place'> };

/** Reads where something goes: `every pocket of P`, `top pocket`, `pocket 2 of P`, `P pocket 2`, `behind P`, or a piece. */
function readWhere(text: string, pieces: ReadonlyMap<string, CompiledPiece>): Where | Lost {
  const words = plainName(text);
  const behind = /^behind (?:the )?(.+)$/u.exec(words)?.[1];
  const named = [...pieces.keys()].map(plainName);
  if (behind !== undefined && !named.includes(words)) {
    const piece = [...pieces.keys()][named.indexOf(behind)];
    return piece === undefined
      ? unknownPiece(behind, text, [...pieces.keys()])
      : { piece, which: undefined, behind: true };
  }
  const span = { start: 0, end: text.length };
  const found =
    /^(?:(every|each|top|highest|bottom|lowest) pocket|pocket (\d+))(?: (?:of|in) (?:the )?(.+))?$/u.exec(words) ??
    /^()()(?:the )?(.+?)$/u.exec(words)!;
  const word = found[1];
  let [, , number, name] = found;
  const trailing = name === undefined ? undefined : /^(.+) pocket (\d+)$/u.exec(name);
  const names = [...pieces.keys()];
  const byName = (one: string) => names.find((piece) => plainName(piece) === one);
  if (trailing && byName(name!) === undefined) [, name, number] = trailing;
  const which = word ? spoken[word]! : number ? Number(number) : undefined;

  if (name === undefined) {
    const pleated = names.filter((piece) => pieces.get(piece)!.pleats);
    if (pleated.length === 1) return { piece: pleated[0]!, which };
    const message =
      pleated.length === 0
        ? 'No piece has pleats, so there is no such pocket.'
        : `Say of which piece: ${quote(`${text} of ${pleated[0]!}`)}.`;
    return { finding: { code: 'unclear-pocket', message, ...span } };
  }
  const piece = byName(name);
  if (piece === undefined) {
    return unknownPiece(name, text, names);
  }
  if (pieces.get(piece)!.pleats) return { piece, which: which ?? 'every' };
  if (which === undefined) return { piece, which };
  const message = `${quote(piece)} has no pleats and so no pockets to count.`;
  return { finding: { code: 'unclear-pocket', message, ...span } };
}

function unknownPiece(name: string, text: string, names: readonly string[]): Lost {
  const meant = closest(name, names);
  const message = `There is no piece called ${quote(name)}.`;
  const fix = meant && { fix: `Do you mean ${quote(meant)}?` };
  return { finding: { code: 'unknown-name', message, start: 0, end: text.length, ...fix } };
}

const spoken: Record<string, Which> = {
  every: 'every',
  each: 'every',
  top: 'top',
  highest: 'top',
  bottom: 'bottom',
  lowest: 'bottom',
};

export type HoldValues = { size: Size; ease: number; cover: number | undefined };

/** Checks one hold against its piece: one check for a plain piece, one for each pocket named. */
export function checkHold(
  hold: CompiledHold,
  piece: Piece,
  values: HoldValues,
  measured: { edition: Edition; grid: Grid },
): { checks: HoldCheck[]; findings: Diagnostic[] } {
  const pockets = hold.behind ? undefined : piece.pleats?.pockets;
  if (!pockets) return { checks: [checkOne(hold, piece, undefined, values, measured)], findings: [] };
  const wanted =
    hold.which === 'every' || hold.which === undefined
      ? pockets
      : hold.which === 'top'
        ? pockets.slice(-1)
        : hold.which === 'bottom'
          ? pockets.slice(0, 1)
          : pockets.filter((pocket) => pocket.n === hold.which);
  if (wanted.length === 0) {
    const message = `${quote(piece.label)} has ${pockets.length} ${pockets.length === 1 ? 'pocket' : 'pockets'}, so there is no pocket ${String(hold.which)}.`;
    const finding: Diagnostic = { severity: 'error', place: [...hold.place, 'in'], code: 'unclear-pocket', message };
    return { checks: [], findings: [finding] };
  }
  return { checks: wanted.map((pocket) => checkOne(hold, piece, pocket, values, measured)), findings: [] };
}

function checkOne(
  hold: CompiledHold,
  piece: Piece,
  pocket: { n: number; bottom: number; depth: number } | undefined,
  { size, ease, cover = COVER }: HoldValues,
  { edition, grid }: { edition: Edition; grid: Grid },
): HoldCheck {
  const across = widthFor(piece, size.height + 2 * ease) - size.width - 2 * ease;
  const plan = piece.pleats;
  // In a pleat pocket the thing may stand out; its top should stay below the finished top edge of the panel.
  const upright =
    pocket && plan
      ? plan.panelHeight - (piece.allowance.top ?? 0) - pocket.bottom - size.height
      : piece.sewn.height - size.height - 2 * ease;
  const covered = pocket ? Math.min(1, pocket.depth / size.height) : 1;
  const shows = pocket ? Math.max(0, size.height - pocket.depth) : 0;
  const close = 0.05;
  const wideEnough = across >= -close;
  const deepEnough = covered >= cover - 1e-9;
  const lowEnough = upright >= -close;
  const say = (mm: number) => formatLength(Math.abs(mm), edition, { grid });
  const where = `${pocket ? `pocket ${pocket.n} of ` : hold.behind ? 'behind ' : ''}the ${piece.name.trim()}`;
  const thing = hold.published?.name ?? hold.what;
  const faults = [
    wideEnough ? undefined : `it is ${say(across)} too wide`,
    deepEnough ? undefined : `only ${percent(covered)} of it is covered, not ${percent(cover)}`,
    lowEnough
      ? undefined
      : pocket
        ? `it stands out ${say(upright)} above the top edge`
        : `it is ${say(upright)} too tall`,
  ].filter((fault) => fault !== undefined);
  const sentence =
    faults.length === 0
      ? `${capital(hold.what)} fits ${where}, with ${say(across + 2 * ease)} to spare in width${pocket && shows > 0 ? ` and ${say(shows)} showing` : ''}.`
      : `${capital(hold.what)} does not fit ${where}: ${listed(faults)}.`;
  return {
    what: hold.what,
    thing,
    size,
    source: hold.published?.source ?? 'project file',
    piece: piece.name,
    ...(pocket && { pocket: pocket.n }),
    ...(hold.behind && { behind: true as const }),
    place: hold.place,
    state: hold.state,
    fits: faults.length === 0,
    room: { width: across, height: upright },
    covered,
    cover,
    shows,
    sentence,
  };
}

/**
 * The width that a piece has for a thing of a height. A free outline may be as wide only in one place; a corner that was
 * rounded or cut off is left to the ease.
 */
function widthFor({ outline, corners, sewn, pleats }: Piece, height: number): number {
  const isBox = sides(outline).every(
    ({ name, from, to, bulge }) =>
      corners.includes(name) || (bulge === 0 && Math.min(Math.abs(from.x - to.x), Math.abs(from.y - to.y)) <= SAME),
  );
  return isBox || pleats || height > sewn.height ? sewn.width : widestInside(outline, height);
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;
