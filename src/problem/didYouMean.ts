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

/** A word with its numbers taken out, and the first of them; null for a word without one. */
function numbered(word: string): { readonly stem: string; readonly number: number } | null {
  const number = /\d+(?:\.\d+)?/u.exec(word);
  return number === null
    ? null
    : { stem: plain(word).replace(/\d+(?:\.\d+)?/gu, "#"), number: Number(number[0]) };
}

const digits = (number: number): string => [...String(number)].sort().join("");

/**
 * Known names that differ from a word in a number alone, swapped digits first, then the nearest number: which of them is meant cannot be seen
 * from the spelling.
 *
 * @example unlikeInNumber("net-17", ["net-30", "net-15"]) // => ["net-15", "net-30"]
 */
export function unlikeInNumber(word: string, known: readonly string[]): readonly string[] {
  const asked = numbered(word);
  if (asked === null) return [];
  return known
    .map((name) => ({ name, own: numbered(name) }))
    .filter(({ own }) => own?.stem === asked.stem && own.number !== asked.number)
    .map(({ name, own }) => ({
      name,
      swapped: digits(own!.number) === digits(asked.number),
      away: Math.abs(own!.number - asked.number),
    }))
    .sort((a, b) => Number(b.swapped) - Number(a.swapped) || a.away - b.away)
    .map(({ name }) => name);
}

/**
 * The known name nearest to a mistyped one, or null when none is near. A single letter is near to everything, and another
 * number is no slip of spelling: neither brings a name up.
 *
 * @example didYouMean("spinnach", ["spinach", "arugula"]) // => "spinach"
 */
export function didYouMean(word: string, known: readonly string[]): string | null {
  if (plain(word).length < 2) return null;
  const reach = Math.max(1, Math.floor(plain(word).length / 3));
  const otherNumbers = unlikeInNumber(word, known);
  const ranked = known
    .filter((name) => !otherNumbers.includes(name))
    .map((name) => ({ name, edits: distance(plain(word), plain(name)) }))
    .filter(({ edits }) => edits <= reach)
    .sort((a, b) => a.edits - b.edits);
  return ranked[0]?.name ?? null;
}
