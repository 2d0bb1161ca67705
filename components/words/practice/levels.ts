/** How fine the numbers are, from easy ones to every mark; `rising`: finer with each that was right. */
export type Level = 'rising' | 1 | 2 | 3;
