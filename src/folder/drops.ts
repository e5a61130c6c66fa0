/** Why a row, a reading or a day of a log is left out. */
export type Reason =
  | "noReading"
  | "unreadable"
  | "outOfRange"
  | "spike"
  | "repeated"
  | "noSuchHour"
  | "clockUnset"
  | "cutOff"
  | "lowAboveHigh"
  | "otherElement";

export interface Dropped {
  readonly reason: Reason;
  readonly count: number;
  readonly firstLine: number;
}

export interface Drops {
  add(reason: Reason, line: number): void;
  list(): readonly Dropped[];
}

/** Counts what is left out, with the line where each reason first came up. */
export function drops(): Drops {
  const found = new Map<Reason, { count: number; firstLine: number }>();
  return {
    add: (reason, line) => {
      const entry = found.get(reason);
      if (entry === undefined) found.set(reason, { count: 1, firstLine: line });
      else entry.count += 1;
    },
    list: () => [...found].map(([reason, entry]) => ({ reason, ...entry })),
  };
}

/** Counts of several parts of a log as one. */
export function allDrops(parts: readonly (readonly Dropped[])[]): readonly Dropped[] {
  const all = new Map<Reason, Dropped>();
  for (const { reason, count, firstLine } of parts.flat()) {
    const before = all.get(reason);
    all.set(reason, {
      reason,
      count: count + (before?.count ?? 0),
      firstLine: Math.min(firstLine, before?.firstLine ?? firstLine),
    });
  }
  return [...all.values()];
}
