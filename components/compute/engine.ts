/**
 * Everything that makes cloth up and draws it. A page is built with it; a browser fetches it only when it is asked for
 * what the page does not show, so that nothing else may import it but by `import()`. See making.svelte.ts.
 */
export { default as Drawing } from '../ui/drawing/Drawing.svelte';
export * from './telling.ts';
