/**
 * How long the worker of the class page reads what is pasted: 50 codes that each grow to 64 MB, and 250,000 words with a
 * code among them. In Node, without the page and without the start of the worker; the first reading counts.
 *
 *     node tests/bench/pasting.ts
 */
import { deflateRawSync } from 'node:zlib';
import { workerRead } from '../components/class/worker-read.ts';

const code = (text: string | Buffer) => `SEW1.${deflateRawSync(text, { level: 9 }).toString('base64url')}`;
const bomb = code(Buffer.alloc(64_000_000, 65));
const handIn = code(JSON.stringify({ 'hand-in': 1, name: 'Ada', course: 'c', day: '2030-05-01', lessons: [] }));

await told('250,000 words', `${'neither '.repeat(125_000)}${handIn} ${'nor '.repeat(125_000)}`, 1);
await told('50 codes of 64 MB', Array.from({ length: 50 }, () => bomb).join('\n'), 0);

async function told(what: string, pasted: string, taken: number) {
  const [start, before] = [performance.now(), process.cpuUsage()];
  const { all } = await workerRead({ pasted });
  const took = performance.now() - start;
  const { user, system } = process.cpuUsage(before);
  if (all.filter(({ read }) => read.ok).length !== taken) throw new Error(`Of ${what} ${taken} should be taken.`);
  console.log(
    `${what}: ${took.toFixed(0)} ms (at most 2000); on the processor ${((user + system) / 1000).toFixed(0)} ms`,
  );
}
