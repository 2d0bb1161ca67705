/** Reads the pieces of a project file: their shape, edges, corners, folds and pleats. */
import { noteNapAcross } from './remarks.ts';
import { closest, listed, quote, type Diagnostic, type Place, plainName } from '../measure/index.ts';
import { partName } from './names.ts';
import { readNumber, readValue } from './raw-value.ts';
import type { Grain } from './pattern.ts';
import type { ProjectFile } from './schema.ts';
import type { Raw, Reader, RawValue } from './raw-value.ts';

type RawPiece = ProjectFile['pieces'][string];
type RawPleats = NonNullable<RawPiece['pleats']>;

/** A length for every edge: by the edge's name, else `others`. */
export type Edges = { others: RawValue | undefined; byName: ReadonlyMap<string, RawValue>; place: Place };

export type PieceShape =
  /** Cut size. `height` is undefined where the pleats decide how long the strip is. */
  | { kind: 'size'; width: RawValue; height: RawValue | undefined }
  /** Between the stitch lines; of a pleated piece once folded. */
  | { kind: 'finished'; width: RawValue; height: RawValue }
  | { kind: 'like'; piece: string; inset: Edges | undefined }
  | { kind: 'outline'; points: { x: RawValue; y: RawValue; edge: string | undefined }[] };

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

export type CompiledCorner = { at: string[] | undefined; kind: 'rounded' | 'cut'; size: RawValue; place: Place };

export type CompiledPiece = {
  name: string;
  label: string;
  place: Place;
  role: string;
  count: RawValue | undefined;
  shape: PieceShape | undefined;
  allowance: Edges | undefined;
  corners: CompiledCorner[];
  grain: Grain;
  nap: 'up' | 'any';
  notches: { on: string; at: RawValue | 'middle'; label: string | undefined; place: Place }[];
  folds: {
    edge: 'bottom' | 'right' | 'top' | 'left';
    kind: 'mountain' | 'valley';
    at: RawValue;
    label: string | undefined;
  }[];
  pleats: CompiledPleats | undefined;
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
  const pleats = raw.pleats && readPleats(raw.pleats, [...place, 'pleats'], reader);
  // With one of these lost, the rest would quietly give another piece than the one asked for.
  const whole = reader.findings.slice(sound).every((finding) => finding.severity !== 'error');
  noteNapAcross(name, raw, place, reader);
  return {
    name,
    label: raw.label ?? name.trim(),
    place,
    role: readRole(raw, file, place, reader),
    count,
    shape: whole ? shape : undefined,
    allowance,
    corners,
    grain: raw.grain ?? 'lengthwise',
    nap: raw.nap ?? 'any',
    notches: (raw.notches ?? []).flatMap(({ on, at, label }, i) => {
      const where: Place = [...place, 'notches', i];
      const rawValue = at === 'middle' ? at : readValue(at, [...where, 'at'], reader);
      return rawValue ? [{ on, at: rawValue, label, place: where }] : [];
    }),
    folds: (raw.folds ?? []).flatMap(({ at, from = 'bottom', kind = 'valley', label }, i) => {
      const rawValue = readValue(at, [...place, 'folds', i, 'at'], reader);
      return rawValue ? [{ edge: from, kind, at: rawValue, label }] : [];
    }),
    pleats,
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

const WAYS = ['size', 'finished', 'outline', 'like'] as const;

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
  if (raw.pleats && way !== 'size' && way !== 'finished') {
    const message = 'Only a piece with a size or a finished size can be pleated here.';
    findings.push({ severity: 'error', place: [...place, 'pleats'], code: 'pleats-need-size', message });
  }
  switch (way) {
    case 'size': {
      const [w, h] = raw.size!;
      const width = readValue(w, [...place, 'size', 0], reader);
      const own = typeof h === 'string' && plainName(h) === plainName(partName(name, { what: 'length' }));
      if (own && raw.pleats) return width && { kind: 'size', width, height: undefined };
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
      if (piece !== undefined) return { kind: 'like', piece, inset };
      const meant = closest(like, pieces);
      const message = `There is no other piece called ${quote(like)}.`;
      const finding: Diagnostic = { severity: 'error', place: [...place, 'like'], code: 'unknown-name', message };
      findings.push({ ...finding, start: 0, end: like.length, ...(meant && { fix: `Do you mean ${quote(meant)}?` }) });
      return undefined;
    }
    case 'outline': {
      const points = raw.outline!.map((point, i) => {
        const where: Place = [...place, 'outline', i];
        const plain = Array.isArray(point);
        const [x, y] = plain ? point : point.at;
        const at: Place = plain ? where : [...where, 'at'];
        return {
          x: readValue(x, [...at, 0], reader),
          y: readValue(y, [...at, 1], reader),
          edge: plain ? undefined : point.edge,
        };
      });
      const whole = points.filter((point) => point.x !== undefined && point.y !== undefined);
      if (whole.length < points.length) return undefined;
      return { kind: 'outline', points: whole as Extract<PieceShape, { kind: 'outline' }>['points'] };
    }
  }
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
      reader.findings.push(unknownEdge(edge, known, name, [...place, edge]));
      continue;
    }
    const rawValue = readValue(length, [...place, edge], reader);
    if (rawValue) byName.set(plainName(edge), rawValue);
  }
  const others = byName.get('others');
  byName.delete('others');
  return { others, byName, place };
}

/** The edges that a piece has before its corners are shaped. */
function edgesOf(name: string, file: ProjectFile, seen: readonly string[] = []): string[] {
  const raw = file.pieces[name]!;
  const like = raw.like && Object.keys(file.pieces).find((one) => plainName(one) === plainName(raw.like!));
  if (like && !seen.includes(like)) return edgesOf(like, file, [...seen, name]);
  if (!raw.outline) return ['bottom', 'right', 'top', 'left'];
  return raw.outline.map((point, i) => (Array.isArray(point) ? undefined : point.edge) ?? `edge ${i + 1}`);
}

/** An edge that a piece does not have, with the nearest one that it has. */
export function unknownEdge(edge: string, known: readonly string[], piece: string, place: Place): Diagnostic {
  const meant = closest(edge, known);
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
