declare namespace App {
  interface Locals {
    /** The project whose numbers the page shows, by the name of its folder. */
    project?: string;
  }
}

/** For the plain type checker; Astro's own looks into each file. */
declare module '*.astro' {
  const component: (properties: Record<string, unknown>) => unknown;
  export default component;
}
