/** Drafts from what is said in a recording: a lesson in the author's own words, and where there is none yet its project. */
import { inEditions } from '../../components/words/recording/view.ts';
import { cautions as usual } from '../../components/words/caution/cautions.ts';
import {
  alignSteps,
  capital,
  checkAll,
  clockTime,
  courseWords,
  editionSpoken,
  formatLength,
  lengthsIn,
  makeUp,
  misheard,
  MM_PER_INCH,
  sentences,
  spokenSizes,
  SURE_STEP,
  type Edition,
  type SpokenLength,
  type SpokenLine,
  type SpokenSentence,
  type SpokenSize,
  type Step,
} from '../core/index.ts';
import { ProjectFile, type MaterialsFile } from '../core/project/schema.ts';
import { schemaLine } from '../site/content/editor-files.ts';
import { readYaml } from '../site/content/located-yaml.ts';
import { inYaml } from './blanks.ts';
import { beginsAnew, stepSaid } from './steps-said.ts';

export type DraftOf = {
  /** Of the lesson. */
  title: string;
  /** The recording's name, for `<Recording>`. */
  name: string;
  lines: readonly SpokenLine[];
  glossary: Iterable<string>;
  /** The project whose numbers the lesson uses; its folder name where the course names another. */
  project: { file: ProjectFile; materials: MaterialsFile; named?: string | undefined } | undefined;
  edition: Edition;
};

/** A text of somebody's as a lesson holds it: none of its signs means anything. */
const inLesson = (text: string): string => text.replace(/[\\`*_{}[\]<>#|~$&]/g, '\\$&');
/** The same in a comment. */
const inComment = (text: string): string => text.replaceAll('*/', '* /').replaceAll('`', '’');

/**
 * A draft lesson: headings from the steps, what was said at each in sentences, its sizes as `<Size>`, cautions in place.
 * What is unsure stands in a comment that begins with “decide”.
 */
export function draftLesson({ title, name, lines, glossary, project, edition }: DraftOf): string {
  const minutes = Math.max(1, Math.ceil((lines.at(-1)?.to ?? 0) / 60));
  const top = ['---', `title: ${inYaml(title)}`, ...(project?.named ? [`project: ${project.named}`] : [])];
  top.push('summary: What a maker finds out here. Write one or two sentences.', `minutes: ${minutes}`, '---');
  const parts = [
    top.join('\n'),
    '{/* Drafted from a recording, in the words that were said. Wherever a comment says “decide”, you do. */}',
  ];
  const said = sentences(lines);
  if (!project) {
    parts.push(...said.map(({ text }) => inLesson(text)));
    return `${parts.join('\n\n')}\n`;
  }
  parts.push(`<Recording name="${name}" />`);
  const patterns = inEditions(project.file, project.materials);
  const words = courseWords(patterns[edition], glossary);
  const steps = makeUp(patterns[edition]);
  const spoken = editionSpoken(lines.map(({ text }) => text).join(' '), edition);
  const told = alignSteps(lines, spoken === edition ? steps : makeUp(patterns[spoken]), words);
  const sizes = spokenSizes(lines, patterns);
  const heard = misheard(lines, words);
  const warned = new Set<string>();

  const written = (sentence: SpokenSentence): string => {
    const own = sizes.filter(({ start }) => start >= sentence.start && start < sentence.end);
    const asks = heard.flatMap(({ heard, meant, where }) =>
      where.some(({ from }) => from >= sentence.from && from < sentence.to)
        ? [`“${heard}” may have been “${meant}”`]
        : [],
    );
    return withSizes(sentence, own, asks);
  };
  const stretchAt = (second: number) => told.findLast(({ from, to }) => from <= second && second < to);
  const firstOf = new Map(told.filter(({ again }) => !again).map((one) => [one.step, one]));
  const spokenIn = (stretch: (typeof told)[number]) => said.filter(({ from }) => stretchAt(from) === stretch);

  const isNamed = ({ place }: Step) =>
    typeof (project.file.steps?.[Number(place[1])] as { id?: unknown } | undefined)?.id === 'string';
  if (!steps.every(isNamed))
    parts.push(
      '{/* decide: a step without an id in the project file has no <Step> here. Give it one there (id: hem), and write <Step id="hem"> round its words. */}',
    );
  const before = said.filter(({ from }) => told.every((one) => from < one.from));
  parts.push(...before.map(written));
  for (const step of steps) {
    const stretch = firstOf.get(step.id);
    const cautions = step.cautions.filter((key) => !warned.has(key) && usual[key] !== undefined);
    for (const key of cautions) warned.add(key);
    parts.push(`## ${inLesson(step.title)}`);
    if (!stretch) parts.push(`{/* decide: nobody says this step in the recording. */}`);
    else if (stretch.sure < SURE_STEP)
      parts.push(
        `{/* decide ${clockTime(stretch.from)}: is it really this step that is told from here to ${clockTime(stretch.to)}? */}`,
      );
    parts.push(...cautions.map((key) => `<Caution of="${key}" />`));
    const words = stretch ? spokenIn(stretch).map(written) : [];
    // A step without an id cannot be named in a lesson: its words alone stand there.
    if (!isNamed(step)) parts.push(...words);
    else
      parts.push(
        words.length > 0 ? `<Step id="${step.id}">\n\n${words.join('\n\n')}\n\n</Step>` : `<Step id="${step.id}" />`,
      );
    for (const again of told.filter((one) => one.again && one.step === step.id)) {
      parts.push(`{/* decide ${clockTime(again.from)}: this step is told a second time. Keep what helps. */}`);
      parts.push(...spokenIn(again).map(written));
    }
    // What was said before the next step began, and belongs to none.
    const next = stretch ? (told[told.indexOf(stretch) + 1]?.from ?? Infinity) : Infinity;
    if (stretch) {
      const between = said.filter(({ from }) => from >= stretch.to && from < next && stretchAt(from) === undefined);
      parts.push(...between.map(written));
    }
  }
  return `${parts.join('\n\n')}\n`;
}

/** A sentence with its sizes as lesson words, and below it what is to decide. */
function withSizes(sentence: SpokenSentence, sizes: readonly SpokenSize[], asked: readonly string[]): string {
  const { text } = sentence;
  const asks = [...asked];
  let out = '';
  let at = 0;
  for (const size of sizes) {
    // A capital may have been set since.
    const found = text.toLowerCase().indexOf(size.text.toLowerCase(), at);
    const named = size.measures.flatMap((measure) => (measure ? [measure.formula] : []));
    if (size.asks !== undefined) asks.push(size.asks);
    if (found < 0 || !size.certain || named.length !== size.values.length) {
      if (size.asks === undefined) asks.push(unsure(size, named));
      continue;
    }
    out += inLesson(text.slice(at, found)) + asWords(size.text, named);
    at = found + size.text.length;
  }
  out += inLesson(text.slice(at));
  return [out, ...asks.map((ask) => `{/* decide ${clockTime(sentence.from)}: ${inComment(ask)} */}`)].join('\n\n');
}

/** Behind a first side: 17 wide and 11 long. */
const BETWEEN = /\b(?:wide|white|width|long|length|tall|high|deep|across) (?:and|by)\b/u;

/** Measures in place of what was said, with the words between two sides. */
function asWords(said: string, named: readonly string[]): string {
  const sizes = named.map((formula) => `<Size of="${formula}" />`);
  // Seven inches square: a side that is said once.
  if (sizes.length > 1 && sizes.every((one) => one === sizes[0]) && !/\b(?:by|and|x)\b|×/u.test(said)) return sizes[0]!;
  return sizes.join(` ${BETWEEN.exec(said)?.[0].replace('white', 'wide') ?? 'by'} `);
}

function unsure({ text, otherMeasures }: SpokenSize, named: readonly string[]): string {
  const others = [...named, ...otherMeasures.flat().map(({ formula }) => formula)].slice(0, 4);
  return others.length === 0
    ? `“${text}” is no measure of the project`
    : `“${text}” may be ${others.map((one) => `<Size of="${one}" />`).join(' or ')}`;
}

/** Names of what is cut. Common practice, no source. */
const PIECE =
  /\b((?:\p{L}+ )?(?:panel|strip|pocket|flap|lining|facing|cover|strap|handle|base|gusset|sleeve|yoke|binding|interfacing|rectangle|square|circle|tab|cuff|collar|band|waistband|skirt|tie|loop|fob|batting|backing|border|hood|wing|block))s?\b/giu;
const NO_PART =
  /^(?:inch|inches|the|a|an|your|my|this|that|these|those|of|to|on|in|at|and|or|two|three|four|one|both|each|every|for|with|from|right|wrong|all|it|is|are|its|our|over|into|sew|fold|press|cut|pin|baste|turn|take|lay|put|fuse|attach|clip|topstitch|then|now|so|other|first|second|next|same|whole|big|little|side)$/i;
/**
 * A draft project: the pieces, sizes and steps that were said, each with the second at which it was. What is missing
 * stands as a question in a comment.
 */
export function draftProject(id: string, title: string, lines: readonly SpokenLine[], home: Edition): string {
  const lengths = lengthsIn(lines, home).filter(({ takenBack }) => !takenBack);
  const said = sentences(lines);
  const metric = lengths.filter(({ edition }) => edition === 'metric').length;
  const units: Edition = metric * 2 > lengths.length ? 'metric' : 'inch';
  // What lies between two marks is written in full: nothing is rounded here.
  const length = (mm: number, edition: Edition) => {
    const written = formatLength(mm, edition).replace(/[\u00a0\u2009\u202f]/g, ' ');
    if (/^[\d /]+ [a-z]+$/.test(written)) return written;
    return edition === 'inch' ? `${+(mm / MM_PER_INCH).toFixed(4)} in` : `${+mm.toFixed(2)} mm`;
  };

  const measures: Drafted[] = [];
  const sized = new Map<string, string>();
  const joined = lines.map(({ text }) => text).join(' ');
  for (const { values, edition, kind, from, start, end, asks, text } of lengths) {
    const before = joined.slice(0, start).trim();
    const behind = joined.slice(end).trim();
    const quoted = [...before.split(' ').slice(-9), text, ...behind.split(' ').slice(0, 5)].join(' ').trim();
    const at = `${clockTime(from)} “… ${inComment(quoted)} …”`;
    // What is named last before a size is what has it.
    const piece =
      piecesIn(before.split(' ').slice(-14).join(' ')).at(-1) ?? piecesIn(behind.split(' ').slice(0, 3).join(' '))[0];
    const question = asks === undefined ? '' : ` ${asks}`;
    if (kind === 'pair' && values.length === 2 && piece !== undefined && !sized.has(piece)) {
      const both = values.map((mm) => length(mm, edition)).join(', ');
      const count = countOf(before, piece);
      sized.set(
        piece,
        `  # ${at} Is this with the seam allowance?${question}\n  ${piece}:\n    label: ${inYaml(capital(piece))}\n${count > 1 ? `    cut: ${count}\n` : ''}    size: [${both}]`,
      );
      continue;
    }
    if (values.length !== 1 || kind === 'range') continue;
    const name = nameFor(before, behind, piece);
    const known = measures.find(
      (one) =>
        one.edition === edition && Math.abs(one.mm - values[0]!) < 0.05 && (!one.name || !name || one.name === name),
    );
    if (known) {
      known.name ??= name;
      known.said.push(at);
      if (asks !== undefined) known.asks.add(asks);
    } else
      measures.push({
        name,
        from,
        edition,
        mm: values[0]!,
        said: [at],
        asks: new Set(asks === undefined ? [] : [asks]),
      });
  }
  const named = new Map<string, number>();
  for (const { text, from } of said) for (const piece of piecesIn(text)) if (!named.has(piece)) named.set(piece, from);
  const unsized = [...named].filter(([piece]) => !sized.has(piece));
  const measured = measuresNamed(measures);
  const top = [
    schemaLine(`content/projects/${id}/project.yaml`, 'project'),
    '# Drafted from a recording: what was said, with its time. What is missing is asked.',
    `title: ${inYaml(title)}`,
    `units: ${units}`,
    '',
    '# Which of these may learners change? Give those a range: between: { in: [3, 6], mm: [75, 150] }',
    ...(measured.length > 0
      ? ['measures:', ...measured.flatMap((one) => measureText(one, length))]
      : ['# No single size was said.', 'measures: {}']),
    '',
    '# From which cloth is each cut? Say so under materials, and write from: outer.',
    ...(sized.size > 0 ? ['pieces:', ...sized.values()] : ['# No piece was said with both its sides.', 'pieces: {}']),
    ...unsized.map(([piece, from]) => `  # ${piece}: named at ${clockTime(from)}. How wide and how high is it cut?`),
    '',
  ];
  const steps = stepsSaid({
    said,
    lengths,
    pieces: [...sized.keys()],
    written: (mm, edition) => {
      const own = measured.filter((one) => one.edition === edition && Math.abs(one.mm - mm) < 0.05);
      return own.length === 1 && own[0]!.edition === units ? own[0]!.called : length(mm, edition);
    },
    isRight: (lines) => errorsIn([...top, ...lines].join('\n')) <= errorsIn(top.join('\n')),
  });
  return [...top, ...steps, ''].join('\n');
}

/** How many mistakes a project file has; without end where it cannot be read. */
function errorsIn(text: string): number {
  const file = readYaml(text, ProjectFile, 'project.yaml').value;
  return file ? checkAll(file, {}).filter(({ severity }) => severity === 'error').length : Infinity;
}

/** As many sentences behind one may still tell of its sizes. */
const BEHIND = 3;

type StepsOf = {
  said: readonly SpokenSentence[];
  lengths: readonly SpokenLength[];
  pieces: readonly string[];
  written: (mm: number, edition: Edition) => string;
  isRight: (lines: readonly string[]) => boolean;
};

/**
 * The steps that were said: real ones where verb, works, sides and sizes were heard for sure and the project is right with
 * them, and comments with what is to be asked where not.
 */
function stepsSaid({ said, lengths, pieces, written, isRight }: StepsOf): string[] {
  const lines: string[] = [];
  const ids = new Map<string, number>();
  let real = 0;
  for (const [i, { text, from, start, end }] of said.entries()) {
    const next = said.findIndex((one, k) => k > i && (k > i + BEHIND || beginsAnew(one.text, pieces)));
    const until = said[next]?.start ?? Infinity;
    const told = stepSaid({
      ...{ text, pieces },
      behind: lengths.filter((one) => one.start >= end && one.start < until && one.values.length === 1),
      lengths: lengths
        .filter((length) => length.start >= start && length.end <= end)
        .map((length) => ({ said: length, written: written(length.values[0]!, length.edition) })),
    });
    if (!told) continue;
    const at = `  # ${clockTime(from)} ${inComment(text)}`;
    if (!told.sure) {
      lines.push(at, `  #   - { ${told.verb}: ${told.piece ?? '?'} } ${told.asks}`);
      continue;
    }
    const works = Object.values(told.step)[0]!;
    const name = `${told.verb}-${typeof works === 'string' ? works : works[0]!}`.replaceAll(' ', '-');
    const count = (ids.get(name) ?? 0) + 1;
    const id = count === 1 ? name : `${name}-${count}`;
    const fields = Object.entries(told.step).map(([field, value]) => `${field}: ${inFlow(value)}`);
    const step = `{ ${[`id: ${id}`, ...fields].join(', ')} }`;
    if (isRight(['steps:', ...lines, `  - ${step}`])) {
      ids.set(name, count);
      lines.push(at, ...told.asks.map((ask) => `  #   ${ask}`), `  - ${step}`);
      real++;
    } else lines.push(at, `  #   - ${step} The work cannot be done so here. What is missing before it?`);
  }
  const asked =
    '# Steps as they were said. What was not heard for sure stands in a comment: which verb, piece, side and size is it?';
  if (real > 0) return [asked, 'steps:', ...lines];
  return [asked, '# steps:', ...lines.map((line) => line.replace(/^ {2}# ?/u, '#   '))];
}

const inFlow = (value: string | readonly string[]): string =>
  typeof value === 'string' ? inYaml(value) : `[${value.map(inYaml).join(', ')}]`;

/** “The front is …”, “your back piece”: elsewhere front and back are sides. */
const FRONT_OR_BACK = /\b(?:the|your|my|a) (front|back)(?= (?:is|are|piece|panel|that['’]?s|and the)\b)/giu;

function piecesIn(text: string): string[] {
  const all = [...text.matchAll(PIECE), ...text.matchAll(FRONT_OR_BACK)].toSorted((a, b) => a.index - b.index);
  const found = all.map(([, name = '']) => {
    const words = name.toLowerCase().split(' ');
    return words.length > 1 && NO_PART.test(words[0]!) ? words.slice(1).join(' ') : words.join(' ');
  });
  // A square may be what something looks like.
  return [...new Set(found)].filter((name) => !/^(?:square|circle|rectangle)$/.test(name));
}

/** A size that was said, once or several times. */
type Drafted = {
  name: string | undefined;
  from: number;
  edition: Edition;
  mm: number;
  said: string[];
  asks: Set<string>;
};

/** As many of the places where a size was said are quoted. */
const QUOTED = 3;

type Named = Drafted & { called: string };

/** The sizes that were said, each under one name. */
function measuresNamed(measures: readonly Drafted[]): Named[] {
  const used = new Set<string>();
  return measures.flatMap((measure) => {
    const unnamed = unnamedAt(measure);
    const called = measure.name !== undefined && !used.has(measure.name) ? measure.name : unnamed;
    if (used.has(called)) return [];
    used.add(called);
    return [{ ...measure, called }];
  });
}

const unnamedAt = ({ from }: Drafted): string => `size at ${clockTime(from).replaceAll(':', ' ')}`;

function measureText(measure: Named, length: (mm: number, edition: Edition) => string): string[] {
  const { called, edition, mm, said, asks } = measure;
  const value = edition === 'inch' ? length(mm, 'inch').replace(/ in$/, '') : String(Math.round(mm * 10) / 10);
  const more = said.length > QUOTED ? [`  # and ${said.length - QUOTED} times more`] : [];
  return [
    ...said.slice(0, QUOTED).map((at) => `  # ${at}`),
    ...more,
    `  # What is it on the other ruler?${called === unnamedAt(measure) ? ' And what is it called?' : ''}${[...asks].map((ask) => ` ${ask}`).join('')}`,
    `  ${called}: { ${edition === 'inch' ? 'in' : 'mm'}: ${value}, label: ${inYaml(capital(called))} }`,
  ];
}

const COUNTS = new Map([
  ['two', 2],
  ['both', 2],
  ['three', 3],
  ['four', 4],
  ['five', 5],
  ['six', 6],
]);

/** How many of a piece are cut, where that is said within a few words before it: cut two panels. */
function countOf(before: string, piece: string): number {
  const last = piece.split(' ').at(-1)!;
  const found = new RegExp(`\\b(two|both|three|four|five|six|[2-6])(?: \\p{L}+){0,2}? ${last}s?\\b`, 'iu').exec(
    before.split(' ').slice(-16).join(' '),
  );
  return found ? (COUNTS.get(found[1]!.toLowerCase()) ?? Number(found[1])) : 1;
}

/** What a size is called, by the few words right before and behind it; undefined where they do not tell. */
function nameFor(before: string, behind: string, piece: string | undefined): string | undefined {
  const lead = before.toLowerCase().split(' ').slice(-6).join(' ');
  const rest = behind.toLowerCase().split(' ').slice(0, 3).join(' ');
  if (/\bseam allowances?\b/.test(lead) || /\bseams? (?:is|of|are)$/.test(lead) || /^seams?\b/.test(rest))
    return 'seam';
  if (/\bgap\b/.test(lead)) return 'gap';
  if (/\bhem\b/.test(lead) || /^hem\b/.test(rest)) return 'hem';
  if (/^from the (?:\w+ )?edge\b/.test(`${rest} ${behind.toLowerCase().split(' ')[3] ?? ''}`)) return 'row';
  const way = /^(?:wide|across)/.test(rest) ? 'width' : /^(?:long|high|tall|deep)/.test(rest) ? 'height' : undefined;
  return way !== undefined && piece !== undefined ? `${piece} ${way}` : undefined;
}
