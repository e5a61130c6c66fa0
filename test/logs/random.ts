/** Numbers that look random and are the same on every run. */
export interface Random {
  /** 0 to below 1. */
  next(): number;
  /** A whole number from 0 to below a limit. */
  below(limit: number): number;
  chance(share: number): boolean;
  pick<Value>(values: readonly Value[]): Value;
  shuffled<Value>(values: readonly Value[]): readonly Value[];
}

/** Mulberry32: a common small generator of 32 bits, recalled. */
export function random(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return {
    next,
    below,
    chance: (share) => next() < share,
    pick: (values) => values[below(values.length)]!,
    shuffled: (values) => {
      const all = [...values];
      for (let i = all.length - 1; i > 0; i--) {
        const k = below(i + 1);
        [all[i], all[k]] = [all[k]!, all[i]!];
      }
      return all;
    },
  };
}
