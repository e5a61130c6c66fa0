/** Edits (insert, delete, replace, swap neighbours) that turn one word into another. */
function distance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, beforeLast[j - 2]! + 1);
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}

const plain = (word: string): string => word.toLowerCase().replace(/[\s_-]+/g, "");

/**
 * The known name nearest to a mistyped one, or null when none is near.
 *
 * @example didYouMean("spinnach", ["spinach", "arugula"]) // => "spinach"
 */
export function didYouMean(word: string, known: readonly string[]): string | null {
  const reach = Math.max(1, Math.floor(plain(word).length / 3));
  const ranked = known
    .map((name) => ({ name, edits: distance(plain(word), plain(name)) }))
    .filter(({ edits }) => edits <= reach)
    .sort((a, b) => a.edits - b.edits);
  return ranked[0]?.name ?? null;
}
