/** The tutorial of the site, followed as it is written: its files are written, its commands run, its answers awaited. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const kit = fileURLToPath(new URL('..', import.meta.url));

export const TUTORIAL = path.join(kit, 'src/pages/authoring/first-lesson.mdx');

/** A block of the tutorial: what to do with it, and its text. */
type Block = { kind: 'run' | 'answer' | 'file' | 'find' | 'put' | 'background'; file: string; text: string };

export function blocksOf(tutorial: string): Block[] {
  return [...tutorial.matchAll(/^```(\w+) ?(\S*)\n([\s\S]*?)^```$/gm)].map(([, language, info = '', text = '']) => {
    const [kind = '', file = ''] = info.split('=');
    const plain = { sh: 'run', text: 'answer' }[language!];
    return { kind: (kind || plain) as Block['kind'], file, text };
  });
}

/** What came of one command, and what the tutorial promises that it says. */
export type Followed = { command: string; printed: string; promised: string[] };

/**
 * Follows the tutorial in a copy of the kit.
 *
 * @param folder the copy
 * @throws where a file or a line that the tutorial speaks of is not there
 */
export function followTutorial(folder: string): Followed[] {
  const followed: Followed[] = [];
  let sought = '';
  for (const { kind, file, text } of blocksOf(readFileSync(TUTORIAL, 'utf8'))) {
    const full = path.join(folder, file);
    switch (kind) {
      case 'run':
        followed.push({ command: text.trim(), printed: run(folder, text.trim()), promised: [] });
        break;
      case 'answer':
        followed.at(-1)!.promised.push(text.trim());
        break;
      case 'file':
        readFileSync(full); // a command has written it before
        writeFileSync(full, text);
        break;
      case 'find':
        sought = text.trim();
        break;
      case 'put': {
        const before = readFileSync(full, 'utf8');
        if (!before.includes(sought)) throw new Error(`${file} does not say ${sought}`);
        writeFileSync(
          full,
          before.replace(sought, () => text.trim()),
        );
        break;
      }
      case 'background':
        break; // the site itself is opened by the browser's test
      default:
        throw new Error(`The tutorial has a block that nobody follows: ${String(kind)}`);
    }
  }
  return followed;
}

/** npm is left out of it, so that nothing is looked up: the script is run as package.json has it. */
function run(folder: string, command: string): string {
  const [, name = '', rest = ''] = /^npm run (\w+)(?: -- (.*))?$/.exec(command) ?? [];
  const scripts = (
    JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as { scripts: Record<string, string> }
  ).scripts;
  const script = /^node (\S+)$/.exec(scripts[name] ?? '')?.[1];
  if (!script) throw new Error(`No script is called by: ${command}`);
  const args = [...rest.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');
  const { stdout, stderr } = spawnSync(process.execPath, [script, ...args], { cwd: folder, encoding: 'utf8' });
  return stdout + stderr;
}
