import { type Crop, catalogue } from "../../../src/farm/index.ts";
import { emergence } from "../../../src/growth/index.ts";
import { celsius, degreeDays } from "../../../src/quantity/index.ts";
import harrington from "../../published/emergence-harrington.json" with { type: "json" };
import bierhuizen from "../../published/emergence-wagenvoort-bierhuizen.json" with { type: "json" };
import type { Check, Subject } from "./check.ts";

const { crops } = catalogue();

/** The catalogue's crop of a row of the tables; other rows are computed with their own lowest temperature and recalled sum. */
const OURS: Readonly<Record<string, string>> = {
  lettuce: "lettuce-mix",
  spinach: "spinach",
  beet: "beet-greens",
  radish: "radish-greens",
  cress: "cress",
  "corn salad": "mache",
};

const needOf = ({ crop, lowest, sumRecalled }: (typeof bierhuizen.crops)[number]): Crop["emergence"] =>
  crops.get(OURS[crop] ?? "")?.emergence ?? {
    base: celsius(lowest),
    sum: degreeDays(sumRecalled),
    tooWarm: celsius(30),
  };

/** Days to emergence in a seedbed that keeps one temperature. [d] */
function days(temperature: number, need: Crop["emergence"]): number {
  const hour = emergence(new Float64Array(24 * 365).fill(temperature), need);
  return hour === null ? Number.NaN : (hour + 1) / 24;
}

export const emergenceTable: Subject = {
  name: "Emergence, Wagenvoort and Bierhuizen",
  checks: bierhuizen.crops.flatMap((row) =>
    ([10, 20] as const).map(
      (temperature): Check => ({
        what: `${row.crop} at ${temperature} °C`,
        source: "wagenvoortBierhuizen1974",
        unit: "d",
        published: temperature === 10 ? row.days10 : row.days20,
        ours: () => days(temperature, needOf(row)),
        tolerance: 0.55,
        why: "printed in whole days, ours in whole hours",
      }),
    ),
  ),
};

/** Rows of Harrington and Minges with their kin in the other table; turnip's is not credible and carrot, celery, parsnip and pea have none. */
const ROWS = [
  ["lettuce", "lettuce"],
  ["spinach", "spinach"],
  ["beet", "beet"],
  ["cabbage", "white cabbage"],
  ["radish", "radish"],
  ["onion", "onion"],
  ["parsley", "parsley"],
] as const;

const cells = ROWS.flatMap(([crop, kin]) => {
  const row = harrington.days.find((each) => each.crop === crop)!;
  const other = bierhuizen.crops.find((each) => each.crop === kin)!;
  return harrington.temperatures.map((temperature, i) => ({
    crop,
    temperature,
    printed: row.days[i]!,
    /** What the other table's line gives at this temperature. [d] */
    line: temperature > other.lowest ? other.sumFrom10 / (temperature - other.lowest) : Number.NaN,
    need: needOf(other),
  }));
});

/** Between the two tables: where they agree, this is a narrow demand. */
const between = cells.flatMap(({ crop, temperature, printed, line, need }): readonly Check[] => {
  if (typeof printed !== "number" || temperature < 5 || temperature > 25) return [];
  return [
    {
      what: `${crop} at ${temperature} °C, between both tables`,
      source: "harringtonMinges1954",
      unit: "d",
      published: [Math.min(printed, line), Math.max(printed, line)],
      ours: () => days(temperature, need),
      tolerance: 0.05 * line,
      why: "5 %: sums recalled against the table's days at 10 °C",
    },
  ];
});

/** Seedbeds in which nothing, or less than 60 % of what is normal, came up must be warned of rather than waited for. */
const stand = harrington.percentNormal.flatMap(({ crop, percent }): readonly Check[] => {
  const ours = crops.get(OURS[crop] ?? "");
  if (ours === undefined) return [];
  const lost = harrington.temperatures.find((temperature, i) => temperature >= 15 && percent[i]! < 60);
  return [
    {
      what: `${crop}: seedbed warned of before less than 60 % come up`,
      source: "harringtonMinges1954",
      unit: "°C",
      published: [15, lost!],
      ours: () => ours.emergence.tooWarm,
      tolerance: 0,
      why: "a range",
    },
  ];
});

export const emergenceFast: Subject = {
  name: "Emergence, Harrington and Minges",
  checks: [...between, ...stand],
  findings: () => [
    "Ours less Harrington and Minges' days, cell by cell (0 to 40 °C by 5; NG none came up, - not tested or below our lowest temperature):",
    ...ROWS.map(([crop]) => {
      const row = cells.filter((cell) => cell.crop === crop);
      const left = row.map(({ printed, temperature, need }) => {
        if (typeof printed !== "number") return printed;
        const ours = days(temperature, need);
        return Number.isNaN(ours)
          ? "-"
          : `${ours < printed ? "−" : "+"}${Math.abs(ours - printed).toFixed(1)}`;
      });
      return `  ${crop.padEnd(8)} ${left.map((each) => each.padStart(6)).join("")}`;
    }),
    "It is the fast bound for lettuce and onion, nearer to germination than to emergence in the field, and slow in the cold for the others. Seed that came up at 0 °C (lettuce in 49 days, spinach in 63) never does here.",
  ],
};
