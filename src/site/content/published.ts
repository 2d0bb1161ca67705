import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { readYaml } from './located-yaml.ts';
import { SiteFile } from './schemas.ts';

/**
 * Where the site will be published: BASE_ADDRESS of the environment, else `address` of content/site.yaml. Undefined
 * where neither says it; the site then works at the top of any host.
 *
 * @param root the folder that holds content/
 * @throws TypeError where BASE_ADDRESS is no web address
 */
export function published(root: string, environment = process.env): URL | undefined {
  if (environment.BASE_ADDRESS) {
    if (!URL.canParse(environment.BASE_ADDRESS)) {
      throw new TypeError(
        `BASE_ADDRESS is “${environment.BASE_ADDRESS}”. A web address belongs there, such as https://example.org/sewing/.`,
      );
    }
    return new URL(environment.BASE_ADDRESS);
  }
  const file = path.join(root, 'content/site.yaml');
  const site = existsSync(file) ? readYaml(readFileSync(file, 'utf8'), SiteFile, 'content/site.yaml').value : undefined;
  return site?.address === undefined ? undefined : new URL(site.address);
}
