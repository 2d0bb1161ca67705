/** The part of number-to-words that the tests use; the package brings no types. */
declare module 'number-to-words' {
  const library: { toWords(value: number): string };
  export default library;
}
