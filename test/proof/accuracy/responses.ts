import { response, wangEngel, yin } from "../../../src/growth/index.ts";
import { celsius } from "../../../src/quantity/index.ts";
import published from "../../published/responses.json" with { type: "json" };
import type { Check, Subject } from "./check.ts";

const { base, optimumLow, optimumHigh, ceiling } = published.trapezoid;
const growth = {
  base: celsius(base),
  optimumLow: celsius(optimumLow),
  optimumHigh: celsius(optimumHigh),
  ceiling: celsius(ceiling),
};
const smooth = { base: 4, optimum: 22, ceiling: 33 };

type Row = (typeof published.rows)[number];

const FORMS: readonly (readonly [
  name: string,
  source: string,
  printed: (row: Row) => number,
  ours: (t: number) => number,
])[] = [
  [
    "trapezoid",
    "leafpaceDerivation",
    (row) => row.trapezoid,
    (t) => response(t, growth) / (optimumLow - base),
  ],
  ["Yin", "yin1995", (row) => row.yin, (t) => yin(t, smooth, 1)],
  ["Wang and Engel", "wangEngel1998", (row) => row.wangEngel, (t) => wangEngel(t, smooth)],
  ["Yan and Hunt", "yanHunt1999", (row) => row.yanHunt, (t) => yin(t, { ...smooth, base: 0 }, 2)],
];

export const responses: Subject = {
  name: "Responses to temperature",
  checks: FORMS.flatMap(([name, source, printed, ours]) =>
    published.rows.map(
      (row): Check => ({
        what: `${name} at ${row.temperature} °C`,
        source,
        unit: "1",
        published: printed(row),
        ours: () => ours(row.temperature),
        tolerance: 0.5e-6,
        why: "half of the last printed digit",
      }),
    ),
  ),
};
