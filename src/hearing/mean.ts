/** Mean of some numbers; 0 of none. */
export const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
