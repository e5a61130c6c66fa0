/** Chance that is the same for the same seed, on every machine. */
export interface Dice {
  /** From 0 to 1. */
  (): number;
  between(a: number, b: number): number;
  whole(a: number, b: number): number;
  happens(chance: number): boolean;
  one<Any>(of: readonly Any[]): Any;
  shuffled<Any>(of: readonly Any[]): readonly Any[];
}

/** Small seeded generator of numbers from 0 to 1. */
export function seeded(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const between = (a: number, b: number): number => a + (b - a) * next();
  const whole = (a: number, b: number): number => Math.floor(between(a, b + 1));
  return Object.assign(next, {
    between,
    whole,
    happens: (chance: number): boolean => next() < chance,
    one: <Any>(of: readonly Any[]): Any => of[whole(0, of.length - 1)]!,
    shuffled: <Any>(of: readonly Any[]): readonly Any[] =>
      of
        .map((each) => [next(), each] as const)
        .sort(([a], [b]) => a - b)
        .map(([, each]) => each),
  });
}
