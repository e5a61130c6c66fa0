/** Two numbers are the same but for a millionth. */
export const near = (ours: number, told: number): boolean =>
  Math.abs(ours - told) <= 1e-6 * Math.max(1, Math.abs(ours), Math.abs(told));
