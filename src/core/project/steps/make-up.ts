/** The step ledger: makes a project up on paper, step by step, and keeps what each step did. */
import { type Diagnostic, type Place, closest, didYouMean, quote, plainName } from '../../measure/index.ts';
import { cut, isAlike, size } from '../../cloth/index.ts';
import { cutApartIn } from '../../cloth/work.ts';
import { ordinals } from '../../cloth/sides.ts';
import { boxOf } from '../../cloth/size.ts';
import { ownPlies } from '../../cloth/place.ts';
import { cautionsOf, LEARNER, minutesOf, setsAtPoint, sew, titleOf, verbNamed } from '../../steps/index.ts';
import { plural } from '../../steps/words.ts';
import { saysWhere } from '../../steps/places.ts';
import { ironLimitOf, toolsOf } from './tools.ts';
import { adviceOnTurn } from './turn-advice.ts';
import { oncePer } from '../cache.ts';
import { compiled } from '../compile.ts';
import { checkMet } from './check-met.ts';
import { explainFault } from './explain.ts';
import { featuresOf } from '../ways.ts';
import { hindrance } from '../features.ts';
import { inText } from '../texts.ts';
import { plansOf } from './plan.ts';
import { sayIn } from './say.ts';
import { rowsAdded } from './rows.ts';
import { sewingOf } from '../sewing.ts';
import { timersOf } from './timers.ts';
import { materialsIn, stackOf } from './thickness.ts';
import { meetsAt } from './meets-at.ts';
import type { Pattern } from '../pattern.ts';
import type { Point } from '../../geometry/index.ts';
import type { Ledger, Step } from '../step.ts';
import type { Always, Instruction, StepContext } from '../../steps/index.ts';
import type { Named } from './read-fields.ts';
import type { StepPlan } from './plan.ts';
import type { Work } from '../../cloth/index.ts';

/** Where the ledger of a pattern is put once it is made. */
const ledgerIn = oncePer((_: Pattern): { made?: Ledger } => ({}));

/**
 * Makes a project up: the steps that can be done, in order, each with the work before and after it. Never throws; why
 * a step is left out is told by `check`. Of one pattern the steps are made once and kept.
 *
 * @example
 * makeUp(resolveProject(file)).map((step) => step.title) // => ['Fuse the strip interfacing to the pocket strip', …]
 */
export const makeUp = (pattern: Pattern): Step[] => ledgerOf(pattern).steps;

/** The same with a pause after each step, for a page that must not keep the hand waiting. */
export function* makeUpSteps(pattern: Pattern): Generator<void, Step[]> {
  return (yield* ledgerSteps(pattern)).steps;
}

/** The steps, what stands in the way of the others, and every result by name. */
export function ledgerOf(pattern: Pattern): Ledger {
  const steps = ledgerSteps(pattern);
  let next = steps.next();
  while (!next.done) next = steps.next();
  return next.value;
}

function* ledgerSteps(pattern: Pattern): Generator<void, Ledger> {
  const ledger = ledgerIn(pattern);
  return (ledger.made ??= yield* new Bench(pattern).ledger());
}

/** The work with its last hardware known by the step that set it. */
const setBy = (step: string, work: Work): Work => ({
  ...work,
  marks: work.marks.with(-1, { ...work.marks.at(-1)!, step }),
});

/** So many works alike. */
const alike = (work: Work, count: number): Work[] => Array<Work>(count).fill(work);

/** Whether a step takes the same works as one before it, and so makes another like it. */
const takesAlike = (before: StepPlan, takes: readonly Named[]): boolean =>
  before.takes.map(({ name }) => plainName(name)).join('\n') === takes.map(({ name }) => plainName(name)).join('\n');

type Counted = { name: string; copies: readonly Work[]; sets: number };

/** Why a step cannot be done as often as it asks. */
function timesWrong(
  asked: number,
  least: Counted,
  all: readonly Counted[],
  kept: Counted | undefined,
): Pick<Diagnostic, 'code' | 'message' | 'fix'> | undefined {
  if (asked > least.sets) {
    const message = `${quote(least.name)} is enough for ${least.sets} of these, and the step is done ${asked} times.`;
    return { code: 'used-up', message, fix: `Write “times: ${least.sets}”, or make more.` };
  }
  if (kept && kept.sets > asked) {
    const message = `There are ${kept.sets} ${quote(kept.name)} here, and this step is done to ${asked} of them only: two sorts of one name could not be told apart.`;
    return { code: 'uneven', message, fix: `Give the result a name of its own: “makes: first ${kept.name}”.` };
  }
  return unlike(asked, all, 'Write a step for each sort, without “times”.');
}

/** Why a step cannot be done so many times at once: the works of one name that it takes are not all alike. */
function unlike(
  times: number,
  all: readonly Counted[],
  fix: string,
): Pick<Diagnostic, 'code' | 'message' | 'fix'> | undefined {
  const differ = all.find(({ copies, sets }) => {
    const needed = copies.slice(0, times * Math.max(1, Math.round(copies.length / Math.max(1, sets))));
    return needed.some((one) => one !== needed[0] && !isAlike(one, needed[0]!));
  });
  if (!differ) return undefined;
  const message = `Not all ${quote(differ.name)} are alike, so this step would come out differently each time.`;
  return { code: 'uneven', message, fix };
}

/** Where a work went that is no longer on the table. */
type Gone = { into: string; n: number };

/** The table on which a project is made up: the works that lie on it, by name. */
class Bench {
  readonly #pattern: Pattern;
  readonly #steps: Step[] = [];
  readonly #findings: Diagnostic[] = [];
  /** By plain name: its name, what lies there, one for each that was cut or made alike, and how many there were. */
  readonly #works = new Map<string, { name: string; copies: Work[]; made: number; by?: StepPlan }>();
  readonly #gone = new Map<string, Gone>();
  /** Results that are not made because their step could not be done, each with the steps that wait for it. */
  readonly #lost = new Map<string, { n: number; waiting: StepPlan[] }>();
  readonly #used = new Set<string>();
  readonly #setting: StepContext;
  /** How many works of a name were laid on others. */
  readonly #taken = new Map<string, number>();

  constructor(pattern: Pattern) {
    this.#pattern = pattern;
    const pleated = new Map(
      Object.values(pattern.pieces).map(({ name, pleats, edgePleats }) => [
        plainName(name),
        edgePleats
          ? { from: edgePleats.from, folds: edgePleats.folds, isAlong: true as const }
          : pleats && { from: 'bottom' as const, folds: pleats.folds },
      ]),
    );
    const darted = new Map(Object.values(pattern.pieces).map(({ name, darts }) => [plainName(name), darts]));
    this.#setting = {
      edition: pattern.origin.edition,
      seam: pattern.making?.seam ?? 0,
      nthOf: (work) => {
        const nth = (this.#taken.get(plainName(work)) ?? 0) + 1;
        this.#taken.set(plainName(work), nth);
        return nth;
      },
      kindOf: (role) => pattern.materials[role]?.material?.kind,
      hardwareOf: (role) => pattern.materials[role]?.material,
      setInto: (piece) => {
        const { insetFrom, inset } = pattern.pieces[piece] ?? {};
        return insetFrom !== undefined && inset ? { piece: insetFrom, ...inset } : undefined;
      },
      pleatsOf: (piece) => pleated.get(plainName(piece)),
      dartsOf: (piece) => darted.get(plainName(piece)) ?? [],
      onBias: (piece) => pattern.pieces[piece]?.grain === 'bias',
    };
  }

  /** Makes everything up, with a pause after each step. */
  *ledger(): Generator<void, Ledger> {
    const { making, finished } = this.#pattern;
    if (making) {
      this.#cutPieces();
      const { steps, unread, findings } = plansOf(this.#pattern);
      this.#findings.push(...findings);
      for (const { n, makes } of unread) this.#lost.set(plainName(makes), { n, waiting: [] });
      for (const plan of steps) {
        if (plan.off !== undefined) continue;
        this.#do(plan);
        yield;
      }
      this.#reportWaiting();
      this.#reportLeft();
    }
    const results = Object.fromEntries([...this.#works.values()].map(({ name, copies }) => [name, copies[0]!]));
    const last = finished?.of ?? this.#steps.at(-1)?.makes;
    const found = last === undefined ? undefined : this.#works.get(plainName(last));
    return {
      steps: this.#steps,
      findings: this.#findings,
      results,
      ...(found && { finished: found.name }),
    };
  }

  #cutPieces(): void {
    for (const { name, material, cutOutline, count } of Object.values(this.#pattern.pieces)) {
      const work = cut({ piece: name, material, outline: cutOutline });
      if (work.ok) this.#works.set(plainName(name), { name, copies: alike(work.value, count), made: count });
    }
  }

  #do(plan: StepPlan): void {
    const { doing } = plan;
    const taken = doing && this.#take(plan);
    if (!taken) {
      this.#lose(plan);
      return;
    }
    const works = taken.map((one) => one.work);
    const times = this.#timesOf(plan, taken, doing.always.times);
    if (times === undefined) {
      this.#lose(plan);
      return;
    }
    const step = this.#placed(doing.step, plan, works);
    const sewn = step && sew(step, works, this.#setting);
    if (!sewn) {
      this.#lose(plan);
      return;
    }
    if (!sewn.ok) {
      this.#findings.push(explainFault(sewn.fault, plan, sayIn(this.#pattern)));
      this.#lose(plan);
      return;
    }
    const after = setsAtPoint(step) ? setBy(plan.id, sewn.value) : sewn.value;
    this.#findings.push(...checkMet(plan, works, after, this.#pattern));
    const called = this.#calledIn(step, taken, times);
    for (const { name } of taken) this.#remove(name, plan, times);
    const key = plainName(plan.makes);
    const there = this.#works.get(key);
    const many = times * (cutApartIn(works, after)?.many ?? 1);
    const copies = [...(there?.copies ?? []), ...alike(after, many)];
    this.#works.set(key, { name: plan.makes, copies, made: (there?.made ?? 0) + many, by: plan });
    this.#lost.delete(key);
    this.#steps.push(this.#entry(plan, { ...doing, step }, taken, after, { times, called }));
  }

  /**
   * How many works a step makes alike. Who hems “napkin” hems each one that was cut: a step that keeps the name of what
   * went in is done to all of that name, and later steps take one each. A result with a name of its own is one.
   * Undefined where it would be done to some of them only.
   */
  #timesOf(plan: StepPlan, taken: readonly { name: string }[], asked: number | undefined): number | undefined {
    const kept = plainName(plan.makes);
    const names = taken.map(({ name }) => plainName(name));
    const counts = names.map((key) => {
      const { name, copies } = this.#works.get(key)!;
      return { key, name, copies, sets: Math.floor(copies.length / names.filter((one) => one === key).length) };
    });
    const least = counts.reduce((fewest, one) => (one.sets < fewest.sets ? one : fewest));
    const own = counts.find(({ key }) => key === kept);
    if (asked !== undefined) {
      const wrong = timesWrong(asked, least, counts, own);
      if (wrong) this.#findings.push({ severity: 'error', place: [...plan.place, 'times'], ...wrong });
      return wrong || !(own || this.#isFree(plan)) ? undefined : asked;
    }
    if (!own) return this.#isFree(plan) ? 1 : undefined;
    const atOnce = names.filter((one) => one === kept).length;
    const over = own.copies.length % atOnce;
    if (over > 0 && own.sets === least.sets) {
      const message = `There are ${own.copies.length} ${quote(own.name)} here, and this step takes ${atOnce} at a time: ${over} would be left over under the name of the others.`;
      const fix = `Give the result a name of its own: “makes: pair of ${own.name}”.`;
      this.#findings.push({ severity: 'error', place: plan.place, code: 'uneven', message, fix });
      return undefined;
    }
    if (own.sets === least.sets) {
      const differ = unlike(least.sets, counts, 'Give each sort a name of its own.');
      if (differ) this.#findings.push({ severity: 'error', place: plan.place, ...differ });
      return differ ? undefined : least.sets;
    }
    const message = `There are ${own.sets} ${quote(own.name)} here, but ${least.sets} ${quote(least.name)}: this step could be done to ${least.sets} of them only.`;
    const fix = `Cut as many, or give the result a name of its own: “makes: first ${own.name}”.`;
    this.#findings.push({ severity: 'error', place: plan.place, code: 'uneven', message, fix });
    return undefined;
  }

  /** How a title calls the works of a step that are some of several alike. */
  #calledIn(step: Instruction, taken: readonly { name: string }[], times: number): Instruction {
    const words = new Map<string, string>();
    for (const { name } of taken) {
      const { copies, made } = this.#works.get(plainName(name))!;
      const others = taken.filter((one) => plainName(one.name) === plainName(name)).length > 1;
      const nth = ordinals[made - copies.length] ?? 'next';
      if (made <= 1 || others) continue;
      // Where two works of two names are taken, “both” would be read as the one and the other.
      const all = made === 2 && taken.length === 1 ? `both ${plural(name)}` : `each ${name}`;
      const some = times === made ? all : `${times} × ${name}`;
      words.set(plainName(name), times > 1 ? some : `the ${nth} ${name}`);
    }
    if (words.size === 0) return step;
    const { fields } = verbNamed(step.verb);
    const call = (name: unknown) => words.get(plainName(String(name))) ?? name;
    return Object.fromEntries(
      Object.entries(step).map(([name, value]: [string, unknown]) => {
        const kind = fields[name]?.kind;
        if (kind === 'work') return [name, call(value)];
        return [name, kind === 'works' && Array.isArray(value) ? value.map(call) : value];
      }),
    ) as Instruction;
  }

  /** What says which half it meets and not where it is set, with its place: where both lie face to face once all is folded. */
  #placed(said: Instruction, plan: StepPlan, works: readonly Work[]): Instruction | undefined {
    const step = this.#closing(said, plan);
    if (!step || !setsAtPoint(step) || saysWhere(step) || step.meets === undefined) return step;
    const [work] = works;
    const other = work?.marks.find((mark) => mark.step === step.meets);
    const met = work && other && meetsAt(work, other, this.#later(work, plan));
    if (met) {
      const box = boxOf(ownPlies(work));
      return { ...step, at: { x: met.x - box.x, y: met.y - box.y } };
    }
    // A button and its buttonhole lie the same way up, and not face to face.
    const faced = work && !other && step.verb === 'attach' && this.#facing(work, step.meets);
    if (faced) return { ...step, at: faced };
    const message = other
      ? 'No later step folds this work shut, so the place where the halves meet is not known.'
      : `No step ${quote(step.meets)} has set the other half on this work.`;
    const place = [...plan.place, 'meets'];
    const { steps } = plansOf(this.#pattern);
    const meant = steps.some(({ id }) => id === step.meets)
      ? undefined
      : didYouMean(
          step.meets,
          steps.map(({ id }) => id),
        );
    const fix = meant ?? 'Give its place: “at: [2, 1]”.';
    this.#findings.push({ severity: 'error', place, code: 'halves-apart', message, fix });
    return undefined;
  }

  /** What meets another half, if both close: a hole as long as the button that it meets needs, where it names none. */
  #closing(step: Instruction, plan: StepPlan): Instruction | undefined {
    if (!setsAtPoint(step) || step.meets === undefined) return step;
    const { meets } = step;
    const other = plansOf(this.#pattern).steps.find(({ id }) => id === meets)?.doing?.step;
    if (!other || !setsAtPoint(other)) return step;
    const kindOf = (role: string) => this.#pattern.materials[role]?.material?.hardware;
    const what = (one: Instruction) =>
      one.verb === 'buttonhole' ? 'buttonhole' : one.verb === 'attach' ? kindOf(one.attach) : undefined;
    const closes: Readonly<Record<string, string>> = {
      snap: 'snap',
      magnet: 'magnet',
      button: 'buttonhole',
      buttonhole: 'button',
      hook: 'ring',
      ring: 'hook',
    };
    const [own, met] = [what(step), what(other)];
    const hole = step.verb === 'buttonhole' ? step : undefined;
    const button = other.verb === 'attach' ? other.attach : undefined;
    if (own !== undefined && met !== undefined && closes[own] !== met) {
      const message = `A ${own} does not close with a ${met}, which step ${quote(meets)} sets.`;
      this.#findings.push({
        severity: 'error',
        place: [...plan.place, 'meets'],
        code: 'halves-apart',
        message,
        fix: `Name the step that sets a ${closes[own] ?? 'half like it'}.`,
      });
      return undefined;
    }
    if (!hole || button === undefined) return step;
    if (hole.for === undefined) return { ...hole, for: button };
    if (plainName(hole.for) === plainName(button)) return step;
    const message = `The buttonhole is for ${quote(hole.for)}, and step ${quote(meets)} sets ${quote(button)}.`;
    this.#findings.push({
      severity: 'error',
      place: [...plan.place, 'for'],
      code: 'halves-apart',
      message,
      fix: `Write “for: ${button}”, or leave “for” out.`,
    });
    return undefined;
  }

  /** A work as it lies after each of the later steps that take it alone and only fold or turn it. */
  *#later(work: Work, { n, makes }: StepPlan): Generator<Work> {
    let [now, name] = [work, plainName(makes)];
    for (const { off, n: later, doing, takes, makes: result } of plansOf(this.#pattern).steps) {
      if (later <= n || off !== undefined || !doing || !takes.some((one) => plainName(one.name) === name)) continue;
      if (takes.length > 1) return;
      name = plainName(result);
      if (setsAtPoint(doing.step)) continue;
      const sewn = sew(doing.step, [now], this.#setting);
      if (!sewn.ok) return;
      yield (now = sewn.value);
    }
  }

  /**
   * Where a half lies that meets one on another work: both come to lie face to face, so that it is mirrored, as far from the
   * top as the other. From the left and from the bottom of the work.
   */
  #facing(work: Work, meets: string): Point | undefined {
    for (const { copies } of this.#works.values()) {
      for (const there of copies) {
        const other = there.marks.find((mark) => mark.step === meets);
        if (!other) continue;
        const [on, box] = [boxOf(ownPlies(there)), boxOf(ownPlies(work))];
        // The middles of both meet where one is wider.
        const aside = other.at.x - (on.x + on.width / 2);
        return { x: box.width / 2 - aside, y: box.height - (on.y + on.height - other.at.y) };
      }
    }
    return undefined;
  }

  /** Whether the name of a result is not that of a piece, or of something else that still lies here. */
  #isFree({ makes, place, takes }: StepPlan): boolean {
    const there = this.#works.get(plainName(makes));
    if (!there || (there.by && takesAlike(there.by, takes))) return true;
    const what = there.by
      ? `Step ${there.by.n} made ${quote(there.name)}, which still lies here.`
      : `A piece is called ${quote(there.name)} already.`;
    const message = `${what} Two things of one name could not be told apart.`;
    const fix = 'Give this result a name of its own.';
    this.#findings.push({ severity: 'error', place: [...place, 'makes'], code: 'name-twice', message, fix });
    return false;
  }

  /** Finds the works that a step takes, or says what is missing. */
  #take(plan: StepPlan): { name: string; work: Work }[] | undefined {
    const found: { name: string; work: Work }[] = [];
    const copies = new Map<string, number>();
    for (const taken of plan.takes) {
      const key = plainName(taken.name);
      const nth = copies.get(key) ?? 0;
      copies.set(key, nth + 1);
      const work = this.#works.get(key)?.copies[nth];
      if (work) {
        found.push({ name: this.#works.get(key)!.name, work });
        continue;
      }
      this.#missing(taken, plan, nth);
      return undefined;
    }
    for (const { name } of found) this.#used.add(plainName(name));
    return found;
  }

  #remove(name: string, plan: StepPlan, times: number): void {
    const key = plainName(name);
    const there = this.#works.get(key);
    if (!there) return;
    if (there.copies.length > times) there.copies = there.copies.slice(times);
    else {
      this.#works.delete(key);
      this.#gone.set(key, { into: plan.makes, n: plan.n });
    }
  }

  #missing({ name, place }: Named, plan: StepPlan, nth: number): void {
    const key = plainName(name);
    const report = (code: string, message: string, fix?: string) =>
      this.#findings.push({ severity: 'error', place, code, message, ...(fix !== undefined && { fix }) });
    const lost = this.#lost.get(key);
    if (lost) {
      lost.waiting.push(plan);
      return;
    }
    const { steps } = plansOf(this.#pattern);
    const { leftOut } = this.#pattern.making!;
    // A step that hands on what it takes makes nothing that was not there.
    const makes = (step: StepPlan) => !step.takes.some((one) => plainName(one.name) === plainName(step.makes));
    const makers = steps.filter((step) => plainName(step.makes) === key && makes(step));
    const gone = this.#gone.get(key);
    if (nth > 0 || (gone && this.#isPiece(key))) {
      const message =
        nth > 0 && !gone
          ? `Only ${nth} ${nth === 1 ? 'piece' : 'pieces'} called ${quote(name)} ${nth === 1 ? 'is' : 'are'} cut.`
          : `${quote(name)} went into ${quote(gone!.into)} in step ${gone!.n}.`;
      const fix = gone && nth === 0 ? `Take ${quote(gone.into)}, or cut one more.` : 'Cut one more.';
      report('used-up', message, fix);
      return;
    }
    if (gone) {
      report(
        'used-up',
        `${quote(name)} went into ${quote(gone.into)} in step ${gone.n}.`,
        `Take ${quote(gone.into)} here.`,
      );
      return;
    }
    const piece = Object.keys(leftOut).find((one) => plainName(one) === key);
    const option = piece === undefined ? makers.find((step) => step.off !== undefined)?.off : leftOut[piece];
    if (option !== undefined) {
      const project = compiled(this.#pattern.origin.file);
      const condition = { when: [option], unless: [] };
      const on = hindrance(condition, project.features, featuresOf(this.#pattern, project)) === undefined;
      const word = on ? 'unless' : 'when';
      report(
        'option-breaks-step',
        `${on ? 'With' : 'Without'} ${quote(option)} there is no ${quote(name)} for this step.`,
        `Add “${word}: ${option}” to this step.`,
      );
      return;
    }
    const later = makers.find((step) => step.n > plan.n);
    if (later) {
      const message = `${quote(name)} is not made yet: step ${later.n} makes it.`;
      report('not-made-yet', message, 'Move this step behind that one.');
      return;
    }
    // A piece that could not be worked out, or one it is like, has its own finding; here its steps only wait.
    const named = [...compiled(this.#pattern.origin.file).pieces.keys()];
    if (makers.length > 0 || named.some((one) => plainName(one) === key)) {
      this.#lost.set(key, { n: plan.n, waiting: [plan] });
      return;
    }
    const known = [
      ...[...this.#works.values()].map((one) => one.name),
      ...steps.filter(makes).map((step) => step.makes),
    ];
    const meant = closest(name, known);
    // What was probably meant is not missed as well.
    if (meant !== undefined) this.#used.add(plainName(meant));
    const message = `There is no piece or work called ${quote(name)}.`;
    this.#findings.push({
      severity: 'error',
      place,
      start: 0,
      end: name.length,
      code: 'unknown-name',
      message,
      ...(meant !== undefined && { fix: `Do you mean ${quote(meant)}?` }),
    });
  }

  #isPiece(key: string): boolean {
    return Object.keys(this.#pattern.pieces).some((one) => plainName(one) === key);
  }

  /** A step that cannot be done leaves its result missing; what it would have taken is not missed for that. */
  #lose(plan: StepPlan): void {
    for (const { name } of plan.takes) this.#used.add(plainName(name));
    const key = plainName(plan.makes);
    this.#works.delete(key);
    this.#lost.set(key, this.#lost.get(key) ?? { n: plan.n, waiting: [] });
  }

  /** Says once for each missing result which steps are left out. */
  #reportWaiting(): void {
    for (const [key, { n, waiting }] of this.#lost) {
      const [first, ...others] = waiting;
      if (!first) continue;
      const { name, place } = first.takes.find((taken) => plainName(taken.name) === key)!;
      const more = others.length === 0 ? '' : ` Nor can ${others.length} more.`;
      const why = n === first.n ? 'is not there' : `is missing since step ${n}`;
      const message = `This step cannot be done, because ${quote(name)} ${why}.${more}`;
      this.#findings.push({ severity: 'note', place, code: 'left-out', message });
    }
  }

  /** What lies on the table in the end and is not what was to be made. */
  #reportLeft(): void {
    const { finished, materials, pieces } = this.#pattern;
    const { steps } = plansOf(this.#pattern);
    const last = plainName(finished?.of ?? steps.findLast((step) => step.off === undefined)?.makes ?? '');
    const warn = (place: Place, code: string, message: string, fix: string) =>
      this.#findings.push({ severity: 'warning', place, code, message, fix });
    for (const [key, { name, copies, made, by }] of this.#works) {
      if (key === last) continue;
      const waits = this.#used.has(key) || this.#lost.has(last);
      if (by && !waits) {
        const message = `No step uses ${quote(name)}, which this one makes.`;
        warn(by.place, 'result-unused', message, 'Take it in a later step, or leave this one out.');
      } else if (by && this.#used.has(key) && copies.length < made) {
        const message = `Of ${made} ${quote(name)}, ${made - copies.length} ${made - copies.length === 1 ? 'is' : 'are'} used.`;
        warn(by.place, 'never-used', message, 'Make fewer, or use the others too.');
      } else if (!by && copies.length === pieces[name]!.count && !this.#used.has(key)) {
        // A cord that is drawn through a casing is taken in no step.
        if (materials[pieces[name]!.material]?.material?.kind === 'by length') continue;
        const message = `No step uses ${quote(name)}.`;
        warn(['pieces', name], 'never-used', message, 'Take it in a step, or leave the piece out.');
      } else if (!by && copies.length < pieces[name]!.count) {
        const { count } = pieces[name]!;
        const message = `Of ${count} cut, ${count - copies.length} ${quote(name)} are used.`;
        warn(['pieces', name, 'cut'], 'never-used', message, 'Cut fewer, or use the others too.');
      }
    }
  }

  #entry(
    plan: StepPlan,
    { step, always }: { step: Instruction; always: Always },
    taken: { name: string; work: Work }[],
    after: Work,
    { times, called }: { times: number; called: Instruction },
  ): Step {
    const pattern = this.#pattern;
    const works = taken.map((one) => one.work);
    const stitches = rowsAdded(works, after, pattern);
    const { width, height, depth } = size(after);
    const stack = stackOf(pattern, after);
    const materials = materialsIn(pattern, after);
    const materialOf = (role: string) => pattern.materials[role]?.material;
    const { tools, uses } = toolsOf(step, always.tools, materials, materialOf);
    const iron = ironLimitOf(uses, materials);
    const doneBefore = always['done by'] === 'teacher';
    const sewing = sewingOf(step, stitches, works, { pattern, materials, always });
    const own = (text: string | undefined) => (text === undefined ? undefined : inText(text, pattern));
    const [note, shouldLook, ifWrong] = [own(always.note), own(always['should look']), own(always['if wrong'])];
    return {
      id: plan.id,
      title: always.says === undefined ? titleOf(called, materialOf) : inText(always.says, pattern),
      verb: step.verb,
      instruction: step,
      place: plan.place,
      takes: taken.map((one) => one.name),
      makes: plan.makes,
      before: Object.fromEntries(taken.map(({ name, work }) => [name, work])),
      after,
      size: { width, height },
      depth,
      ...(always.now && { nowMeasures: { ...always.now } }),
      stitches,
      minutes: minutesOf(step, always.minutes, works, after, stitches, doneBefore ? 1 : LEARNER),
      times,
      ...(doneBefore && { doneBefore: true }),
      ...(always['keep with next'] && { keepWithNext: true }),
      tools,
      uses,
      cautions: cautionsOf(step, uses, materials, materialOf),
      ...(iron && { iron }),
      ...(sewing && { sewing }),
      timers: timersOf(step, always.timer, pattern, taken),
      // Few are asked for, and the map of all layers takes longer than the step itself.
      get layersMost() {
        return stack().layers;
      },
      get fusedMost() {
        return stack().fused;
      },
      get thicknessMost() {
        return stack().thickest;
      },
      get advice() {
        return adviceOnTurn(pattern, this);
      },
      ...(note !== undefined && { note }),
      ...(shouldLook !== undefined && { shouldLook }),
      ...(ifWrong !== undefined && { ifWrong }),
    };
  }
}
