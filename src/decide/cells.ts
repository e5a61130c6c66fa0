/** Cells a range is cut into. */
const COUNT = 256;

/** A range of a quantity cut into equal cells. */
export interface Cells {
  readonly from: number;
  /** Cells of one unit. */
  readonly each: number;
  readonly edges: Float64Array;
}

export function cellsOf(from: number, until: number): Cells {
  const width = Math.max(until - from, 1e-6) / COUNT;
  return {
    from,
    each: 1 / width,
    edges: Float64Array.from({ length: COUNT + 1 }, (_, k) => from + k * width),
  };
}

export const cellOf = ({ from, each }: Cells, value: number): number => {
  const cell = Math.floor((value - from) * each);
  return cell < 0 ? 0 : cell >= COUNT ? COUNT - 1 : cell;
};

/** Room for the highest values of runs of cells: of 1, 2, 4, … from each cell on. */
export const emptyRuns = (): Float64Array => new Float64Array((Math.log2(COUNT) + 1) * COUNT);

/** Fills in the runs longer than one cell. */
export function fillRuns(runs: Float64Array): void {
  for (let step = 1, row = 0; step < COUNT; step *= 2, row += COUNT)
    for (let k = 0; k + 2 * step <= COUNT; k++)
      runs[row + COUNT + k] = Math.max(runs[row + k]!, runs[row + k + step]!);
}

/** Highest value from one cell to another, both counted. */
export const highest = (runs: Float64Array, from: number, to: number): number => {
  const level = 31 - Math.clz32(to - from + 1);
  const row = level * COUNT;
  return Math.max(runs[row + from]!, runs[row + to + 1 - (1 << level)]!);
};
