/** What a search offers, as far as it is wanted. */
export interface Offered<Of> {
  /** The best first. */
  readonly kept: readonly Of[];
  /** What is worth no more is not wanted. */
  floor(): number;
  offer(found: Of): void;
}

interface Worth {
  readonly worth: number;
}

/** The best so many. @param above - What is worth no more is not kept. */
export function bestOf<Of extends Worth>(most: number, above: number): Offered<Of> {
  const kept: Of[] = [];
  return {
    kept,
    floor: () => (kept.length < most ? above : Math.max(above, kept[kept.length - 1]!.worth)),
    offer(found) {
      let i = kept.length;
      while (i > 0 && kept[i - 1]!.worth < found.worth) i -= 1;
      kept.splice(i, 0, found);
      if (kept.length > most) kept.pop();
    },
  };
}

/** All of them; nothing more is wanted once there are too many. */
export function allOf<Of extends Worth>(most: number, above: number): Offered<Of> {
  const kept: Of[] = [];
  return {
    kept,
    floor: () => (kept.length > most ? Number.POSITIVE_INFINITY : above),
    offer(found) {
      kept.push(found);
    },
  };
}
