/** How long a sentence must stay the same before screen readers get it: a moving slider would speak without a pause. */
const REST = 350;

/**
 * Follows a sentence and gives it out once it has stood still. What is there at the beginning is given at once, so that
 * the page has it before any script runs. Call while a component is being set up.
 */
export function debounced(sentence: () => string): { readonly text: string } {
  let text = $state(sentence());
  $effect(() => {
    const next = sentence();
    const timer = setTimeout(() => (text = next), REST);
    return () => clearTimeout(timer);
  });
  return {
    get text() {
      return text;
    },
  };
}
