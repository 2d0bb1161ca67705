declare module 'virtual:content-mistakes' {
  /** Whether the content has a mistake that keeps a page from being made; undefined while it is being checked. */
  const found: boolean | undefined;
  export default found;
}
