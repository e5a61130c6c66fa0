import { type Crop, catalogue, type Setting } from "../../../src/farm/index.ts";
import { groundIn, type Sowing, sowing, sowingDates, sumsIn } from "../sowings.ts";
import { STATED } from "../statedDays.ts";
import type { Check, Subject } from "./check.ts";

const YEARS = [2012, 2013, 2014, 2015];
/** Temperature the requirements were set at, and how far from it a sowing may be to be compared with days stated without one. [°C] */
const REFERENCE = 15.5;
const NEAR = 1.5;
/** Stated days are met when no more than this far off. [d] */
const TOLERANCE = 3;

const NIGHTS: Setting = [{ cover: "row-cover-19", state: "nights" }];
const WAYS: readonly (readonly [name: string, setting: Setting])[] = [
  ["bare", []],
  ["19 g by nights", NIGHTS],
];
/** Stated for hydroponics in a warm greenhouse, or only for a kin: nothing a bed of them outdoors could be held to. */
const NOT_HELD = ["kale", "red-russian-kale", "tatsoi"];
const SOURCES: Readonly<Record<string, string>> = {
  "lettuce-mix": "threeSistersFarm2005",
  spinach: "edisSpinach",
};

const { crops } = catalogue();
const grounds = new Map<Setting, readonly ReturnType<typeof groundIn>[]>();
const groundsUnder = (setting: Setting): readonly ReturnType<typeof groundIn>[] => {
  const known = grounds.get(setting) ?? [groundIn("Seattle", setting), groundIn("New York", setting)];
  grounds.set(setting, known);
  return known;
};

/** Every sowing of a crop on the 1st and 15th of March to September, in both cities. */
const grown = (crop: Crop, setting: Setting): readonly Sowing[] =>
  groundsUnder(setting).flatMap((ground) => {
    const sums = sumsIn(ground, crop);
    return YEARS.flatMap(sowingDates).map((sown) => sowing(ground, crop, sums, sown));
  });

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Mean days of a crop's sowings near the reference temperature. [d] */
const daysNear = (id: string, setting: Setting): number =>
  mean(
    grown(crops.get(id)!, setting)
      .filter((each) => Math.abs(each.mean - REFERENCE) <= NEAR)
      .flatMap(({ days }) => days ?? []),
  );

const checks = [...STATED]
  .filter(([id]) => !NOT_HELD.includes(id))
  .flatMap(([id, { from, to }]) =>
    WAYS.map(
      ([way, setting]): Check => ({
        what: `${crops.get(id)!.name}, ${way}`,
        source: SOURCES[id] ?? "commonPractice",
        unit: "d",
        published: [from, to],
        ours: () => daysNear(id, setting),
        tolerance: TOLERANCE,
        why: "stated for no season and no temperature; ours near 15.5 °C",
      }),
    ),
  );

/** Why sowings miss what is stated, with how many. */
function misses(id: string, setting: Setting): string {
  const { from, to } = STATED.get(id)!;
  const all = grown(crops.get(id)!, setting);
  const early = all.filter(({ days }) => days !== null && days < from - TOLERANCE);
  const late = all.filter(({ days }) => days === null || days > to + TOLERANCE);
  const count = (of: readonly Sowing[], is: (each: Sowing) => boolean): number => of.filter(is).length;
  const cold = count(late, (each) => each.mean < REFERENCE - NEAR);
  const warm = count(early, (each) => each.mean > REFERENCE + NEAR);
  const parts = [
    `${all.length - early.length - late.length} of ${all.length} met`,
    ...(late.length > 0 ? [`${late.length} late, ${cold} of them colder than 14 °C`] : []),
    ...(early.length > 0 ? [`${early.length} early, ${warm} of them warmer than 17 °C`] : []),
  ];
  return parts.join("; ");
}

export const saladSize: Subject = {
  name: "Days from sowing to salad size",
  checks,
  findings: () => [
    "All 112 sowings of each crop, whatever the weather, against the stated days give or take three:",
    ...[...STATED.keys()].flatMap((id) =>
      WAYS.map(([way, setting]) => `  ${id}, ${way}: ${misses(id, setting)}.`),
    ),
    ...NOT_HELD.map((id) => {
      const { from, to, differs } = STATED.get(id)!;
      const [bare, nights] = WAYS.map(([, setting]) => daysNear(id, setting).toFixed(1));
      return `Not held to it: ${id}, stated ${from} to ${to} (${differs}), ours ${bare} bare and ${nights} by nights.`;
    }),
    "Mizuna, mustard and pak choi are stated at full size, which bounds baby leaf from above.",
    "Lettuce in the warmest weeks stays early: its published optimum of development is 28 °C, and the stated days carry no season.",
    "Spinach, mâche and claytonia in midsummer grow on paper; the seedbed is then warned of as too warm, which is the published failure.",
  ],
};
