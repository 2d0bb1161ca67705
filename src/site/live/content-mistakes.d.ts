declare module 'virtual:content-mistakes' {
  /** Whether the content has a mistake, once it has been checked. */
  const hasMistakes: boolean;
  export default hasMistakes;
}
