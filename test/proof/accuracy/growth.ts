import { catalogue } from "../../../src/farm/index.ts";
import {
  leafCurve,
  leafLength,
  lightOnWeight,
  lightShare,
  ownRequirementAt,
  relativeWeight,
  response,
  thermalTimeAt,
} from "../../../src/growth/index.ts";
import { celsius, centimetre } from "../../../src/quantity/index.ts";
import effective from "../../published/effective-day-degrees.json" with { type: "json" };
import fifty from "../../published/lettuce-to-fifty-grams.json" with { type: "json" };
import sizes from "../../published/size-curves.json" with { type: "json" };
import type { Check, Subject } from "./check.ts";

const { crops, settings } = catalogue();
const HALF = { tolerance: 0.5e-6, why: "half of the last printed digit" } as const;

const effectiveSum = (days: readonly (readonly number[])[], f: number): number =>
  days.reduce((sum, [warmth, sun]) => sum + warmth! * lightShare(warmth!, sun!, f), 0);

const curve = { start: 0, end: sizes.end, rate: sizes.rate, middle: sizes.middle };
const [length, thermalTime] = sizes.inverse as [number, number];

export const paceAndSize: Subject = {
  name: "Pace by light, and size",
  checks: [
    ...effective.days.map(
      ({ D, R, f, E }): Check => ({
        what: `${D} °C·d in ${R} MJ/m² with f ${f}`,
        source: "scaifeCoxMorris1987",
        unit: "°C·d",
        published: E,
        ours: () => effectiveSum([[D, R]], f),
        ...HALF,
      }),
    ),
    {
      what: "two days, one by one",
      source: "scaifeCoxMorris1987",
      unit: "°C·d",
      published: effective.summed.daily,
      ours: () => effectiveSum(effective.summed.days, effective.summed.f),
      ...HALF,
    },
    ...sizes.points.map(
      ([at, size]): Check => ({
        what: `logistic at ${at} °C·d`,
        source: "leafpaceDerivation",
        unit: "cm",
        published: size!,
        ours: () => leafLength(curve, at!),
        ...HALF,
      }),
    ),
    {
      what: `thermal time at ${length} cm`,
      source: "leafpaceDerivation",
      unit: "°C·d",
      published: thermalTime,
      ours: () => thermalTimeAt(curve, centimetre(length)),
      ...HALF,
    },
    ...[...crops.values()].map(
      (crop): Check => ({
        what: `${crop.id}: days its window lasts at ${settings.windowTemperature} °C in full light`,
        source: "commonPractice",
        unit: "d",
        published: [4, 5],
        ours: () => {
          const own = leafCurve(crop, crop.requirement, settings);
          const window = thermalTimeAt(own, crop.largest) - thermalTimeAt(own, crop.smallest);
          return window / response(settings.windowTemperature, crop.growth);
        },
        tolerance: 0,
        why: "growers say four or five",
      }),
    ),
  ],
};

export const requirements: Subject = {
  name: "Requirements brought to the model's clock",
  checks: [...crops.values()].flatMap((crop): readonly Check[] => {
    const { counted } = crop;
    if (counted === undefined || counted.at === "here") return [];
    const { at } = counted;
    return [
      {
        what: `${crop.id}: ${counted.sum} °C·d by ${counted.method} above ${counted.base} °C from ${counted.from}, at ${at} °C`,
        source: "leafpaceDerivation",
        unit: "°C·d",
        published: crop.requirement,
        ours: () => ownRequirementAt(crop, counted, celsius(at), settings) ?? Number.NaN,
        tolerance: 0.5,
        why: "half of the last printed digit",
      },
    ];
  }),
};

const lettuce = crops.get("lettuce-mix")!;

/** Spread of the logarithms: about the coefficient of variation. [1] */
function scatter(values: readonly number[]): number {
  const logs = values.map(Math.log);
  const mean = logs.reduce((a, b) => a + b, 0) / logs.length;
  return Math.sqrt(logs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (logs.length - 1));
}

/** The model's own thermal time of a plot, taken as steady at its mean temperature. [°C·d] */
const own = ({ sum, temperature }: (typeof fifty.rows)[number]): number =>
  (sum / temperature) * response(temperature, lettuce.growth);

/**
 * Weight of a leaf as the model has it at a thermal time, against that at the smallest size. The curve is made for leaves;
 * plants of 50 g lie beyond it, so it is followed without its end: as steep as between smallest and largest size.
 */
const leafCurveOfLettuce = leafCurve(lettuce, lettuce.requirement, settings);
const steepness =
  Math.log(
    relativeWeight(lettuce.largest, lettuce, settings) / relativeWeight(lettuce.smallest, lettuce, settings),
  ) /
  (thermalTimeAt(leafCurveOfLettuce, lettuce.largest) - thermalTimeAt(leafCurveOfLettuce, lettuce.smallest));

/** Thermal time to one weight, with what its light adds or takes put into thermal time by the steepness of weight. [°C·d] */
const atEqualLight = (row: (typeof fifty.rows)[number]): number =>
  own(row) + Math.log(lightOnWeight(row.light, lettuce, settings)) / steepness;

const raw = (): number => scatter(fifty.rows.map(({ sum }) => sum));
const hourly = (): number => scatter(fifty.rows.map(own));
/** Relative to the mean of the sums without light, so that a shift of all of them does not flatter. */
const lit = (): number => {
  const values = fifty.rows.map(atEqualLight);
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const plain = fifty.rows.map(own).reduce((a, b) => a + b, 0) / values.length;
  return scatter(values.map((value) => value - mean + plain));
};

export const openLettuce: Subject = {
  name: "Lettuce to 50 g, open data, not fitted",
  checks: [
    {
      what: "scatter of the model's thermal time, against that of °C·d above 0",
      source: "openLettuceData",
      unit: "1",
      published: [0, raw()],
      ours: hourly,
      tolerance: 0,
      why: "the model's clock must do no worse",
    },
  ],
  findings: () => [
    `Scatter (standard deviation of logarithms) of the sums to 50 g: ${raw().toFixed(3)} above 0 °C, ${hourly().toFixed(3)} by the hourly response, ${lit().toFixed(3)} with the light term of weight.`,
    lit() < hourly()
      ? `The light term narrows what the clock leaves, by ${Math.round((1 - lit() / hourly()) * 100)} %. Three plots can show no more than a direction.`
      : "The light term of weight does not narrow what the clock leaves. Three plots can show no more than a direction.",
  ],
};
