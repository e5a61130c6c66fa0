/** What is known of one value from notes about it alone: precision, and precision times value; 0 and 0 for nothing. */
export interface Site {
  readonly precision: number;
  readonly pull: number;
}

/** A normal belief. */
export interface Normal {
  readonly mean: number;
  readonly variance: number;
}

/** Many normal values, all with mean 0 before, once each is known by its site. */
export interface Conditioned {
  /** The values the sites are about. */
  readonly values: readonly Normal[];
  /**
   * Any other value that belongs to them.
   *
   * @param covariances - With each of the values, before anything was known.
   * @param variance - Its own, before.
   */
  at(covariances: readonly number[], variance: number): Normal;
}

/** Lower triangle whose product with its own transpose is the matrix. */
function cholesky(matrix: readonly Float64Array[]): readonly Float64Array[] {
  const lower = matrix.map(({ length }) => new Float64Array(length));
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!;
    }
  }
  return lower;
}

function forwards(lower: readonly Float64Array[], right: readonly number[]): Float64Array {
  const solved = new Float64Array(right.length);
  for (let i = 0; i < right.length; i++) {
    let sum = right[i]!;
    for (let k = 0; k < i; k++) sum -= lower[i]![k]! * solved[k]!;
    solved[i] = sum / lower[i]![i]!;
  }
  return solved;
}

function backwards(lower: readonly Float64Array[], right: Float64Array): Float64Array {
  const solved = new Float64Array(right.length);
  for (let i = right.length - 1; i >= 0; i--) {
    let sum = right[i]!;
    for (let k = i + 1; k < right.length; k++) sum -= lower[k]![i]! * solved[k]!;
    solved[i] = sum / lower[i]![i]!;
  }
  return solved;
}

/**
 * All at once, so that the order of what was seen is none of its business.
 *
 * @param prior - Covariances of the values before anything is known, symmetric.
 * @source conjugate normal, with the matrix I + √T·K·√T that stays well behaved: Rasmussen and Williams 2006, section 3.6, from memory
 */
export function conditioned(prior: readonly (readonly number[])[], sites: readonly Site[]): Conditioned {
  const roots = sites.map(({ precision }) => Math.sqrt(precision));
  const lower = cholesky(
    prior.map((row, i) =>
      Float64Array.from(row, (value, j) => roots[i]! * value * roots[j]! + (i === j ? 1 : 0)),
    ),
  );
  const pulled = prior.map(
    (row, i) => roots[i]! * row.reduce((sum, value, j) => sum + value * sites[j]!.pull, 0),
  );
  const back = backwards(lower, forwards(lower, pulled));
  const weights = sites.map(({ pull }, i) => pull - roots[i]! * back[i]!);
  const at: Conditioned["at"] = (covariances, variance) => {
    const known = forwards(
      lower,
      covariances.map((value, i) => roots[i]! * value),
    );
    return {
      mean: covariances.reduce((sum, value, i) => sum + value * weights[i]!, 0),
      variance: Math.max(0, variance - known.reduce((sum, value) => sum + value * value, 0)),
    };
  };
  return { values: prior.map((row, i) => at(row, row[i]!)), at };
}
