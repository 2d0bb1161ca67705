/** Reads the pieces of a project file: their shape, edges, corners, folds and pleats. */
import { literal } from '../formula/index.ts';
import { noteNapAcross } from './remarks.ts';
import { closest, listed, quote, type Diagnostic, type Place, plainName } from '../measure/index.ts';
import { partName } from './names.ts';
import { readNumber, readValue } from './raw-value.ts';
import { MOST_POCKETS } from './pleats.ts';
import type { PleatKind } from './edge-pleats.ts';
import type { Grain } from './pattern.ts';
import type { ProjectFile } from './schema.ts';
import type { Raw, Reader, RawValue } from './raw-value.ts';

type RawPiece = ProjectFile['pieces'][string];
type RawDart = Exclude<NonNullable<RawPiece['darts']>, string>[number];
type RawPleats = NonNullable<RawPiece['pleats']>;

/** A length for every edge: by the edge's name, else `others`. */
export type Edges = { others: RawValue | undefined; byName: ReadonlyMap<string, RawValue>; place: Place };

export type PieceShape =
  /** Cut size. `height` is undefined where the pleats decide how long the strip is. */
  | { kind: 'size'; width: RawValue; height: RawValue | undefined }
  /** Between the stitch lines; of a pleated piece once folded. */
  | { kind: 'finished'; width: RawValue; height: RawValue }
  | { kind: 'like'; piece: string; inset: Edges | undefined; isMirrored: boolean }
  | { kind: 'outline'; points: OutlinePoint[]; onFold: { edge: string; place: Place } | undefined }
  /** The diameter of the stitch line. */
  | { kind: 'circle' | 'half circle'; diameter: RawValue };

type RawPoint = { x: RawValue; y: RawValue };

/** A point of an outline and the edge that begins there: an arc, a curve through points, or straight. */
export type OutlinePoint = RawPoint & {
  edge: string | undefined;
  way: { kind: 'rise' | 'radius'; size: RawValue; isInward: boolean } | RawPoint[] | undefined;
};

export type CompiledPleats = {
  place: Place;
  pockets: RawValue | undefined;
  depth: RawValue | undefined;
  step: RawValue | undefined;
  lift: RawValue | undefined;
  head: RawValue | undefined;
  height: RawValue | undefined;
  bottoms: 'stepped' | 'level';
  from: 'bottom' | 'top';
  folds: RawValue[] | undefined;
};

/** Pleats along an edge, as a file asks for them: two of count, depth and to; with a finished size the first two. */
export type CompiledEdgePleats = {
  place: Place;
  on: string;
  kind: PleatKind;
  faces: 'left' | 'right' | 'up' | 'down' | undefined;
  count: RawValue | undefined;
  depth: RawValue | undefined;
  to: RawValue | undefined;
  every: RawValue | undefined;
};

export type CompiledCorner = { at: string[] | undefined; kind: 'rounded' | 'cut'; size: RawValue; place: Place };

export type CompiledPiece = {
  name: string;
  label: string;
  place: Place;
  role: string;
  count: RawValue | undefined;
  shape: PieceShape | undefined;
  /** Edges whose lengths formulas may ask for; undefined where they are the sides of a rectangle. */
  edges: readonly string[] | undefined;
  allowance: Edges | undefined;
  corners: CompiledCorner[];
  grain: Grain;
  nap: 'up' | 'any';
  notches: {
    on: string;
    at: RawValue | 'middle' | { share: RawValue };
    label: string | undefined;
    place: Place;
  }[];
  darts: {
    on: string;
    at: RawValue | 'middle';
    width: RawValue;
    length: RawValue;
    place: Place;
    /** Those of the piece that it is the mirror image of: along a level edge they are measured from the other end. */
    mirrored?: true;
  }[];
  folds: {
    edge: 'bottom' | 'right' | 'top' | 'left';
    kind: 'mountain' | 'valley';
    at: RawValue;
    label: string | undefined;
  }[];
  pleats: CompiledPleats | undefined;
  edgePleats: CompiledEdgePleats | undefined;
  preCut: true | undefined;
  joined: true | undefined;
  /** The seam allowance of its joins, where the file has one of their own. */
  joinSeam: RawValue | undefined;
  note: string | undefined;
};

/** Reads one piece. What is wrong in it is reported; a piece that cannot be made as asked has no `shape`. */
export function readPiece(name: string, file: ProjectFile, reader: Reader): CompiledPiece {
  const raw = file.pieces[name]!;
  const place: Place = ['pieces', name];
  const sound = reader.findings.length;
  const count = raw.cut === undefined ? undefined : readNumber(raw.cut, [...place, 'cut'], reader);
  const shape = readShape(name, raw, file, place, reader);
  const allowance = readAllowance(name, file, place, reader);
  const corners = readCorners(raw, place, reader);
  const stepped = steppedPleats(raw);
  const pleats = stepped && readPleats(stepped, [...place, 'pleats'], reader);
  const edgePleats = raw.pleats && !stepped ? readEdgePleats(name, raw, file, [...place, 'pleats'], reader) : undefined;
  // With one of these lost, the rest would quietly give another piece than the one asked for.
  const whole = reader.findings.slice(sound).every((finding) => finding.severity !== 'error');
  noteNapAcross(name, raw, place, reader);
  return {
    name,
    label: raw.label ?? literal(name.trim()),
    place,
    role: readRole(raw, file, place, reader),
    count,
    shape: whole ? shape : undefined,
    edges: measuredEdges(name, file),
    allowance,
    corners,
    grain: raw.grain ?? 'lengthwise',
    nap: raw.nap ?? 'any',
    notches: (raw.notches ?? []).flatMap(({ on, at, share, label }, i) => {
      const where: Place = [...place, 'notches', i];
      if ((at === undefined) === (share === undefined)) {
        const message = 'A notch lies at a length along its edge, or at a share of it.';
        const fix = 'Write “at: 2 in”, “at: middle” or “share: 1/4”.';
        reader.findings.push({ severity: 'error', place: where, code: 'notch-unclear', message, fix });
        return [];
      }
      const read = (): CompiledPiece['notches'][number]['at'] | undefined => {
        if (at !== undefined) return at === 'middle' ? at : readValue(at, [...where, 'at'], reader);
        const found = readNumber(share!, [...where, 'share'], reader);
        return found && { share: found };
      };
      const found = read();
      return found ? [{ on, at: found, label, place: where }] : [];
    }),
    darts: readDarts(raw, file, place, reader),
    folds: (raw.folds ?? []).flatMap(({ at, from = 'bottom', kind = 'valley', label }, i) => {
      const rawValue = readValue(at, [...place, 'folds', i, 'at'], reader);
      return rawValue ? [{ edge: from, kind, at: rawValue, label }] : [];
    }),
    pleats,
    edgePleats,
    joined: raw['may be joined'] ? true : undefined,
    joinSeam:
      typeof raw['may be joined'] === 'object'
        ? readValue(raw['may be joined'].seam, [...place, 'may be joined', 'seam'], reader)
        : undefined,
    preCut: raw['cut by'] === 'teacher' ? true : undefined,
    note: raw.note,
  };
}

function readRole(raw: RawPiece, file: ProjectFile, place: Place, { findings }: Reader): string {
  const from = raw.from ?? '';
  const roles = Object.keys(file.materials ?? {});
  if (from === '' || file.materials === undefined) return from;
  const role = roles.find((one) => plainName(one) === plainName(from));
  if (role !== undefined) return role;
  const meant = closest(from, roles);
  const fix =
    meant === undefined ? `Name it under materials: ${from}: quilting cotton.` : `Do you mean ${quote(meant)}?`;
  const message = `There is no material in the role ${quote(from)}.`;
  const finding: Diagnostic = { severity: 'error', place: [...place, 'from'], code: 'unknown-name', message, fix };
  findings.push({ ...finding, start: 0, end: from.length });
  return from;
}

const WAYS = ['size', 'finished', 'outline', 'circle', 'half circle', 'like'] as const;

function readShape(
  name: string,
  raw: RawPiece,
  file: ProjectFile,
  place: Place,
  reader: Reader,
): PieceShape | undefined {
  const { findings } = reader;
  const ways = WAYS.filter((way) => raw[way] !== undefined);
  const [way] = ways;
  if (way === undefined) {
    const message = `The piece ${quote(name)} has no size.`;
    const fix = 'Give it a size, a finished size, an outline, or another piece it is like.';
    findings.push({ severity: 'error', place, code: 'no-size', message, fix });
    return undefined;
  }
  if (ways.length > 1) {
    const message = `The piece ${quote(name)} gets its size twice: by ${listed(ways.map(quote))}.`;
    findings.push({
      severity: 'error',
      place: [...place, ways[1]!],
      code: 'size-twice',
      message,
      fix: 'Keep one of them.',
    });
  }
  if (raw.inset !== undefined && way !== 'like') {
    const message = 'An inset needs a piece to be set into. Name it under like.';
    findings.push({ severity: 'error', place: [...place, 'inset'], code: 'inset-of-nothing', message });
  }
  const isStepped = steppedPleats(raw) !== undefined;
  if (raw.pleats && way !== 'size' && way !== 'finished' && (isStepped || way !== 'outline')) {
    const message = isStepped
      ? 'Only a piece with a size or a finished size can be pleated here.'
      : `A ${way === 'like' ? 'piece that is like another' : way} is not pleated here: it needs a size, a finished size, or an outline with a straight edge.`;
    findings.push({ severity: 'error', place: [...place, 'pleats'], code: 'pleats-need-size', message });
  }
  switch (way) {
    case 'size': {
      const [w, h] = raw.size!;
      const width = readValue(w, [...place, 'size', 0], reader);
      const length = plainName(partName(name, { what: 'length' }));
      const isMeasure = Object.keys(file.measures).some((measure) => plainName(measure) === length);
      const own = typeof h === 'string' && plainName(h) === length && !isMeasure;
      if (own && isStepped) return width && { kind: 'size', width, height: undefined };
      const height = readValue(h, [...place, 'size', 1], reader);
      return width && height && { kind: 'size', width, height };
    }
    case 'finished': {
      const width = readValue(raw.finished![0], [...place, 'finished', 0], reader);
      const height = readValue(raw.finished![1], [...place, 'finished', 1], reader);
      return width && height && { kind: 'finished', width, height };
    }
    case 'like': {
      const like = raw.like!;
      if (raw.corners !== undefined) {
        const message = `${quote(name)} takes its corners from ${quote(like)}.`;
        const fix = `Shape the corners of ${quote(like)}, or give ${quote(name)} a size of its own.`;
        findings.push({ severity: 'error', place: [...place, 'corners'], code: 'corners-of-like', message, fix });
      }
      const pieces = Object.keys(file.pieces).filter((one) => one !== name);
      const piece = pieces.find((one) => plainName(one) === plainName(like));
      const inset = raw.inset === undefined ? undefined : readEdges(raw.inset, [...place, 'inset'], reader, name, file);
      if (piece !== undefined) return { kind: 'like', piece, inset, isMirrored: raw.mirrored === true };
      const meant = closest(like, pieces);
      const message = `There is no other piece called ${quote(like)}.`;
      const finding: Diagnostic = { severity: 'error', place: [...place, 'like'], code: 'unknown-name', message };
      findings.push({ ...finding, start: 0, end: like.length, ...(meant && { fix: `Do you mean ${quote(meant)}?` }) });
      return undefined;
    }
    case 'circle':
    case 'half circle': {
      const diameter = readValue(raw[way]!, [...place, way], reader);
      return diameter && { kind: way, diameter };
    }
    case 'outline': {
      const before = findings.length;
      const points = raw.outline!.flatMap(
        (point, i) => readOutlinePoint(point, [...place, 'outline', i], reader) ?? [],
      );
      const fold = raw['on fold'];
      const halves = halfEdges(raw);
      if (fold !== undefined && !halves.some((edge) => plainName(edge) === plainName(fold)))
        findings.push(unknownEdge(fold, halves, name, [...place, 'on fold']));
      else if (fold !== undefined) findings.push(...mirroredTwice(halves, fold, [...place, 'outline']));
      if (findings.slice(before).some(({ severity }) => severity === 'error')) return undefined;
      const onFold = fold === undefined ? undefined : { edge: fold, place: [...place, 'on fold'] };
      return { kind: 'outline', points, onFold };
    }
  }
}

type RawOutlinePoint = NonNullable<RawPiece['outline']>[number];

function readOutlinePoint(point: RawOutlinePoint, where: Place, reader: Reader): OutlinePoint | undefined {
  const isPlain = Array.isArray(point);
  const own = readPoint(isPlain ? point : point.at, isPlain ? where : [...where, 'at'], reader);
  if (isPlain) return own && { ...own, edge: undefined, way: undefined };
  const { edge, rise, radius, bends, 'curve through': through } = point;
  const said = (['rise', 'radius', 'curve through'] as const).filter((key) => point[key] !== undefined);
  if (said.length > 1 || (bends && rise === undefined && radius === undefined)) {
    const message =
      said.length > 1
        ? `The edge from here is curved twice: by ${listed(said.map(quote))}.`
        : '“bends” belongs to an arc, with “rise” or “radius”.';
    const fix = said.length > 1 ? 'Keep one of them.' : 'Give the arc one of them: “rise: 1/2 in”.';
    reader.findings.push({ severity: 'error', place: where, code: 'curve-unclear', message, fix });
    return undefined;
  }
  const [key] = said;
  if (key === undefined) return own && { ...own, edge, way: undefined };
  if (key === 'curve through') {
    const points = through!.map((one, i) => readPoint(one, [...where, key, i], reader));
    return own && !points.includes(undefined) ? { ...own, edge, way: points as RawPoint[] } : undefined;
  }
  const size = readValue(point[key]!, [...where, key], reader);
  return own && size && { ...own, edge, way: { kind: key, size, isInward: bends === 'in' } };
}

function readPoint([x, y]: readonly [Raw, Raw], place: Place, reader: Reader): RawPoint | undefined {
  const [across, up] = [readValue(x, [...place, 0], reader), readValue(y, [...place, 1], reader)];
  return across && up && { x: across, y: up };
}

/** Reads a length for all edges, or one for each of the edges named. */
function readEdges(
  raw: Raw | Record<string, Raw>,
  place: Place,
  reader: Reader,
  name: string,
  file: ProjectFile,
): Edges {
  const byName = new Map<string, RawValue>();
  const oneLength = typeof raw !== 'object' || 'in' in raw || 'mm' in raw;
  if (oneLength) return { others: readValue(raw, place, reader), byName, place };
  const known = edgesOf(name, file);
  for (const [edge, length] of Object.entries(raw as Record<string, Raw>)) {
    if (edge !== 'others' && !known.some((one) => plainName(one) === plainName(edge))) {
      reader.findings.push(unknownEdge(edge, known, name, [...place, edge], ['others']));
      continue;
    }
    const rawValue = readValue(length, [...place, edge], reader);
    if (rawValue) byName.set(plainName(edge), rawValue);
  }
  const others = byName.get('others');
  byName.delete('others');
  // Both halves of a piece that was cut on the fold are alike, unless an edge of the other half is named.
  for (const edge of innerEdges(name, file)) {
    const [own, other] = [byName.get(plainName(edge)), plainName(otherHalf(edge))];
    if (own && !byName.has(other)) byName.set(other, own);
  }
  return { others, byName, place };
}

/** The edges that a piece has before its corners are shaped. */
function edgesOf(name: string, file: ProjectFile, seen: readonly string[] = []): string[] {
  const raw = file.pieces[name]!;
  const like = raw.like && Object.keys(file.pieces).find((one) => plainName(one) === plainName(raw.like!));
  if (like && !seen.includes(like)) {
    const own = edgesOf(like, file, [...seen, name]);
    return raw.mirrored ? own.map(mirroredName) : own;
  }
  if (raw.circle !== undefined) return ['edge'];
  if (raw['half circle'] !== undefined) return ['bottom', 'curve'];
  if (!raw.outline) return ['bottom', 'right', 'top', 'left'];
  const fold = raw['on fold'];
  return fold === undefined ? halfEdges(raw) : unfoldedNames(halfEdges(raw), fold);
}

/** Darts of a piece, or those of the one that it is like. */
function readDarts(raw: RawPiece, file: ProjectFile, place: Place, reader: Reader): CompiledPiece['darts'] {
  const read = (darts: readonly RawDart[], from: Place, isMirrored = false) =>
    darts.flatMap(({ on, at, width: wide, length: long }, i): CompiledPiece['darts'] => {
      const where: Place = [...from, 'darts', i];
      const width = readValue(wide, [...where, 'width'], reader);
      const length = readValue(long, [...where, 'length'], reader);
      const found: RawValue | 'middle' | undefined =
        at === 'middle' ? 'middle' : readValue(at, [...where, 'at'], reader);
      if (!width || !length || !found) return [];
      const dart: CompiledPiece['darts'][number] = { on, at: found, width, length, place: where };
      return [isMirrored ? { ...dart, on: mirroredName(on), mirrored: true } : dart];
    });
  if (raw.darts !== 'the same') return read(raw.darts ?? [], place);
  // What has none to take is told by check-written.ts, whose words no lesson ships.
  const like = Object.keys(file.pieces).find((one) => plainName(one) === plainName(raw.like ?? ''));
  const darts = like === undefined || raw.inset !== undefined ? undefined : file.pieces[like]!.darts;
  return Array.isArray(darts) ? read(darts, ['pieces', like!], raw.mirrored) : [];
}

/** The edges of an outline as its points name them. */
const halfEdges = ({ outline = [] }: RawPiece): string[] =>
  outline.map((point, i) => (Array.isArray(point) ? undefined : point.edge) ?? `edge ${i + 1}`);

const ACROSS: Readonly<Record<string, string>> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };

/** What an edge is called on the mirror image of a piece. */
export const mirroredName = (edge: string): string =>
  edge.replace(/\b(left|right)\b/giu, (side) => (side.toLowerCase() === 'left' ? 'right' : 'left'));

/** What an edge is called on the other half of a piece that was cut on the fold. */
export const otherHalf = (edge: string): string => ACROSS[plainName(edge)] ?? `other ${edge}`;

/** The edges of a half from the fold round to the fold, without it. */
function besideFold(half: readonly string[], fold: string): string[] {
  const at = half.findIndex((edge) => plainName(edge) === plainName(fold));
  return at < 0 ? [...half] : [...half.slice(at + 1), ...half.slice(0, at)];
}

/** The edges of a piece that was cut on the fold, by those of its half: the two beside the fold are one each. */
function unfoldedNames(half: readonly string[], fold: string): string[] {
  const rest = besideFold(half, fold);
  return [...new Set([...rest, ...rest.slice(1, -1).map(otherHalf)])];
}

/** Edges of a half whose mirror images would take the name of another edge. */
function mirroredTwice(half: readonly string[], fold: string, place: Place): Diagnostic[] {
  const rest = besideFold(half, fold);
  return [...new Set(rest.slice(1, -1))].flatMap((edge): Diagnostic[] => {
    const other = otherHalf(edge);
    if (!rest.some((one) => plainName(one) === plainName(other))) return [];
    const message = `On the other half ${quote(edge)} is called ${quote(other)}, and this half has an edge of that name.`;
    return [{ severity: 'error', place, code: 'name-twice', message, fix: 'Call one of the two something else.' }];
  });
}

/** The edges of an outline whose names stand for one stretch: two that lie apart have no length as one. */
function unbroken(raw: RawPiece): string[] {
  const fold = raw['on fold'];
  const half = halfEdges(raw);
  const rest = fold === undefined ? half : besideFold(half, fold);
  const round = fold === undefined ? rest : [...rest, ...rest.slice(1, -1).map(otherHalf).reverse()];
  const begins = round.filter((edge, i) => plainName(edge) !== plainName(round.at(i - 1)!)).map(plainName);
  return [...new Set(round)].filter((edge) => begins.filter((one) => one === plainName(edge)).length <= 1);
}

/** Of a piece that is cut on the fold, or like one: the edges of its half that are there twice. */
function innerEdges(name: string, file: ProjectFile, seen: readonly string[] = []): string[] {
  const raw = file.pieces[name]!;
  const like = raw.like && Object.keys(file.pieces).find((one) => plainName(one) === plainName(raw.like!));
  if (like && !seen.includes(like)) return innerEdges(like, file, [...seen, name]);
  return raw['on fold'] === undefined ? [] : besideFold(halfEdges(raw), raw['on fold']).slice(1, -1);
}

/**
 * The edges whose lengths formulas may ask for. Those of a rectangle are its width and height, and those of a piece with
 * shaped corners are asked for all round. Undefined for a plain rectangle.
 */
export function measuredEdges(name: string, file: ProjectFile, seen: readonly string[] = []): string[] | undefined {
  const raw = file.pieces[name]!;
  const like = raw.like && Object.keys(file.pieces).find((one) => plainName(one) === plainName(raw.like!));
  if (like) {
    const own = seen.includes(like) ? undefined : measuredEdges(like, file, [...seen, name]);
    if (own && raw.inset !== undefined) return [];
    return raw.mirrored ? own?.map(mirroredName) : own;
  }
  if (raw.corners !== undefined) return [];
  if (raw.outline) return unbroken(raw);
  const isDrawn = raw.circle ?? raw['half circle'];
  const isMeasured = isDrawn !== undefined || raw.darts !== undefined;
  return isMeasured ? [...new Set(edgesOf(name, file))] : undefined;
}

/** An edge that a piece does not have, with the nearest one that it has. */
export function unknownEdge(
  edge: string,
  known: readonly string[],
  piece: string,
  place: Place,
  also: readonly string[] = [],
): Diagnostic {
  const meant = closest(edge, [...known, ...also]);
  const fix = meant ? `Do you mean ${quote(meant)}?` : `Its edges are ${listed(known.map(quote))}.`;
  const message = `${quote(piece)} has no edge called ${quote(edge)}.`;
  return { severity: 'error', place, code: 'unknown-name', message, fix };
}

/** A piece without an allowance of its own has the measure called seam, unless it is set into another piece. */
function readAllowance(name: string, file: ProjectFile, place: Place, reader: Reader): Edges | undefined {
  const raw = file.pieces[name]!;
  if (raw.allowance !== undefined) return readEdges(raw.allowance, [...place, 'allowance'], reader, name, file);
  if (raw.like !== undefined) return undefined;
  const seam = Object.keys(file.measures).find((name) => plainName(name) === 'seam');
  return seam === undefined ? undefined : { others: readValue(seam, place, reader), byName: new Map(), place };
}

function readCorners(raw: RawPiece, place: Place, reader: Reader): CompiledCorner[] {
  if (raw.corners === undefined) return [];
  const many = Array.isArray(raw.corners);
  return [raw.corners].flat().flatMap((corner, i): CompiledCorner[] => {
    const where: Place = many ? [...place, 'corners', i] : [...place, 'corners'];
    const { round, 'cut off': cut } = corner;
    if ((round === undefined) === (cut === undefined)) {
      const message = 'A corner is either rounded or cut off: { at: top left, round: 1/2 }.';
      reader.findings.push({ severity: 'error', place: where, code: 'corner-unclear', message });
      return [];
    }
    const kind = round === undefined ? 'cut' : 'rounded';
    const size = readValue((round ?? cut)!, [...where, round === undefined ? 'cut off' : 'round'], reader);
    const at = corner.at === undefined ? undefined : [corner.at].flat();
    return size ? [{ at, kind, size, place: where }] : [];
  });
}

function readPleats(raw: RawPleats, place: Place, reader: Reader): CompiledPleats | undefined {
  const { findings } = reader;
  const wished = (['pockets', 'depth', 'step'] as const).filter((key) => raw[key] !== undefined);
  if (raw.folds && wished.length > 0) {
    const message = `The fold lines already say ${listed(wished.map(quote))}.`;
    findings.push({
      severity: 'error',
      place: [...place, wished[0]!],
      code: 'pleats-twice',
      message,
      fix: 'Keep one way or the other.',
    });
  }
  if (!raw.folds && wished.length < 3) {
    const missing = (['pockets', 'depth', 'step'] as const).filter((key) => raw[key] === undefined);
    const onePocket = raw.pockets === 1 && missing.length === 1 && missing[0] === 'step';
    if (!onePocket) {
      const message = `These pleats need ${listed(missing.map(quote))} too, or the fold lines themselves.`;
      findings.push({ severity: 'error', place, code: 'pleats-incomplete', message });
      return undefined;
    }
  }
  const length = (key: 'depth' | 'step' | 'lift' | 'head' | 'height') =>
    raw[key] === undefined ? undefined : readValue(raw[key], [...place, key], reader);
  const folds = raw.folds?.map((fold, i) => readValue(fold, [...place, 'folds', i], reader));
  const read = {
    place,
    pockets: raw.pockets === undefined ? undefined : readNumber(raw.pockets, [...place, 'pockets'], reader),
    depth: length('depth'),
    step: length('step'),
    lift: length('lift'),
    head: length('head'),
    height: length('height'),
  };
  // One unreadable field would quietly give other pleats than the ones asked for.
  const lost = (['pockets', 'depth', 'step', 'lift', 'head', 'height'] as const).some(
    (key) => raw[key] !== undefined && read[key] === undefined,
  );
  if (lost || folds?.includes(undefined)) return undefined;
  return {
    ...read,
    bottoms: raw.bottoms ?? 'stepped',
    from: raw.from ?? 'bottom',
    folds: folds as RawValue[] | undefined,
  };
}

/** Pleats across a strip that make pockets, as the file asks for them: those that name no edge. */
export const steppedPleats = ({ pleats }: Pick<RawPiece, 'pleats'>): RawPleats | undefined =>
  pleats && ALONG.every((key) => pleats[key] === undefined) ? pleats : undefined;

const ALONG = ['on', 'kind', 'faces', 'count', 'to', 'every'] as const;
const STEPPED = ['pockets', 'step', 'lift', 'head', 'height', 'bottoms', 'from', 'folds'] as const;

/** What the pleats of a piece give to formulas. */
export const pleatParts = (raw: RawPiece): number | 'along' =>
  raw.pleats === undefined ? 0 : steppedPleats(raw) ? MOST_POCKETS : 'along';

/** Whether pleats along an edge of a rectangle make it less wide, or less high. */
export function pleatedAlong({ edgePleats, shape }: CompiledPiece, what: 'width' | 'height'): boolean {
  if (!edgePleats || (shape?.kind !== 'size' && shape?.kind !== 'finished')) return false;
  const edge = plainName(edgePleats.on);
  return (edge === 'top' || edge === 'bottom') === (what === 'width');
}

function readEdgePleats(
  name: string,
  raw: RawPiece,
  file: ProjectFile,
  place: Place,
  reader: Reader,
): CompiledEdgePleats | undefined {
  const pleats = raw.pleats!;
  const refuse = (code: string, message: string, fix?: string, at: Place = place): undefined => {
    reader.findings.push({ severity: 'error', place: at, code, message, ...(fix !== undefined && { fix }) });
  };
  const { on, kind, faces } = pleats;
  if (on === undefined) {
    const [key] = ALONG.filter((one) => pleats[one] !== undefined);
    const message = `${quote(key!)} tells of pleats along an edge, and no edge is named.`;
    return refuse('pleats-incomplete', message, 'Name it: “on: top”.');
  }
  const other = STEPPED.find((key) => pleats[key] !== undefined);
  if (other !== undefined) {
    const message = `${quote(other)} belongs to pleats across a strip that make pockets, and “on” to pleats along an edge.`;
    return refuse('pleats-twice', message, 'Keep one way or the other.', [...place, other]);
  }
  const known = edgesOf(name, file);
  if (!known.some((edge) => plainName(edge) === plainName(on))) {
    reader.findings.push({ ...unknownEdge(on, known, name, [...place, 'on']), start: 0, end: on.length });
    return undefined;
  }
  if (kind === undefined) {
    return refuse(
      'pleats-incomplete',
      'What pleats these are is not said.',
      'Write “kind: knife”, “kind: box” or “kind: inverted”.',
    );
  }
  if (faces !== undefined && kind !== 'knife') {
    const message = `The two folds of ${kind === 'box' ? 'a box' : 'an inverted'} pleat face ${kind === 'box' ? 'away from' : 'towards'} each other: only knife pleats face one way.`;
    return refuse('pleats-face-both-ways', message, 'Leave “faces” out.', [...place, 'faces']);
  }
  const given = (['count', 'depth', 'to'] as const).filter((key) => pleats[key] !== undefined);
  if (raw.finished && pleats.to !== undefined) {
    const message = 'The finished size says already how long the edge is once it is pleated.';
    return refuse('pleats-twice', message, 'Leave “to” out, or give the cut size as “size”.', [...place, 'to']);
  }
  if (given.length > 2) {
    const message = 'Two of “count”, “depth” and “to” say all of it, and the third would have to agree.';
    return refuse('pleats-twice', message, 'Keep two of them; the third is worked out.');
  }
  if (given.length < 2) {
    const wanted = raw.finished ? '“count” and “depth”' : 'two of “count”, “depth” and “to”';
    return refuse('pleats-incomplete', `These pleats need ${wanted}.`, 'Write “count: 8, depth: 1 in”.');
  }
  const count = pleats.count === undefined ? undefined : readNumber(pleats.count, [...place, 'count'], reader);
  const length = (key: 'depth' | 'to' | 'every') =>
    pleats[key] === undefined ? undefined : readValue(pleats[key], [...place, key], reader);
  const read = { count, depth: length('depth'), to: length('to'), every: length('every') };
  const lost = (['count', 'depth', 'to', 'every'] as const).some(
    (key) => pleats[key] !== undefined && read[key] === undefined,
  );
  return lost ? undefined : { place, on, kind, faces, ...read };
}
