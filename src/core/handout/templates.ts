import { cutOrder } from '../drawing/piece.ts';
import { lengthWriter } from '../drawing/lengths.ts';
import { box, closed } from '../drawing/path.ts';
import { bounds } from '../geometry/readings.ts';
import { heading as headingBlock, paragraph, row, table } from './blocks.ts';
import { flow } from './flow.ts';
import { madeAs } from './handout.ts';
import { groupAlike, orderOf, takesTemplate } from './alike.ts';
import { letteringBox, letteringWidth, wrap } from '../drawing/lettering.ts';
import { drawJoints, jointsOf, linesOf } from './joints.ts';
import { cropped, line, meet } from './place.ts';
import { inSize } from '../project/in-size.ts';
import { listed } from '../measure/index.ts';
import { nestedPieces, sizeRole } from './nested.ts';
import { shareSheets } from './share.ts';
import { drawTemplate, hasRoomForWords, quarterTurn, setWords, spoken, templateWords, wordsSize } from './template.ts';
import { OVERLAP, RIM, tile, tileName } from './tiles.ts';
import { trueScale } from './true-scale.ts';
import { LEADING, typeOf } from './type.ts';
import type { Shape, ShapeRole, TextShape } from '../drawing/scene.ts';
import type { Point } from '../geometry/point.ts';
import type { Box } from '../geometry/readings.ts';
import type { Pattern, Piece, Size } from '../project/pattern.ts';
import type { Alike } from './alike.ts';
import type { Block } from './flow.ts';
import type { Handout, Heading, Page, HandoutSetting } from './handout.ts';
import type { Drawn } from './nested.ts';
import type { Joint } from './joints.ts';
import type { TemplatePiece } from './template.ts';
import type { Tile, Tiling } from './tiles.ts';
import type { TrueScale } from './true-scale.ts';
import type { Type } from './type.ts';

/** Nobody joins more paper than this: 3 m. */
export const LARGEST = 3000;
/** Nothing smaller can be cut: 1 mm. */
export const SMALLEST = 1;

/** A sheet of the document: its name, what it shows, and the shapes in its room. */
type Sheet = { title: string; pieces: readonly string[]; shapes: Shape[]; text: string[] };

/**
 * Every piece at true scale: small ones share a sheet, larger ones are joined from several. The first page tells how
 * to print, which sheet holds what, and maps the sheets of each joined piece.
 */
export const templates = (pattern: Pattern, setting: HandoutSetting): Handout =>
  templatesOf(pattern, pattern.pieces, setting, {
    name: 'templates',
    heading: { title: 'Templates at true scale', project: madeAs(pattern), edition: pattern.edition },
  });

/**
 * The templates of a project in all its sizes, nested: each piece once, with a cut line for each size, dashed in its own way
 * and named.
 */
export function templatesOfSizes(pattern: Pattern, setting: HandoutSetting): Handout {
  const sizes = pattern.sizes?.of ?? [];
  const patterns = sizes.map((size) => inSize(pattern, size));
  const { pieces, leftOut } = nestedPieces(patterns);
  const { title, choices } = pattern;
  const findings = leftOut.map(
    ({ label }) => `${label} has fold lines, which differ from size to size: print the templates of one size for it.`,
  );
  return templatesOf({ ...pattern, pieces }, pieces, setting, {
    name: 'templates-all-sizes',
    heading: {
      title: 'Templates in all sizes, at true scale',
      project: [
        title,
        `${pattern.sizes?.label.toLowerCase() ?? 'size'}: ${sizes.join(', ')}`,
        ...Object.values(choices).map(({ of, chosen }) => of[chosen]!.label),
      ].join(', '),
      edition: pattern.edition,
    },
    sizes,
    findings,
  });
}

type Document = { name: string; heading: Heading; sizes?: readonly string[]; findings?: readonly string[] };

function templatesOf(
  pattern: Pattern,
  drawn: Readonly<Record<string, Drawn>>,
  setting: HandoutSetting,
  { name, heading, sizes = [], findings: known = [] }: Document,
): Handout {
  const type = typeOf(setting);
  const findings: string[] = [...known];
  const pieces = Object.values(drawn).filter((piece) => {
    if (!takesTemplate(piece, pattern.materials)) return false;
    const refusal = refuse(piece, pattern);
    if (refusal !== undefined) findings.push(refusal);
    return refusal === undefined;
  });
  if (Object.keys(pattern.pieces).length === 0)
    findings.push('This project has no pieces, so there is nothing to print.');

  const lines = [...new Set(pieces.flatMap(({ nest = [] }) => nest.map(({ role }) => role)))];
  const words = Object.fromEntries(
    lines.map((role) => [role, `cut line, ${listed(sizes.filter((_, i) => sizeRole(i) === role))}`]),
  );
  const ground = trueScale(heading, setting, type, [...rolesOf(pieces), ...lines], words);
  const { shared, tiled } = sorted(groupAlike(pieces, pattern.materials), pattern, ground.room, type);
  const sheets = [
    ...shared.map((lots, i) => sharedSheet(lots, i, pattern, ground, type)),
    ...tiled.flatMap((one) => one.tiling.tiles.map((sheet) => tileSheet(one, sheet, pattern, ground, type))),
  ];
  const frontOf = (before: number) =>
    flow(frontPage(pieces, sheets, before, tiled, findings, pattern, type), heading, setting, sheets.length);
  // Its table names the pages that follow it, and its own length moves them.
  const front = frontOf(frontOf(1).length);
  const count = front.length + sheets.length;
  const pages: Page[] = [
    ...front,
    ...sheets.map((sheet, i) => ground.page(sheet.title, front.length + i + 1, count, sheet.shapes, sheet.text)),
  ];
  return {
    name,
    title: `${pattern.title}: ${sizes.length > 0 ? 'templates in all sizes' : 'templates'}`,
    language: setting.language ?? 'en',
    reader: 'maker',
    paper: setting.paper,
    pages: pieces.length === 0 ? front : pages,
    findings,
  };
}

function refuse(piece: Piece, pattern: Pattern): string | undefined {
  const { set } = lengthWriter(pattern);
  const { width, height } = bounds(piece.cutOutline);
  const size = `${set(width)} × ${set(height)}`;
  if (!(Math.min(width, height) >= SMALLEST)) return `${piece.label} is ${size}: too small for a template.`;
  if (Math.max(width, height) > LARGEST) {
    return `${piece.label} is ${size}: too large for a template. Cut it by its measures.`;
  }
  return undefined;
}

function rolesOf(pieces: readonly Drawn[]): ShapeRole[] {
  const roles = new Set<ShapeRole>(pieces.every(({ nest }) => nest) ? [] : ['cut']);
  for (const piece of pieces) {
    if (!piece.nest && Object.values(piece.allowance).some((mm) => mm > 0)) roles.add('stitch');
    for (const { kind } of piece.folds) roles.add(kind);
    if (piece.notches.length > 0) roles.add('notch');
    if (piece.darts.length > 0) for (const role of ['stitch', 'valley'] as const) roles.add(role);
    if (piece.grain !== 'any') roles.add('grain');
  }
  return [...roles];
}

type Lot = { lying: TemplatePiece; box: Box; outside: boolean };
type Tiled = { lying: TemplatePiece; tiling: Tiling; joints: Joint[] };

/** Which pieces share sheets, and which are joined from several, each the way round that takes the fewest. */
function sorted(groups: readonly Alike[], pattern: Pattern, room: Size, type: Type) {
  const small: { all: Alike; ways: Record<'size' | 'turnedSize', Size>; outside: boolean[] }[] = [];
  const tiled: Tiled[] = [];
  for (const all of groups) {
    const [piece] = all;
    const ways = [
      { piece, turned: false, all },
      { piece: quarterTurn(piece), turned: true, all },
    ];
    const { width, height } = piece.size;
    const large = Math.min(width, height) > room.width || Math.max(width, height) > Math.max(room.width, room.height);
    const outside = ways.map((lying) => !large && !hasRoomForWords(lying, pattern, type));
    const [size, turnedSize] = ways.map((lying, i) => footprint(lying, outside[i]!, pattern, type));
    const fits = (size: Size) => size.width <= room.width && size.height <= room.height;
    if (fits(size!) || fits(turnedSize!)) {
      small.push({ all, ways: { size: size!, turnedSize: turnedSize! }, outside });
      continue;
    }
    const tilings = ways.map((lying) => {
      const tiling = tile(lying.piece.cutOutline, room);
      return { lying, tiling, joints: jointsOf(lying.piece, tiling, type) };
    });
    const [upright, turned] = tilings as [Tiled, Tiled];
    tiled.push(turned.tiling.tiles.length < upright.tiling.tiles.length ? turned : upright);
  }
  const shared = shareSheets(
    small.map(({ all, ways, outside }) => ({ what: { all, outside }, ...ways })),
    room,
  ).map((lots) =>
    lots.map(({ what, turned, box }): Lot => {
      const { all } = what;
      const piece = turned ? quarterTurn(all[0]) : all[0];
      return { lying: { piece, turned, all }, box, outside: what.outside[turned ? 1 : 0]! };
    }),
  );
  return { shared, tiled };
}

/** The room a piece takes on a shared sheet; words that have no place inside stand below it. */
function footprint(lying: TemplatePiece, outside: boolean, pattern: Pattern, type: Type): Size {
  const { width, height } = bounds(lying.piece.cutOutline);
  const below = outside ? wordsSize(templateWords(lying, pattern), type) : { width: 0, height: 0 };
  return {
    width: Math.max(width, below.width) + 2 * RIM,
    height: height + (outside ? below.height + 2 : 0) + 2 * RIM,
  };
}

function sharedSheet(lots: readonly Lot[], index: number, pattern: Pattern, ground: TrueScale, type: Type): Sheet {
  const { room } = ground;
  const labels = lots.map(({ lying }) => labelOf(lying));
  const shapes = lots.flatMap(({ lying, box, outside }) => {
    const at = { x: room.x + box.x + RIM, y: room.y + box.y + RIM };
    const { width, height } = bounds(lying.piece.cutOutline);
    const window = { x: at.x - RIM, y: at.y - RIM, width: width + 2 * RIM, height: height + 2 * RIM };
    const drawn = drawTemplate(lying, pattern, { window, at, limit: window, taken: [] }, type, lying.piece.name);
    if (!outside) return drawn;
    const below = setWords(templateWords(lying, pattern), { x: at.x, y: at.y + height + 2 }, type);
    return [
      ...drawn.filter(({ name }) => !name.startsWith(`${lying.piece.name} words`)),
      ...below.map((shape) => ({ ...shape, name: `${lying.piece.name} ${shape.name}` })),
    ];
  });
  const text = lots.map(({ lying }) => spoken(templateWords(lying, pattern)));
  return {
    title: `Sheet ${index + 1}: ${labels.join(', ')}`,
    pieces: lots.flatMap(({ lying }) => namesOf(lying)),
    shapes,
    text,
  };
}

const labelOf = ({ all }: TemplatePiece): string => all.map(({ label }) => label).join(', ');
const namesOf = ({ all }: TemplatePiece): string[] => all.map(({ name }) => name);

function tileSheet({ lying, joints }: Tiled, one: Tile, pattern: Pattern, ground: TrueScale, type: Type): Sheet {
  const { piece } = lying;
  const { room } = ground;
  const cut = bounds(piece.cutOutline);
  const name = tileName(one);
  const onto = ({ x, y }: Point): Point => ({
    x: room.x + x - one.box.x,
    y: room.y + one.box.y + one.box.height - y,
  });
  const here = joints.filter(({ first, second }) => first === one || second === one);
  const joined = (upright: boolean, whole: boolean) =>
    here.some((joint) => joint.upright === upright && (joint.first === one) === whole) ? OVERLAP : 0;
  const limit = {
    x: room.x + joined(true, false),
    y: room.y + joined(false, false),
    width: room.width - joined(true, false) - joined(true, true),
    height: room.height - joined(false, false) - joined(false, true),
  };
  const drawn = drawJoints(here, one, onto, type, piece.name);
  const corner = nameInCorner(name, piece, limit, one, room, drawn.taken, type);
  const shown = {
    window: room,
    at: onto({ x: cut.x, y: cut.y + cut.height }),
    limit,
    taken: [...drawn.taken, letteringBox(corner)],
  };
  const others = here.map(({ first, second, upright }) => {
    const [other, side] =
      first === one ? [second, upright ? 'at the right' : 'below'] : [first, upright ? 'at the left' : 'above'];
    return `Sheet ${tileName(other)} joins it ${side}.`;
  });
  return {
    title: `Sheet ${name} of ${labelOf(lying)}: ${orderOf(lying.all, pattern.materials).replace(/^C/, 'c')}`,
    pieces: namesOf(lying),
    shapes: [...drawn.shapes, ...drawTemplate(lying, pattern, shown, type, piece.name), corner],
    text: [spoken(templateWords(lying, pattern)), ...others],
  };
}

/** The sheet's name, large, in a corner where no line of the piece runs. */
function nameInCorner(
  name: string,
  piece: Piece,
  limit: Box,
  one: Tile,
  room: Box,
  taken: readonly Box[],
  type: Type,
): TextShape {
  const size = 2 * type.small;
  const [right, low] = [limit.x + limit.width - 3, limit.y + limit.height - 3];
  const corners = [
    line('tile name', name, right, low, size, { anchor: 'end', strong: true }),
    line('tile name', name, right, limit.y + 3 + size, size, { anchor: 'end', strong: true }),
    line('tile name', name, limit.x + 3, low, size, { strong: true }),
    line('tile name', name, limit.x + 3, limit.y + 3 + size, size, { strong: true }),
  ] as const;
  const own = linesOf(piece);
  const free = corners.find((corner) => {
    const box = letteringBox(corner);
    const y = one.box.y + one.box.height - (box.y + box.height - room.y);
    const inPiece = { x: one.box.x + box.x - room.x - 1, y: y - 1, width: box.width + 2, height: box.height + 2 };
    return own.every((path) => cropped(path, inPiece).length === 0) && !taken.some((other) => meet(box, other));
  });
  return free ?? corners[0];
}

/** How to print, what is on which sheet, and a map of each piece that is joined. */
function frontPage(
  pieces: readonly Drawn[],
  sheets: readonly Sheet[],
  before: number,
  tiled: readonly Tiled[],
  findings: readonly string[],
  pattern: Pattern,
  type: Type,
): Block[] {
  const { set } = lengthWriter(pattern);
  const blocks: Block[] = [];
  if (pieces.length > 0) {
    blocks.push(
      ...paragraph(
        'Print all sheets at 100 % or “actual size”, never “fit to page”. Before you cut, measure the squares and lines at the foot of each sheet with your own ruler.',
        type,
      ),
      ...paragraph('A piece with straight sides can be cut by its measures too; its template is then the check.', type),
      ...(pieces.some(({ nest }) => nest)
        ? paragraph(
            'Each size has a line of its own: find yours in the legend, and follow it alone. These lines are cut lines; the seam allowance is inside them.',
            type,
          )
        : []),
    );
  }
  blocks.push(...findings.flatMap((finding) => paragraph(finding, type, { strong: true })));
  if (pieces.length > 0) {
    const on = (piece: Piece): string => {
      const pages = sheets.flatMap((sheet, i) => (sheet.pieces.includes(piece.name) ? [before + i + 1] : []));
      return pages.length < 2 ? `${pages[0]}` : `${pages[0]} to ${pages.at(-1)}`;
    };
    const bought = Object.values(pattern.pieces).filter((piece) => !takesTemplate(piece, pattern.materials));
    blocks.push(
      ...headingBlock('What is on which sheet', type),
      ...table(
        [
          { title: 'Piece', share: 3 },
          { title: 'Cut', share: 3.4 },
          { title: 'Cut size', share: 2.6 },
          { title: 'Pages', share: 1.6 },
        ],
        [...pieces, ...bought].map((piece) => {
          const largest = 'nest' in piece ? 'up to ' : '';
          const size = `${largest}${set(piece.size.width)} × ${set(piece.size.height)}`;
          const pages = bought.includes(piece) ? 'none: by its measure' : on(piece);
          return row([piece.label, cutOrder(piece, pattern.materials), size, pages]);
        }),
        type,
      ),
    );
  }
  if (tiled.length > 0) {
    blocks.push(
      ...headingBlock('Pieces joined from several sheets', type),
      ...paragraph(
        'Rows are lettered from the top, sheets in a row numbered from the left. Cut a sheet along the line at its left and upper side. Lay it on the same line of its neighbour, so that the diamonds with both names close. Tape them.',
        type,
      ),
      ...mapRows(tiled, type),
    );
  }
  return blocks;
}

/** Maps beside each other, as many as the width holds. */
function mapRows(tiled: readonly Tiled[], type: Type): Block[] {
  const rows: { map: Picture; left: number }[][] = [];
  let x = Infinity;
  for (const one of tiled) {
    const map = mapOf(one, type);
    if (x + map.width > type.width) {
      rows.push([]);
      x = 0;
    }
    rows.at(-1)!.push({ map, left: x });
    x += map.width + 8;
  }
  return rows.map((maps) => ({
    height: Math.max(...maps.map(({ map }) => map.height)) + 4,
    draw: (x, y) => maps.flatMap(({ map, left }) => map.draw(x + left, y)),
  }));
}

/** With a hair's breadth around. */
const grown = ({ x, y, width, height }: Box): Box => ({ x: x - 0.5, y: y - 0.5, width: width + 1, height: height + 1 });

type Picture = { width: number; height: number; draw: (x: number, y: number) => Shape[] };

/** A small picture of the sheets and the piece on them. */
function mapOf({ lying, tiling: { tiles } }: Tiled, type: Type): Picture {
  const left = Math.min(...tiles.map(({ box }) => box.x));
  const right = Math.max(...tiles.map(({ box }) => box.x + box.width));
  const low = Math.min(...tiles.map(({ box }) => box.y));
  const top = Math.max(...tiles.map(({ box }) => box.y + box.height));
  const least = (2.4 * type.small) / Math.min(...tiles.map(({ box }) => Math.min(box.width, box.height)));
  const scale = Math.min(100 / (top - low), type.width / (right - left), Math.max(0.07, least));
  const title = wrap(`${labelOf(lying)}: ${tiles.length} sheets`, type.small, Math.max(38, (right - left) * scale));
  const caption = (title.length + 0.4) * LEADING * type.small;
  return {
    width: Math.max((right - left) * scale, ...title.map((text) => letteringWidth(text, type.small))),
    height: caption + (top - low) * scale,
    draw(x, y) {
      const onto = (place: Point) => ({ x: x + (place.x - left) * scale, y: y + caption + (top - place.y) * scale });
      const frames = tiles.flatMap(({ box: { x, y, width, height } }) => {
        const corner = onto({ x, y: y + height });
        return box(corner.x, corner.y, width * scale, height * scale);
      });
      const prefix = `map of ${lying.piece.name}`;
      const outline = closed(lying.piece.cutOutline, onto);
      return [
        ...title.map((text, i) =>
          line(`${prefix} title ${i + 1}`, text, x, y + type.small * (1 + i * LEADING), type.small, { strong: true }),
        ),
        { kind: 'path', name: `${prefix} sheets`, role: 'leader', path: frames },
        { kind: 'path', name: `${prefix} piece`, role: 'stitch', path: outline },
        ...tiles.map((one) => {
          const { x, y, width, height } = one.box;
          const text = tileName(one);
          // In the middle, or beside it within the sheet's own part, where the piece's line does not strike it out.
          const shares = [0.5, 0.26, 0.74];
          const places = shares.flatMap((across) =>
            shares.map((up) => {
              const at = onto({ x: x + across * width, y: y + up * height });
              return line(`${prefix} ${text}`, text, at.x, at.y + 0.36 * type.small, type.small, { anchor: 'middle' });
            }),
          );
          const edges = [x + OVERLAP / 2, x + width - OVERLAP / 2].map((edge) => onto({ x: edge, y }).x);
          const free = places.find((place) => {
            const lettering = grown(letteringBox(place));
            const inside = lettering.x >= edges[0]! && lettering.x + lettering.width <= edges[1]!;
            return inside && cropped(outline, lettering).length === 0;
          });
          return free ?? places[0]!;
        }),
      ];
    },
  };
}
