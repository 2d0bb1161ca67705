/** The step ledger: makes a project up on paper, step by step, and keeps what each step did. */
import { type Diagnostic, type Place, closest, quote, plainName } from '../../measure/index.ts';
import { cut, size } from '../../cloth/index.ts';
import { boxOf } from '../../cloth/size.ts';
import { cautionsOf, LEARNER, lineFrom, minutesOf, setsAtPoint, sew, titleOf } from '../../steps/index.ts';
import { transformPoint, reflection } from '../../geometry/transform.ts';
import { ironLimitOf, toolsOf } from './tools.ts';
import { adviceOnTurn } from './turn-advice.ts';
import { oncePer } from '../cache.ts';
import { compiled } from '../compile.ts';
import { checkMet } from './check-met.ts';
import { explainFault } from './explain.ts';
import { inText } from '../texts.ts';
import { plansOf } from './plan.ts';
import { rowsAdded } from './rows.ts';
import { materialsIn, stackOf } from './thickness.ts';
import type { Pattern } from '../pattern.ts';
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
const alike = (work: Work, count: number): Work[] => Array.from({ length: count }, () => work);

/** Whether a step takes the same works as one before it, and so makes another like it. */
const takesAlike = (before: StepPlan, takes: readonly Named[]): boolean =>
  before.takes.map(({ name }) => plainName(name)).join('\n') === takes.map(({ name }) => plainName(name)).join('\n');

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
    const pleated = new Map(Object.values(pattern.pieces).map((piece) => [plainName(piece.name), piece.pleats?.folds]));
    this.#setting = {
      edition: pattern.origin.edition,
      seam: pattern.making?.seam ?? 0,
      nthOf: (work) => {
        const nth = (this.#taken.get(plainName(work)) ?? 0) + 1;
        this.#taken.set(plainName(work), nth);
        return nth;
      },
      kindOf: (role) => pattern.materials[role]?.material?.kind,
      setInto: (piece) => {
        const { insetFrom, inset } = pattern.pieces[piece] ?? {};
        return insetFrom !== undefined && inset ? { piece: insetFrom, ...inset } : undefined;
      },
      pleatsOf: (piece) => pleated.get(plainName(piece)),
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
    const times = this.#timesOf(plan, taken);
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
      this.#findings.push(explainFault(sewn.fault, plan));
      this.#lose(plan);
      return;
    }
    const after = setsAtPoint(step) ? setBy(plan.id, sewn.value) : sewn.value;
    this.#findings.push(...checkMet(plan, works, after, this.#pattern));
    for (const { name } of taken) this.#remove(name, plan, times);
    const key = plainName(plan.makes);
    const there = this.#works.get(key);
    const copies = [...(there?.copies ?? []), ...alike(after, times)];
    this.#works.set(key, { name: plan.makes, copies, made: (there?.made ?? 0) + times, by: plan });
    this.#lost.delete(key);
    this.#steps.push(this.#entry(plan, { ...doing, step }, taken, after, times));
  }

  /**
   * How many works a step makes alike. Who hems “napkin” hems each one that was cut: a step that keeps the name of what
   * went in is done to all of that name, and later steps take one each. A result with a name of its own is one.
   * Undefined where it would be done to some of them only.
   */
  #timesOf(plan: StepPlan, taken: readonly { name: string }[]): number | undefined {
    const kept = plainName(plan.makes);
    const names = taken.map(({ name }) => plainName(name));
    if (!names.includes(kept)) return this.#isFree(plan) ? 1 : undefined;
    const counts = names.map((key) => {
      const { name, copies } = this.#works.get(key)!;
      return { key, name, sets: Math.floor(copies.length / names.filter((one) => one === key).length) };
    });
    const least = counts.reduce((fewest, one) => (one.sets < fewest.sets ? one : fewest));
    const all = counts.find(({ key }) => key === kept)!;
    if (all.sets === least.sets) return least.sets;
    const message = `There are ${all.sets} ${quote(all.name)} here, but ${least.sets} ${quote(least.name)}: this step could be done to ${least.sets} of them only.`;
    const fix = `Cut as many, or give the result a name of its own: “makes: first ${all.name}”.`;
    this.#findings.push({ severity: 'error', place: plan.place, code: 'uneven', message, fix });
    return undefined;
  }

  /** What says which half it meets and not where it is set, with its place: mirrored by the fold that closes it. */
  #placed(step: Instruction, plan: StepPlan, works: readonly Work[]): Instruction | undefined {
    if (!setsAtPoint(step) || step.at || step.meets === undefined) return step;
    const [work] = works;
    const other = work?.marks.find((mark) => mark.step === step.meets);
    const closing = plansOf(this.#pattern).steps.find(
      ({ n, off, doing, takes }) =>
        n > plan.n &&
        off === undefined &&
        doing?.step.verb === 'fold' &&
        plainName(takes[0]!.name) === plainName(plan.makes),
    )?.doing?.step;
    if (work && other && closing?.verb === 'fold') {
      const { x, y } = transformPoint(reflection(lineFrom(work, closing.from ?? 'top', closing.at)), other.at);
      const box = boxOf(work.plies);
      return { ...step, at: { x: x - box.x, y: y - box.y } };
    }
    const message = other
      ? 'No later step folds this work shut, so the place where the halves meet is not known.'
      : `No step ${quote(step.meets)} has set the other half on this work.`;
    const place = [...plan.place, 'meets'];
    this.#findings.push({
      severity: 'error',
      place,
      code: 'halves-apart',
      message,
      fix: 'Give its place: “at: [2, 1]”.',
    });
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
      const on = this.#pattern.options[option]?.on ?? false;
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
    const { finished, pieces } = this.#pattern;
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
    times: number,
  ): Step {
    const pattern = this.#pattern;
    const works = taken.map((one) => one.work);
    const stitches = rowsAdded(works, after, pattern);
    const { width, height, depth } = size(after);
    const stack = stackOf(pattern, after);
    const materials = materialsIn(pattern, after);
    const { tools, uses } = toolsOf(step, always.tools, materials);
    const iron = ironLimitOf(uses, materials);
    const doneBefore = always['done by'] === 'teacher';
    return {
      id: plan.id,
      title: always.says === undefined ? titleOf(step) : inText(always.says, pattern),
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
      cautions: cautionsOf(step, uses, materials, (role) => pattern.materials[role]?.material),
      ...(iron && { iron }),
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
      ...(always.note !== undefined && { note: inText(always.note, pattern) }),
    };
  }
}
