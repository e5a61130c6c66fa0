import { CURVES, catalogue } from "../../../src/farm/index.ts";
import { clampedAverage, response, singleDegreeDays } from "../../../src/growth/index.ts";
import {
  DIURNALS,
  type Diurnal,
  goudriaanVanLaar,
  linvill,
  partonLogan,
  type Turning,
} from "../../../src/weather/index.ts";
import published from "../../published/diurnal.json" with { type: "json" };
import { type Score, scoreOf } from "../../real/hourlyNormals.ts";
import type { Check, Subject } from "./check.ts";

/** A day repeated, from its sunrise. */
const repeated = (curve: Diurnal, day: Turning, sinceRise: number): number =>
  curve(day, { ...day, rise: day.rise + 24 }, day.rise + sinceRise);

const around = (hour: number): number => ((hour % 24) + 24) % 24;

const { length, low, high } = published.goudriaanVanLaar;
const DAY: Turning = { rise: 6, length, low, high };

const NAMED = [
  {
    name: "Goudriaan and van Laar",
    source: "goudriaanVanLaar1994",
    curve: goudriaanVanLaar,
    rows: published.goudriaanVanLaar,
    from: 6,
  },
  {
    name: "Parton and Logan",
    source: "partonLogan1981",
    curve: partonLogan,
    rows: published.partonLogan,
    from: 6,
  },
  { name: "Linvill", source: "linvill1990", curve: linvill, rows: published.linvill, from: 0 },
] as const;

/** What one day of the default curve earns between 4 and 24 °C, minute by minute. [°C·d] */
function hourly(day: Turning): number {
  const minutes = 24 * 60;
  let sum = 0;
  for (let i = 0; i < minutes; i++) {
    const temperature = repeated(goudriaanVanLaar, day, (i + 0.5) / 60);
    sum += Math.min(20, Math.max(0, temperature - 4));
  }
  return sum / minutes;
}

export const curves: Subject = {
  name: "Hours from days",
  checks: [
    ...NAMED.flatMap(({ name, source, curve, rows, from }) =>
      rows.points.map(
        ([hour, temperature]): Check => ({
          what: `${name}, ${hour} h`,
          source,
          unit: "°C",
          published: temperature!,
          // The last hour of the logarithm is the end of the night, not the sunrise after it.
          ours: () => repeated(curve, DAY, hour === 24 ? 24 : around(hour! - from)),
          tolerance: 0.5e-6,
          why: "half of the last printed digit",
        }),
      ),
    ),
    ...published.byMethod.flatMap(({ dayLength, low: cold, high: warm, ...row }): readonly Check[] => {
      const day = { rise: 12 - dayLength / 2, length: dayLength, low: cold, high: warm };
      const between = { lower: 4, upper: 24 };
      const common = {
        source: "leafpaceDerivation",
        unit: "°C·d",
        tolerance: 0.5e-3,
        why: "half of the last printed digit",
      };
      const about = `${cold} to ${warm} °C in ${dayLength} h of day`;
      return [
        {
          what: `between 4 and 24 °C hour by hour, ${about}`,
          published: row.hourly,
          ours: () => hourly(day),
          ...common,
        },
        {
          what: `single sine, ${about}`,
          published: row.sine,
          ours: () => singleDegreeDays(day, between, "sine", "horizontal"),
          ...common,
        },
        {
          what: `single triangle, ${about}`,
          published: row.triangle,
          ours: () => singleDegreeDays(day, between, "triangle", "horizontal"),
          ...common,
        },
        {
          what: `clamped average, ${about}`,
          published: row.method2,
          ours: () => clampedAverage(day, between),
          ...common,
        },
      ];
    }),
  ],
};

const { growth } = catalogue().crops.get("lettuce-mix")!;
const scores = (): readonly Score[] =>
  CURVES.map((name) => scoreOf(DIURNALS[name], (each) => response(each, growth)));
const percent = (share: number): string => `${share >= 0 ? "+" : "−"}${Math.abs(share * 100).toFixed(1)} %`;

/** Published errors of such curves against single days are 1 to 3 °C; means of thirty years are smoother. */
export const againstNormals: Subject = {
  name: "Hours rebuilt from the lows and highs of Seattle's normals",
  checks: [
    ...CURVES.map(
      (name, i): Check => ({
        what: `${name}: root mean square error`,
        source: "seattleHourlyNormals",
        unit: "°C",
        published: 0,
        ours: () => scores()[i]!.rmse,
        tolerance: 1.2,
        why: "Parton and Logan found a mean error of 1.2 °C at its best",
      }),
    ),
    {
      what: "the default: bias",
      source: "seattleHourlyNormals",
      unit: "°C",
      published: 0,
      ours: () => scores()[0]!.bias,
      tolerance: 0.15,
      why: "3 °C·d in three weeks, a quarter of a day of growth",
    },
    {
      what: "the default: thermal time of a year, share",
      source: "seattleHourlyNormals",
      unit: "1",
      published: 0,
      ours: () => scores()[0]!.thermalTime,
      tolerance: 0.02,
      why: "a fifth of the spread of a requirement",
    },
  ],
  findings: () => {
    const found = scores();
    const best = CURVES[found.findIndex(({ rmse }) => rmse === Math.min(...found.map((each) => each.rmse)))]!;
    const truest = CURVES.toSorted(
      (a, b) =>
        Math.abs(found[CURVES.indexOf(a)]!.thermalTime) - Math.abs(found[CURVES.indexOf(b)]!.thermalTime),
    )[0]!;
    return [
      ...CURVES.map((name, i) => {
        const { hours, rmse, bias, thermalTime } = found[i]!;
        return `${name.padEnd(20)} RMSE ${rmse.toFixed(3)} °C, bias ${bias >= 0 ? "+" : "−"}${Math.abs(bias).toFixed(3)} °C, thermal time of lettuce ${percent(thermalTime)}, over ${hours} hours.`;
      }),
      `Hour by hour ${best} comes nearest, in thermal time ${truest}. Dates are made of thermal time, and errors hour by hour cancel in it while a bias does not: the default is ${CURVES[0]}.`,
    ];
  },
};
