/**
 * What an instructor may write in project.yaml and materials.yaml.
 *
 * The descriptions below are the authoring reference and, by way of JSON Schema, the hints an editor shows while
 * typing; keep them in the words of the trade. The schema looks at shapes only. Whether the numbers make sense is
 * for resolveProject, which can say so kindly and still show the rest of the project.
 *
 * Zod stays in this module, so that a browser never loads it: everything else imports types from here.
 */
import { z } from 'zod';
import { always, hardware, stepFields, verbIn, verbNamed, verbNames } from '../steps/index.ts';
import type { Field, Fields } from '../steps/index.ts';

const Text = z.string().min(1, { error: 'a few words belong here' });

const Names = z.union([Text, z.array(Text).min(1)]);

const Amount = z
  .union([Text, z.number()])
  .describe(
    'A length such as 4 1/2 or 11.4 cm, or a formula over named measures such as panel width - 2 * seam. ' +
      'A bare number is in the home edition’s unit. Inside a formula a length needs its unit: seam + 1/8 in.',
  )
  .meta({ id: 'Amount' });

const BothEditions = z
  .strictObject({
    in: Amount.optional().describe('The inch edition’s value; a bare number is inches.'),
    mm: Amount.optional().describe('The metric edition’s value; a bare number is millimetres.'),
    editions: Text.optional().describe('Why the two differ by more than a tenth, where they are meant to.'),
  })
  .describe('One length stated for both editions, each so that its own edition adds up: { in: 1/4, mm: 6 }.')
  .meta({ id: 'BothEditions' });

const Length = z
  .union([Amount, BothEditions])
  .describe('A length, a formula, or one length stated for both editions.')
  .meta({ id: 'Length' });

const Pair = z.tuple([Amount, Amount]);
const Size = z.tuple([Length, Length]).describe('Width first, then height: [8 1/2, 11].');

const Edges = z
  .union([Length, z.record(z.string(), Length)])
  .describe(
    'One length for all edges, or one for each edge by name: { top: 1/2, bottom: 0 }. ' +
      'The edges of a rectangle are bottom, right, top and left; “others” stands for the rest.',
  )
  .meta({ id: 'Edges' });

const MeasureFields = z
  .strictObject({
    in: Amount.optional().describe('Its value in the inch edition.'),
    mm: Amount.optional().describe(
      'Its value in the metric edition. With only one edition stated, the other is converted and moved to its grid.',
    ),
    editions: Text.optional().describe('Why in and mm differ by more than a tenth, where they are meant to.'),
    is: Amount.optional().describe('A formula over other measures, in place of in and mm.'),
    count: Amount.optional().describe('A whole number of things, such as pockets, in place of in and mm.'),
    number: Amount.optional().describe(
      'A plain number that counts nothing, such as a fullness of 1.5, in place of in and mm. A learner may change it where ' +
        'between and step stand beside it: { number: 1.5, between: [1.2, 2.5], step: 0.1 }.',
    ),
    between: z
      .union([
        Pair,
        z.strictObject({
          in: Pair.optional().describe('The range in the inch edition.'),
          mm: Pair.optional().describe('The range in the metric edition.'),
        }),
      ])
      .optional()
      .describe(
        'The least and the most a learner may choose, in the home edition or for both: { in: [2, 4], mm: [50, 100] }. ' +
          'A measure without it stays as it is.',
      ),
    step: Length.optional().describe(
      'How far one step of the slider goes. Left out, one mark of the ruler; of a plain number 0.1.',
    ),
    label: Text.optional().describe('What learners read: Width of your packets. Left out, the name.'),
    note: Text.optional().describe('Why it is that much, for whoever reads this file or asks.'),
  })
  .describe('A measure with its editions, its range for learners and its label.');

const Measure = z
  .union([Amount, MeasureFields])
  .describe('A length (seam: 1/4), a formula (panel width: card width + 2 * ease), or the fields below.')
  .meta({ id: 'Measure' });

const MaterialUse = z
  .union([
    Text,
    z.strictObject({
      use: Text.describe('An entry of content/materials.yaml.'),
      label: Text.optional().describe('What learners read: Print for the cover. Left out, the name of the role.'),
      count: Amount.optional().describe(
        'How many, for what is counted: snaps, zips, buttons. Left out, as many as the steps use.',
      ),
      repeat: Length.optional().describe(
        'Of a print: how far along the selvage until it begins again. The pieces named by match under cutting take the ' +
          'same place on it. Left out, no place on the cloth differs from another.',
      ),
      lining: z
        .boolean()
        .optional()
        .describe(
          'Whether this role is a lining, which drawings show in a tone of its own. Left out, what the material says.',
        ),
      note: Text.optional().describe('Advice for the shopping list.'),
      when: Names.optional().describe(
        'It is there only with this option, or this one of a choice, or all of several: flap. Of one choice any will do.',
      ),
      unless: Names.optional().describe(
        'It is there only without this option or this one of a choice, or without any of several.',
      ),
    }),
  ])
  .describe('An entry of content/materials.yaml, by name, or with a label and a count.');

const CornerShape = z
  .strictObject({
    at: z
      .union([Text, z.array(Text).min(1)])
      .optional()
      .describe('Which corners: bottom left, [top left, top right]. Left out, all of them.'),
    round: Length.optional().describe('Radius of the rounded corner, on the stitch line.'),
    'cut off': Length.optional().describe('How far along each edge the corner is cut away, on the stitch line.'),
  })
  .describe('A corner that is rounded or cut off. The stitch line is shaped; the cut line follows outside it.');

const Fold = z
  .strictObject({
    at: Length.describe('Distance from the raw edge.'),
    from: z.enum(['bottom', 'right', 'top', 'left']).optional().describe('The raw edge; bottom if left out.'),
    kind: z
      .enum(['mountain', 'valley'])
      .optional()
      .describe('Seen from the right side: a mountain stands up, a valley sinks. Valley if left out.'),
    label: Text.optional().describe('What the drawing says: hem fold.'),
  })
  .describe('A fold line across the piece.');

const Notch = z
  .strictObject({
    on: Text.describe('The edge, by name: top.'),
    at: z
      .union([z.literal('middle'), Length])
      .optional()
      .describe('Distance along the cut edge from its left or lower end, or the word middle: that of its stitch line.'),
    share: Amount.optional().describe(
      'In place of at, a share of its stitch line from 0 to 1: 1/4 is a quarter of the way along it. Round a circle it ' +
        'begins at the lowest point and goes against the clock.',
    ),
    label: Text.optional().describe('What is matched here.'),
  })
  .describe('A mark on the edge that is matched to another.');

const Dart = z
  .strictObject({
    on: Text.describe('The straight edge that it takes in, by name: top.'),
    at: z
      .union([z.literal('middle'), Length])
      .describe(
        'Distance along the cut edge from its left or lower end to the middle of the dart, or the word middle.',
      ),
    width: Length.describe(
      'What it takes in, between its legs on the stitch line; they run straight on to the cut edge.',
    ),
    length: Length.describe('From the stitch line to its point.'),
  })
  .describe('A dart: { on: top, at: 3, width: 3/4, length: 3 }.');

const OutlinePoint = z.union([
  z.tuple([Length, Length]),
  z.strictObject({
    at: z.tuple([Length, Length]).describe('The point: [across, up].'),
    edge: Text.optional().describe('Name of the edge from here to the next point.'),
    rise: Length.optional().describe('That edge is an arc: how far its middle rises out of the straight line.'),
    radius: Length.optional().describe('That edge is an arc of this radius, the shorter way.'),
    bends: z
      .enum(['out', 'in'])
      .optional()
      .describe('in: the arc goes into the piece, as at a neckline. out, also if left out: it makes the piece larger.'),
    'curve through': z
      .array(z.tuple([Length, Length]))
      .min(1)
      .optional()
      .describe('That edge is a smooth curve through these points: [[2, 1], [4, 1 1/2]]. It is made of arcs.'),
  }),
]);

const Pleats = z
  .strictObject({
    on: Text.optional().describe(
      'The straight edge that is pleated, by name: top. With it the pleats lie along that edge and are folded square to it, ' +
        'along the whole piece; without it they lie across the piece and make pockets.',
    ),
    kind: z
      .enum(['knife', 'box', 'inverted'])
      .optional()
      .describe(
        'Along an edge. knife: all folds face one way, and each pleat takes twice its depth. box: two folds face away from ' +
          'each other. inverted: two folds meet. Both take four times the depth.',
      ),
    count: Amount.optional().describe('Along an edge: how many pleats.'),
    to: Length.optional().describe(
      'Along an edge: its length between the stitch lines once it is pleated, in place of count or depth. A finished size ' +
        'says it already.',
    ),
    every: Length.optional().describe(
      'Along an edge: from the middle of one pleat to that of the next, in one group in the middle. Evenly over the edge if ' +
        'left out.',
    ),
    faces: z
      .enum(['left', 'right', 'up', 'down'])
      .optional()
      .describe(
        'Along an edge: where the folds of knife pleats point, seen from the right side; right, or up on an upright edge, if ' +
          'left out.',
      ),
    pockets: Amount.optional().describe('How many pockets.'),
    depth: Length.optional().describe(
      'From the fold at the pocket’s top down to the fold at its bottom; along an edge from the fold of a pleat in to the ' +
        'fold beneath it.',
    ),
    step: Length.optional().describe('From one pocket’s top to the next: what shows of each.'),
    lift: Length.optional().describe('From the bottom stitch line up to the lowest pocket’s bottom. None if left out.'),
    head: Length.optional().describe(
      'From the highest pocket’s top up to the raw edge, seam allowance included. Left out, the seam allowance alone.',
    ),
    height: Length.optional().describe(
      'Height of the folded panel from raw edge to raw edge. What the strip has more is trimmed off the top.',
    ),
    bottoms: z
      .enum(['stepped', 'level'])
      .optional()
      .describe(
        'stepped: all pockets equally deep, each higher than the last. ' +
          'level: all bottoms at one height, so that each pocket is deeper. Stepped if left out.',
      ),
    from: z
      .enum(['bottom', 'top'])
      .optional()
      .describe('The raw edge that the fold lines are measured from; bottom if left out.'),
    folds: z
      .array(Length)
      .min(2)
      .optional()
      .describe(
        'The fold lines themselves, in place of pockets, depth and step: distances from the raw edge named by from. ' +
          'They go mountain, valley, mountain, valley, starting at the bottom.',
      ),
  })
  .describe(
    'Pleats along an edge: { on: top, kind: box, count: 8, depth: 1 }. Or pleats across the piece that make stepped pockets: ' +
      'what you wish for, or the fold lines themselves.',
  );

const Piece = z
  .strictObject({
    from: Text.optional().describe('Its material: a role named under materials.'),
    cut: Amount.optional().describe('How many to cut; one if left out.'),
    size: Size.optional().describe('Cut size, seam allowances included.'),
    finished: Size.optional().describe(
      'Size between the stitch lines, in place of size; the allowance is added. Of a pleated piece, once it is folded.',
    ),
    outline: z
      .array(OutlinePoint)
      .min(3)
      .optional()
      .describe(
        'The stitch line of any other shape, point by point, in place of size: straight from point to point, or an arc or ' +
          'a smooth curve where the point says so.',
      ),
    'on fold': Text.optional().describe(
      'The straight edge of the outline that lies on the fold of the cloth: the outline is one half. The piece is drawn, ' +
        'laid and cut whole. An edge of the other half is called right for left and left for right, top for bottom and ' +
        'bottom for top, and else “other side” for side; one that crosses the fold is one edge.',
    ),
    circle: Length.optional().describe(
      'A round piece, in place of size: the diameter of its stitch line. Its edge is called edge.',
    ),
    'half circle': Length.optional().describe(
      'Half a round piece, in place of size: the length of its straight edge on the stitch line. Its edges are called ' +
        'bottom and curve.',
    ),
    like: Text.optional().describe(
      'Another piece whose cut shape this one takes, such as the fabric an interfacing is for.',
    ),
    mirrored: z
      .boolean()
      .optional()
      .describe(
        'With like: the mirror image of that piece, left for right, as the other of a pair: { from: outer, like: left front, ' +
          'mirrored: true }. An edge called left is called right there, a left armhole a right armhole.',
      ),
    inset: Edges.optional().describe('How much smaller than the piece it is like, at each edge. None if left out.'),
    allowance: Edges.optional().describe(
      'Seam allowance. Left out, the measure called seam if there is one, else none. A piece that is like another has none.',
    ),
    corners: z
      .union([CornerShape, z.array(CornerShape).min(1)])
      .optional()
      .describe('Corners that are not square.'),
    grain: z
      .enum(['lengthwise', 'crosswise', 'bias', 'any'])
      .optional()
      .describe(
        'lengthwise: the selvage runs along the piece’s height. crosswise: along its width. ' +
          'Lengthwise if left out; any for interfacing without a grain.',
      ),
    nap: z
      .enum(['up', 'any'])
      .optional()
      .describe('up: the pile or print must run the same way on this piece. Any if left out.'),
    'may be joined': z
      .union([z.boolean(), z.strictObject({ seam: Length.describe('The seam allowance of each join.') })])
      .optional()
      .describe(
        'A strip that is longer than the cloth is wide, such as a binding, is cut as several and joined: true, or ' +
          '{ seam: 3/8 } for joins of their own. Left out, the allowance of its short edges, or the measure called ' +
          'seam. On the bias (grain: bias) it is cut round and round from a square.',
      ),
    'cut by': z
      .enum(['teacher', 'maker'])
      .optional()
      .describe('In a class: teacher, where the pieces lie ready cut; maker if left out.'),
    meets: z
      .record(
        z.string(),
        z.union([
          Text,
          z.array(Text).min(1),
          z.strictObject({
            edges: z
              .union([Text, z.array(Text).min(1)])
              .describe('The edges it is sewn to, each after its piece: side bottom.'),
            eased: Length.describe('How much longer one may be than the other; it is eased in.'),
          }),
        ]),
      )
      .optional()
      .describe(
        'The edges that it is sewn to, by its own: { edge: side bottom } of a round base, { cap: [front armhole, back ' +
          'armhole] } of a sleeve. Their stitch lines are compared, straight or curved. What is eased in is said: ' +
          '{ cap: { edges: [front armhole, back armhole], eased: 1 } }.',
      ),
    darts: z
      .union([z.literal('the same'), z.array(Dart)])
      .optional()
      .describe(
        'Darts, which a step “dart” sews. Sizes are those of the piece as it is cut; on the stitch line its edge is shorter ' +
          'by the width of each. With like, “the same” stands for those of that piece: { like: front, mirrored: true, darts: the same }; ' +
          'left out, it has none.',
      ),
    notches: z.array(Notch).optional().describe('Marks on the edge that are matched to another.'),
    folds: z.array(Fold).optional().describe('Fold lines that are no pleats, such as a hem’s.'),
    pleats: Pleats.optional(),
    label: Text.optional().describe('What learners read. Left out, the name.'),
    note: Text.optional().describe('A word for the cutting list.'),
    when: Names.optional().describe(
      'It is there only with this option, or this one of a choice, or all of several: flap. Of one choice any will do.',
    ),
    unless: Names.optional().describe(
      'It is there only without this option or this one of a choice, or without any of several.',
    ),
  })
  .describe(
    'A piece to cut. Formulas can use its numbers by name: “pocket strip width”, “pocket strip length” (as cut), ' +
      '“pocket strip height” (as it lies, once pleated), “pocket strip finished width”, “pocket strip finished height”; ' +
      'of a pleated piece also “pocket strip fold 1”, “pocket strip pocket 1 depth”, “pocket strip pocket 1 top”, and of one ' +
      'pleated along an edge “skirt takeup”, “skirt pleat depth” and “skirt pleated edge”; of a ' +
      'circle, a half circle or an outline the length of an edge, “yoke neckline stitch line” and “yoke neckline cut line”, ' +
      'and of those and of a piece with shaped corners the length all round, “base stitch line” and “base cut line”.',
  )
  .meta({ id: 'Piece' });

const Hold = z
  .strictObject({
    what: Text.describe('What it is. With a published size, its name will do: an A7 card, an ISO/IEC 7810 ID-1 card.'),
    size: Size.optional().describe('Its size as it goes in, for things without a published size.'),
    in: Text.describe(
      'Where: every pocket of pocket strip, top pocket, pocket 2 of pocket strip, a piece, or behind a piece: between it and ' +
        'what it is sewn to.',
    ),
    ease: Length.optional().describe('Room wanted at each side of it. None if left out.'),
    cover: Amount.optional().describe(
      'The least share of its height that the pocket covers, from 0 to 1. One half if left out (common practice, no source).',
    ),
    turned: z.boolean().optional().describe('It goes in turned by a quarter, so that its height lies across.'),
    state: z
      .enum(['open', 'closed'])
      .optional()
      .describe(
        'open: before the folds that close the work in the end, where nothing holds them. closed: with them, as the ' +
          'last step leaves it. Open if left out.',
      ),
  })
  .describe('Something the finished work must hold; the kit checks that it fits.');

/** What an option or one of a choice may change. */
const changes = {
  adds: z.array(Text).optional().describe('Pieces and materials needed only with it.'),
  drops: z.array(Text).optional().describe('Pieces and materials not needed with it.'),
  measures: z.record(z.string(), Length).optional().describe('Measures that are different with it.'),
  materials: z
    .record(
      z.string(),
      z.union([
        Text,
        z.strictObject({
          use: Text.describe('An entry of content/materials.yaml.'),
          label: Text.optional().describe('What learners read. Left out, the label of the role.'),
        }),
      ]),
    )
    .optional()
    .describe('Roles that another material plays with it: { outer: faux leather }.'),
  note: Text.optional().describe('What it changes, in a sentence.'),
};

const Option = z
  .strictObject({
    label: Text.optional().describe('What learners read beside the tick box: With the flap.'),
    default: z.boolean().optional().describe('Whether the lesson starts with it. Off if left out.'),
    ...changes,
  })
  .describe('A feature that a learner may leave out or take in.');

const Choice = z
  .strictObject({
    label: Text.optional().describe('What learners read above the choice: The back. Left out, the name.'),
    default: Text.optional().describe('The one that the lesson is written for. Left out, the first.'),
    note: Text.optional().describe('What is chosen, in a sentence.'),
    'one of': z
      .record(
        z.string(),
        z
          .strictObject({ label: Text.optional().describe('What learners read. Left out, its name.'), ...changes })
          .nullable()
          .describe('One of them, and what it changes.'),
      )
      .describe('By name, at least two. Steps, pieces and materials name the chosen one by “when” and “unless”.'),
  })
  .describe('One of several that a learner chooses: { zip pocket: { adds: [zip] }, plain: {} }.');

const Sizes = z
  .strictObject({
    label: Text.optional().describe('What learners read above the choice. Left out, Size.'),
    default: z
      .union([Text, z.number()])
      .optional()
      .describe(
        'The size that the lesson is written for. Left out, the one that the measures agree with, else the first.',
      ),
    note: Text.optional().describe('How one finds one’s size, in a sentence.'),
    of: z
      .record(z.string(), z.record(z.string(), Length))
      .describe(
        'Each size with its measures, as under measures: { small: { waist: 26 }, large: { waist: { in: 34, mm: 860 } } }. ' +
          'Every size gives the same measures; those need no value of their own.',
      ),
  })
  .describe('One choice over several measures. A slider of one of them goes on from the chosen size.');

const Grid = z
  .strictObject({
    in: z.enum(['1/8', '1/16', '1/32']).optional().describe('The inch ruler’s marks; 1/16 if left out.'),
    mm: z
      .union([z.literal(1), z.literal(0.5), z.literal(0.1)])
      .optional()
      .describe('The metric ruler’s marks in mm; 1 if left out.'),
  })
  .describe('The marks that both editions are measured to.');

/** What stands in the file for a field of a step. */
function stepField(field: Field): z.ZodType {
  switch (field.kind) {
    case 'work':
    case 'text':
    case 'material':
      return Text;
    case 'options':
      return z.union([Text, z.array(Text).min(1)]);
    case 'works':
    case 'names': {
      // The reader of steps refuses one too many: it knows what belongs between the others.
      const { least } = field;
      if (least === undefined) return z.union([Text, z.array(Text).min(1)]);
      return least === 0 ? z.array(Text) : z.array(Text).min(least);
    }
    case 'edges':
      return z.union([Text, z.array(Text).min(1)]);
    case 'choice':
      return z.enum(field.words);
    case 'yes':
      return z.boolean();
    case 'whole':
      return z.int().positive();
    case 'count':
      return Amount;
    case 'grid':
      return z.array(z.union([Text, z.array(Text).min(1)])).min(1);
    case 'number':
      return z.number().positive();
    case 'length':
      return Length;
    case 'size':
      return Size;
    case 'point':
      return z.tuple([Length, Length]);
    case 'group':
      return z.strictObject(stepShape(field.fields));
  }
}

/** A field that several verbs have, each in its way: the reader of steps holds each against its own verb. */
function sharedField(fields: readonly Field[]): z.ZodType {
  const kinds = new Set(fields.map(({ kind }) => kind));
  const has = (...some: Field['kind'][]) => some.some((kind) => kinds.has(kind));
  if (kinds.size === 1 && !has('text')) return stepField(fields[0]!);
  // The reader knows whether a number goes with the verb at all.
  const one = has('length', 'point') ? Length : z.union([Text, z.number()]);
  return has('edges', 'point', 'works', 'names') ? z.union([one, z.array(one).min(1)]) : one;
}

const stepShape = (fields: Fields): Record<string, z.ZodType> =>
  Object.fromEntries(
    Object.entries(fields).map(([name, field]) => {
      const schema = stepField(field).describe(field.about);
      return [name, field.optional ? schema.optional() : schema];
    }),
  );

/** Of a value whose names depend on one another: those that go with what stands there, and those to begin with. */
export const namesBeside = z.registry<{
  of(value: Readonly<Record<string, unknown>>): readonly string[];
  first: readonly string[];
}>();

/** One making step. Which field goes with which verb is told by readSteps, in kinder words than a schema has. */
const Step = z
  .strictObject({
    ...Object.fromEntries(
      stepFields.map(({ name, about, fields }) => [name, sharedField(fields).optional().describe(about)]),
    ),
    ...stepShape(always),
  })
  .describe('One making step: a verb of the trade, what it is done to, and how.')
  .meta({ id: 'Step' })
  .register(namesBeside, {
    first: verbNames,
    of: (step) => {
      const verb = verbIn(step);
      return [
        ...(verb ? Object.keys(verbNamed(verb).fields) : stepFields.map(({ name }) => name)),
        ...Object.keys(always),
      ];
    },
  });

const within = Length.describe(
  'How far off it may be, where the size is not exact but about that. Left out, it is exact.',
);

const FinishedSize = z.strictObject({ width: Length, height: Length, within: within.optional() });

/** project.yaml: the numbers of one project. */
export const ProjectFile = z
  .strictObject({
    title: Text.describe('Name of the project, as learners read it.'),
    summary: Text.optional().describe('One or two sentences: what it is and what it holds.'),
    level: z.enum(['first steps', 'some experience', 'experienced']).optional().describe('Who can make it.'),
    units: z
      .enum(['inch', 'metric'])
      .optional()
      .describe('Home edition: what a number without a unit means. Inch if left out.'),
    grid: Grid.optional(),
    measures: z
      .record(z.string(), Measure)
      .describe('Every number of the project, by name. Names may hold spaces: packet width.'),
    materials: z
      .record(z.string(), MaterialUse)
      .optional()
      .describe('What it is made of: a role in this project (outer, lining), and the material that plays it.'),
    pieces: z.record(z.string(), Piece).describe('What to cut, by name.'),
    holds: z.array(Hold).optional().describe('What the finished work must hold.'),
    options: z.record(z.string(), Option).optional().describe('Features to choose, by name: each a yes or no.'),
    choices: z.record(z.string(), Choice).optional().describe('Features of which one of several is chosen, by name.'),
    sizes: Sizes.optional(),
    steps: z.array(Step).optional().describe('How it is made, step by step.'),
    washed: z
      .boolean()
      .optional()
      .describe(
        'true where the finished work will be washed: raw edges that fray, and stay where water and wear get at them, are ' +
          'found. Left out, nobody looks for them.',
      ),
    cutting: z
      .strictObject({
        manner: z
          .enum(['free', 'straight cuts'])
          .optional()
          .describe(
            'free: with scissors round each piece. straight cuts: with a rotary cutter and a ruler, from edge to edge. ' +
              'Straight cuts if left out: whoever has scissors can cut so too.',
          ),
        gap: Length.optional().describe('Between neighbouring pieces. None if left out.'),
        edge: Length.optional().describe('Left free along every edge of the cloth. None if left out.'),
        match: z
          .array(
            z
              .strictObject({
                pieces: z
                  .array(Text)
                  .min(1)
                  .describe('Pieces cut from one cloth, by name. Of a piece that is cut twice, both are matched.'),
                at: z
                  .array(Length)
                  .optional()
                  .describe(
                    'For each of the pieces how far above its lower cut edge the print is the same. ' +
                      'Left out, at the lower cut edges.',
                  ),
              })
              .describe('Pieces on which the print goes on from one to the next.'),
          )
          .optional()
          .describe(
            'Where the print is matched: [{ pieces: [front, back], at: [2, 2 1/2] }]. The cloth’s repeat stands under ' +
              'materials. Such pieces are never turned by a half, and more cloth may be needed.',
          ),
      })
      .optional()
      .describe('How the pieces are laid on the cloth; the length to buy follows from it.'),
    machine: z
      .strictObject({
        lifts: Length.describe('The thickest stack that goes under its presser foot.'),
        source: Text.optional().describe('Where the value comes from.'),
      })
      .optional()
      .describe(
        'The sewing machine the course is taught on. Left out, one that lifts 5 mm (common practice, no source).',
      ),
    finished: z
      .strictObject({
        of: Text.optional().describe('What is measured: folio. Left out, what the last step makes.'),
        width: Length.optional().describe('Its width as the last step leaves it.'),
        height: Length.optional().describe('Its height as the last step leaves it.'),
        within: within.optional(),
        open: FinishedSize.optional().describe(
          'Its size as it lies open: before the folds that close it in the end, where nothing holds them.',
        ),
        closed: FinishedSize.extend({
          thickness: Length.optional().describe(
            'How thick it is at its thickest place, from the materials’ thickness.',
          ),
        })
          .optional()
          .describe('Its size with those folds, in place of width and height.'),
      })
      .optional()
      .describe(
        'The finished size this project promises: { of: folio, width: 6, height: 8 }, or open and closed: { open: { width: 12, ' +
          'height: 8 }, closed: { width: 6, height: 8 } }.',
      ),
  })
  .describe('One sewing project.')
  .meta({ id: 'Project' });
export type ProjectFile = z.output<typeof ProjectFile>;
export type StepFile = z.output<typeof Step>;

const Sourced = {
  source: Text.describe(
    'Where the value comes from; “common practice, no source” and “from memory” are honest answers.',
  ),
};

const MaterialEntry = z
  .strictObject({
    kind: z
      .enum(['cloth', 'interfacing', 'batting', 'by length', 'thread', 'hardware'])
      .describe(
        'What it is. by length: cord, elastic, webbing, ribbon, piping cord. A piece of it is as wide as the goods: ' +
          '{ from: cord, size: [2 * bag width + 12 in, 1/4 in], allowance: 0 in }, bought by its length, and need not be taken in a step.',
      ),
    label: Text.optional().describe('What learners read. Left out, the name.'),
    thickness: z
      .strictObject({ mm: z.number().positive(), ...Sourced })
      .optional()
      .describe('Thickness of one layer, or of a button, in mm.'),
    width: z
      .strictObject({ in: Amount, mm: Amount, ...Sourced })
      .optional()
      .describe('Usable width between the selvages, for both editions.'),
    nap: z.enum(['none', 'one way']).optional().describe('one way: pile or print has a direction. None if left out.'),
    heat: z
      .strictObject({ celsius: z.number().positive(), ...Sourced })
      .optional()
      .describe('The hottest iron it takes, in degrees Celsius.'),
    fuses: z
      .strictObject({
        celsius: z.number().positive(),
        seconds: z.number().positive().optional().describe('How long the iron stays on one place, in seconds.'),
        cools: z.number().positive().optional().describe('How long it then lies still until it is cold, in seconds.'),
        ...Sourced,
      })
      .optional()
      .describe(
        'Of interfacing: how hot the iron must be for it to fuse, in degrees Celsius, and for how long. What is left out ' +
          'learners take from its maker’s sheet.',
      ),
    lining: z.boolean().optional().describe('Of cloth: true if it is made to line things. False if left out.'),
    hardware: z
      .enum(hardware)
      .optional()
      .describe(
        'Of hardware: what it is, which tells how it is set, with which tools, and how it is drawn. Left out, its steps have ' +
          'the cautions of a snap and of a magnet.',
      ),
    across: z
      .strictObject({ in: Amount, mm: Amount, ...Sourced })
      .optional()
      .describe(
        'Of a button its diameter, for both editions; with its thickness it is as long as its buttonhole. Of a ring, a slider ' +
          'or a hook the widest strap that goes through. Of a zip the width of both tapes, closed.',
      ),
    stops: z
      .strictObject({ in: Amount, mm: Amount, ...Sourced })
      .optional()
      .describe(
        'Of a zip: how far its stops are from the ends of its tapes, for both editions. Its teeth run between them; a piece of ' +
          'it is as long as its tapes.',
      ),
    teeth: z.enum(['metal', 'plastic']).optional().describe('Of a zip: metal teeth are never sewn over.'),
    holes: z
      .enum(['close', 'stay'])
      .optional()
      .describe(
        'Whether holes of pins and needles close again. stay: leather, vinyl, coated cloth. Close if left out.',
      ),
    frays: z
      .boolean()
      .optional()
      .describe(
        'Of cloth: false where a raw edge does not fray, as of felt, leather and coated cloth. True if left out.',
      ),
    needle: z
      .enum(['universal', 'jeans', 'leather'])
      .optional()
      .describe(
        'The point of the needle that goes through it well: jeans for denim and canvas, leather for leather (not for ' +
          'vinyl, which it cuts). Left out, universal, and jeans where the needle is NM 100 or thicker.',
      ),
    shrinks: z
      .strictObject({
        percent: z.number().min(0).max(50).describe('Of its length, along the selvage.'),
        across: z
          .number()
          .min(0)
          .max(50)
          .optional()
          .describe(
            'Of its width. Left out, as much as of its length. 0 where the width is already that of washed cloth.',
          ),
        ...Sourced,
      })
      .optional()
      .describe('How much shorter and narrower it comes out of the first wash. Left out, it does not shrink.'),
    ends: BothEditions.optional().describe(
      'Of goods by length: what each end of a piece loses, where it is knotted, sealed or turned in. Nothing if left out.',
    ),
    straightening: BothEditions.optional().describe(
      'What is lost where the shop’s end is cut straight. Left out, 1 in or 25 mm (common practice, no source).',
    ),
    sold: z
      .strictObject({
        by: z.enum(['length', 'spool', 'pack', 'piece']).describe('How the shop counts it.'),
        each: z
          .union([BothEditions, z.int().positive()])
          .optional()
          .describe('The length the shop cuts in steps of, the thread on a spool, or how many a pack holds.'),
      })
      .optional()
      .describe('How it is sold.'),
    price: z
      .strictObject({
        amount: z.number().min(0, { error: 'a price cannot be less than nothing.' }).describe('4.20'),
        currency: z
          .string()
          .regex(/^[A-Z]{3}$/, { error: 'three capitals belong here, such as EUR or USD' })
          .optional()
          .describe('EUR, USD, GBP. Left out, the currency of site.yaml.'),
        per: Text.describe('What the amount buys: 1 m, 1/2 yd, spool, pack, piece.'),
      })
      .optional()
      .describe('What it costs, for the shopping list of a class.'),
    note: Text.optional().describe('A word for the shopping list.'),
  })
  .meta({ id: 'Material' });

/** content/materials.yaml: cloth, interfacing, thread and hardware, by name. */
export const MaterialsFile = z.record(z.string(), MaterialEntry);
export type MaterialsFile = z.output<typeof MaterialsFile>;
