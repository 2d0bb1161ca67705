declare module 'virtual:content-root' {
  /** The folder that holds content/. */
  const root: string;
  export default root;
}
