/** A kit lies in a folder of any name, `C#` and `50%` among them: a path is never made of an address by hand, nor the reverse. */
import { globSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const BY_HAND = [
  [/new URL\([^()]*import\.meta\.url\)\.(?:pathname|href)/u, 'fileURLToPath(new URL(…)) makes a path of an address'],
  [/[`'"]file:\/\//u, 'pathToFileURL(…) makes an address of a path'],
] as const;
/** The address of a file as `npm start` serves it is no path, and has to stay an address. */
const SERVED = /@fs\$\{new URL/u;

test('no program makes a path of an address by hand', () => {
  const programs = globSync('{src,components,.config}/**/*.{ts,mjs,cjs,js,svelte,astro}', { cwd: root });
  expect(programs.length).toBeGreaterThan(200);
  const found = programs.flatMap((file) =>
    readFileSync(path.join(root, file), 'utf8')
      .split('\n')
      .flatMap((line, i) =>
        BY_HAND.flatMap(([by, instead]) =>
          by.test(line) && !SERVED.test(line) ? [`${file}:${i + 1}: ${instead}`] : [],
        ),
      ),
  );
  expect(found).toEqual([]);
});
