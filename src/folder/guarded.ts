/**
 * A cell as it may be written: what a spreadsheet would run, or a table take for a remark, begins with an apostrophe and
 * so stays text. Reading a table takes one apostrophe away.
 *
 * @example guarded("=1+1") // => "'=1+1"
 */
export const guarded = (cell: string): string => (/^['=+\-@#]/u.test(cell) ? `'${cell}` : cell);
