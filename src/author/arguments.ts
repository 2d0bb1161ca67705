/** What stands behind the name of a command: the one reader of all commands, which also tells what each can do. */
import { parseArgs } from 'node:util';
import { closest, quote } from '../core/measure/index.ts';

/** `--name`, or `--name VALUE`. */
export type Choice = {
  about: string;
  /** What to write behind it, in capitals or as an example; a choice without is there or not. */
  takes?: string;
  /** The value where the choice is left out. */
  normally?: string;
  /** The value where nothing stands behind it. */
  alone?: string;
  /** Several words may follow without quotes, once a name stands before. */
  words?: true;
};

export type Command<C extends Readonly<Record<string, Choice>> = Readonly<Record<string, Choice>>> = {
  /** As it is typed: `npm run check`. */
  name: string;
  about: string;
  /** What is named before the choices: `<project>`. */
  names?: string;
  choices: C;
  /** Whole lines that can be typed. */
  examples?: readonly string[];
};

type ValueOf<C extends Choice> = C extends { takes: string }
  ? C extends { normally: string }
    ? string
    : string | undefined
  : boolean;

/** What was asked for, or what is to be said instead: the help, or what is wrong. */
export type Asked<C extends Readonly<Record<string, Choice>>> =
  { ok: true; values: { [N in keyof C]: ValueOf<C[N]> }; names: string[] } | { ok: false; answer: string; code: 0 | 1 };

/** npm takes these for the longer names of its own settings. */
const AS_NPM_READS: Readonly<Record<string, string>> = { to: 'token_description' };

/**
 * Reads the words behind a command. Where the `--` before them was forgotten, npm keeps the choices for itself and hands
 * them on in the environment, without what stands behind them.
 *
 * @example readArguments({ name: 'npm run check', about: '', choices: { fix: { about: '' } } }, ['--fix'], {})
 * // => { ok: true, values: { fix: true }, names: [] }
 */
export function readArguments<const C extends Readonly<Record<string, Choice>>>(
  command: Command<C>,
  args: readonly string[] = process.argv.slice(2),
  environment: NodeJS.ProcessEnv = process.env,
): Asked<C> {
  if (args.includes('--help') || args.includes('-h')) return { ok: false, answer: helpOf(command), code: 0 };
  const wrong = (message: string): Asked<C> => ({ ok: false, answer: `${message}\n\n${helpOf(command)}`, code: 1 });
  const choices = new Map<string, Choice>(Object.entries(command.choices));
  const options = Object.fromEntries(
    [...choices].map(([name, { takes }]) => [name, { type: takes === undefined ? 'boolean' : 'string' } as const]),
  );
  const found: Record<string, string | boolean> = {};
  const names: string[] = [];
  let goesOn: string | undefined;
  const { tokens } = parseArgs({
    args: args.map((arg, i) => isAlone(arg, args[i + 1], choices)),
    options,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  for (const token of tokens) {
    if (token.kind === 'positional') {
      if (goesOn === undefined) names.push(token.value);
      else found[goesOn] = `${String(found[goesOn])} ${token.value}`;
    } else if (token.kind === 'option') {
      goesOn = undefined;
      const choice = choices.get(token.name);
      if (!choice) return wrong(noSuch(token.rawName, [...choices.keys()]));
      if (choice.takes === undefined && token.value !== undefined)
        return wrong(`${token.rawName} takes nothing behind it.`);
      if (choice.takes !== undefined && !token.value) return wrong(`${token.rawName} takes ${choice.takes} behind it.`);
      found[token.name] = token.value ?? true;
      if (choice.words && names.length > 0 && !token.inlineValue && !token.value?.includes(' ')) goesOn = token.name;
    }
  }
  const kept = keptByNpm(command, choices, environment);
  for (const [name, value] of kept) {
    if (name in found) continue;
    const { takes, alone } = choices.get(name)!;
    if (takes === undefined) found[name] = value !== 'false';
    else if (value !== 'true') found[name] = value;
    else if (alone !== undefined) found[name] = alone;
    // Its value is among the names, and nobody can tell which of them it is, unless it is the only one.
    else if (command.names === undefined && names.length === 1) found[name] = names.pop()!;
    else return wrong(`npm kept “--${name}” for itself. Write --${name}="…", with the sign = and quotes.`);
  }
  if (command.names === undefined && names.length > 0) return wrong(`${quote(names[0]!)} means nothing here.`);
  const values = Object.fromEntries(
    [...choices].map(([name, { takes, normally }]) => [name, found[name] ?? (takes === undefined ? false : normally)]),
  );
  return { ok: true, values: values as { [N in keyof C]: ValueOf<C[N]> }, names };
}

/** Says what was read instead of a wish, and how the command ends. */
export function tell({ answer, code }: { answer: string; code: 0 | 1 }): void {
  if (code === 0) console.log(answer);
  else console.error(answer);
  process.exitCode = code;
}

function isAlone(arg: string, next: string | undefined, choices: ReadonlyMap<string, Choice>): string {
  const choice = choices.get(arg.slice(2));
  if (!arg.startsWith('--') || choice?.takes === undefined) return arg;
  return next === undefined || next.startsWith('--') ? `${arg}=${choice.alone ?? ''}` : arg;
}

/** Only what npm was given for this command: another that runs it has choices of its own. */
function keptByNpm(
  { name }: Pick<Command, 'name'>,
  choices: ReadonlyMap<string, Choice>,
  environment: NodeJS.ProcessEnv,
): [name: string, value: string][] {
  if (environment['npm_lifecycle_event'] !== name.split(' ').at(-1)) return [];
  return [...choices.keys()].flatMap((choice): [string, string][] => {
    const value = [choice.replaceAll('-', '_'), AS_NPM_READS[choice]].flatMap(
      (key) => (key === undefined ? undefined : environment[`npm_config_${key}`]) ?? [],
    )[0];
    return value === undefined || value === '' ? [] : [[choice, value]];
  });
}

function noSuch(written: string, known: readonly string[]): string {
  const near = closest(written.replace(/^-+/u, ''), known);
  return `There is no choice ${written}.${near === undefined ? '' : ` Did you mean --${near}?`}`;
}

/** Room for the names of the choices, in characters. */
const COLUMN = 24;

/** The help of a command: what it does, and its choices. */
export function helpOf({ name, about, names, choices, examples = [] }: Command): string {
  const all = { ...choices, help: { about: 'this text' } };
  const lines = Object.entries<Choice>(all).map(([choice, { about: does, takes }]) => {
    const left = `--${choice}${takes === undefined ? '' : ` ${takes}`}`;
    return `  ${left.padEnd(COLUMN)} ${does}`;
  });
  return [
    `${name}${names === undefined ? '' : ` -- ${names}`}${names === undefined ? ' --' : ''} [choices]`,
    about,
    lines.join('\n'),
    ...(examples.length > 0 ? [examples.map((line) => `  ${line}`).join('\n')] : []),
  ].join('\n\n');
}
