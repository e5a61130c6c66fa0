import type { Members } from "../weather/index.ts";

/** Members that are alike: what several beds bring together is weighed in each group of them. */
export interface Weathers {
  /** Members of each group, from the coldest on. */
  readonly groups: readonly (readonly number[])[];
  /** Share of all members. [0–1] */
  readonly shares: readonly number[];
}

/** Cold, middling and warm: enough for beds that come early or late together. judgement */
const GROUPS = 3;

/** The members in groups by how warm the hours up to `end` are. @param hours - From now. */
export function weathersOf({ departures }: Members, hours: number): Weathers {
  const mean = (row: Float64Array): number => row.subarray(0, hours).reduce((sum, value) => sum + value, 0);
  const order = departures
    .map((row, member) => ({ member, warm: mean(row) }))
    .sort((a, b) => a.warm - b.warm || a.member - b.member)
    .map(({ member }) => member);
  const count = Math.min(GROUPS, order.length);
  const groups = Array.from({ length: count }, (_, g) =>
    order.slice(Math.round((g * order.length) / count), Math.round(((g + 1) * order.length) / count)),
  );
  return { groups, shares: groups.map(({ length }) => length / order.length) };
}
