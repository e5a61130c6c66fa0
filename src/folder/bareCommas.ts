/** Joins numbers again that fell apart at their decimal commas; null where nobody can tell which. */
export type Joiner = (cells: readonly string[]) => readonly string[] | null;

const WHOLE = /^\s*[-+−]?\d{1,3}$/u;
const DECIMALS = /^\d{1,3}\s*$/u;

/** Share of rows with too many cells from which decimal commas are the reason. judgement */
const MOST = 0.5;

/**
 * In a file with commas between cells and bare decimal commas each such number has become two cells.
 *
 * @param width - Cells of the header.
 * @returns null when the rows have no surplus of that kind.
 */
export function bareCommas(width: number, rows: readonly (readonly string[])[]): Joiner | null {
  const surplus = rows.map((cells) => {
    const more = cells.length - width;
    return more > 0 && DECIMALS.test(cells.at(-1)!) && !cells.some((cell) => /^\s*-?\d+\.\d+\s*$/u.test(cell))
      ? more
      : 0;
  });
  const split = Math.max(0, ...surplus);
  if (split === 0 || surplus.filter((more) => more > 0).length < rows.length * MOST) return null;
  return (cells) => {
    const more = cells.length - width;
    if (more <= 0) return cells;
    if (more !== split) return null;
    const whole: string[] = [];
    let left = more;
    for (let i = 0; i < cells.length; i++) {
      const [cell, next] = [cells[i]!, cells[i + 1]];
      if (left > 0 && next !== undefined && WHOLE.test(cell) && DECIMALS.test(next)) {
        whole.push(`${cell},${next}`);
        left -= 1;
        i += 1;
      } else whole.push(cell);
    }
    return left === 0 ? whole : null;
  };
}
