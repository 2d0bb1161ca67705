/** The column beside the text has its place from here on; lesson.css and SizeSheet.svelte say the same. */
export const WIDE = '(min-width: 80rem)';
