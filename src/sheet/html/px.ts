/** A coordinate to a tenth, never −0: the same on every machine. */
export const px = (value: number): number => Math.round(value * 10) / 10 + 0;
