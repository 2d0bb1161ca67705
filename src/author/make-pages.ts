import type { ChildProcess } from 'node:child_process';
import type { Made, Opened, Wanted } from '../site/pages/pages-by-two.ts';

/** What Astro has put together to make pages; see `astro/dist/entrypoints/prerender.js`. */
type Bundle = {
  app: {
    setInternals(internals: object): void;
    setOptions(options: object): void;
    render(request: Request, options: { routeData: object }): Promise<Response>;
  };
  manifest: { routes: { routeData: { route: string; component: string } }[] };
};

/**
 * Makes the pages that a build asks of this process. What cannot be made here is given back: Astro makes it, and says
 * what is wrong where something is.
 */
export function makePages(build: ChildProcess): void {
  let bundle: Promise<Bundle> | undefined;
  build.on('message', async (word: Opened | Wanted) => {
    if ('bundle' in word) {
      bundle = open(word);
      return;
    }
    const html = await bundle?.then((opened) => make(opened, word)).catch(() => undefined);
    if (build.connected) build.send({ page: word.page, html } satisfies Made);
  });
}

async function open({ bundle, sheets }: Opened): Promise<Bundle> {
  process.env.NODE_ENV ??= 'production';
  // Pictures are made smaller by Astro's own process, which has to hear of them.
  Object.assign(globalThis, { astroAsset: { addStaticImage: refuse } });
  const opened = (await import(bundle)) as Bundle;
  opened.app.setInternals({ pagesByKeys: new Map(sheets.map(([kind, styles]) => [kind, { styles }])) });
  opened.app.setOptions({ settings: { scripts: [] }, logger: { options: { destination: { write: refuse } } } });
  return opened;
}

async function make({ app, manifest }: Bundle, { url, route, component }: Wanted): Promise<Uint8Array> {
  const found = manifest.routes.find(({ routeData }) => routeData.route === route && routeData.component === component);
  if (!found) throw new Error(`No route ${route}`);
  const response = await app.render(new Request(url), { routeData: found.routeData });
  if (response.status !== 200) throw new Error(`${url}: ${response.status}`);
  return response.bytes();
}

function refuse(): never {
  throw new Error('Only Astro’s own process does this.');
}
