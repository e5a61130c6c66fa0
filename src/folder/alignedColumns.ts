/** Makes a row's cells of what was read as such. */
export type Cutter = (cells: readonly string[]) => readonly string[];

interface Token {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** A comment sign before the header leaves its columns where they are. */
const tokensOf = (line: string): readonly Token[] =>
  [...line.replace(/^#/u, " ").matchAll(/\S+/gu)].map((match) => ({
    text: match[0],
    from: match.index,
    to: match.index + match[0].length,
  }));

const holdsNumbers = (tokens: readonly Token[]): boolean =>
  tokens.filter(({ text }) => /^[-+]?\d/u.test(text)).length >= 2;

/** The column a token stands in or nearest to. */
function columnOf(
  { from, to }: Token,
  columns: readonly { readonly from: number; readonly to: number }[],
): number {
  const away = columns.map((column) => Math.max(0, column.from - to + 1, from - column.to + 1));
  return away.indexOf(Math.min(...away));
}

/**
 * Finds the columns of a table lined up with blanks in its first lines. A line with a word for every column is cut
 * word by word; of any other, words go to the column they stand in, so that a blank cell stays blank.
 *
 * @param lines - Whole lines; a row to be cut holds one as its only cell.
 */
export function alignedColumns(lines: readonly string[]): Cutter {
  const data = lines.map(tokensOf).filter(holdsNumbers);
  const counts = new Map<number, number>();
  for (const { length } of data) counts.set(length, (counts.get(length) ?? 0) + 1);
  const width = [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
  const whole = data.filter(({ length }) => length === width);
  const columns = Array.from({ length: width }, (_, index) => ({
    from: Math.min(...whole.map((tokens) => tokens[index]!.from)),
    to: Math.max(...whole.map((tokens) => tokens[index]!.to)),
  }));
  const aligned = columns.every(({ from }, index) => index === 0 || from >= columns[index - 1]!.to);
  return ([line = ""]) => {
    const tokens = tokensOf(line);
    if (tokens.length === width || !aligned) return tokens.map(({ text }) => text);
    const cells = columns.map(() => "");
    for (const token of tokens) {
      const index = columnOf(token, columns);
      cells[index] = cells[index] === "" ? token.text : `${cells[index]} ${token.text}`;
    }
    return cells;
  };
}
