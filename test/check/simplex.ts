const NOTHING = 1e-9;

/**
 * The most that a linear program with columns of at least 0 can be worth: rows are held to at most their bound, and no bound is
 * below 0. The plain simplex method on a table, first column and first row by number (Bland), so that it ends.
 */
export function most(
  worth: readonly number[],
  rows: readonly { readonly amounts: readonly number[]; readonly atMost: number }[],
): number {
  const n = worth.length;
  const table = rows.map(({ amounts, atMost }, r) => [
    ...amounts,
    ...rows.map((_, other) => (other === r ? 1 : 0)),
    atMost,
  ]);
  const last = n + rows.length;
  const goal = [...worth.map((each) => -each), ...rows.map(() => 0), 0];
  const basis = rows.map((_, r) => n + r);
  for (;;) {
    const enters = goal.findIndex((value, c) => c < last && value < -NOTHING);
    if (enters < 0) return goal[last]!;
    let leaves = -1;
    table.forEach((row, r) => {
      if (row[enters]! <= NOTHING) return;
      if (leaves < 0) {
        leaves = r;
        return;
      }
      const [mine, best] = [row[last]! / row[enters]!, table[leaves]![last]! / table[leaves]![enters]!];
      if (mine < best - NOTHING || (mine < best + NOTHING && basis[r]! < basis[leaves]!)) leaves = r;
    });
    if (leaves < 0) throw new Error("the program has no end");
    const pivot = table[leaves]!;
    const by = pivot[enters]!;
    for (let c = 0; c <= last; c++) pivot[c]! /= by;
    for (const row of [...table, goal]) {
      const times = row[enters]!;
      if (row === pivot || times === 0) continue;
      for (let c = 0; c <= last; c++) row[c]! -= times * pivot[c]!;
    }
    basis[leaves] = enters;
  }
}
