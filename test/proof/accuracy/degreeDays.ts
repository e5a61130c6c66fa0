import { CUT_OFFS } from "../../../src/farm/index.ts";
import {
  clampedAverage,
  type DayShape,
  doubleDegreeDays,
  fourCaseDegreeDays,
  simpleAverage,
  singleDegreeDays,
} from "../../../src/growth/index.ts";
import { integrated } from "../../growth/integrated.ts";
import vectors from "../../published/degree-days-1.3.json" with { type: "json" };
import averages from "../../published/degree-days-average.json" with { type: "json" };
import type { Check, Subject } from "./check.ts";

const HALF = { tolerance: 0.5e-6, why: "half of the last printed digit" } as const;
const EXACT = { tolerance: 1e-9, why: "printed whole" } as const;

const shapeOf = (shape: string): DayShape => (shape === "sine" ? "sine" : "triangle");

const single = vectors.single.flatMap(({ shape, low, high, lower, upper, ...row }) =>
  CUT_OFFS.map(
    (cutOff): Check => ({
      what: `single ${shape}, ${low} to ${high} °C between ${lower} and ${upper}, ${cutOff}`,
      source: "leafpaceDerivation",
      unit: "°C·d",
      published: row[cutOff],
      ours: () => singleDegreeDays({ low, high }, { lower, upper }, shapeOf(shape), cutOff),
      ...HALF,
    }),
  ),
);

const double = vectors.double.flatMap(({ shape, low, high, next, lower, upper, ...row }) =>
  CUT_OFFS.map(
    (cutOff): Check => ({
      what: `double ${shape}, ${low} to ${high} to ${next} °C between ${lower} and ${upper}, ${cutOff}`,
      source: "leafpaceDerivation",
      unit: "°C·d",
      published: row[cutOff],
      ours: () => doubleDegreeDays({ low, high }, next, { lower, upper }, shapeOf(shape), cutOff),
      ...HALF,
    }),
  ),
);

export const dayShapes: Subject = {
  name: "Sines and triangles with every cut-off",
  checks: [...single, ...double],
};

export const averagesAndCases: Subject = {
  name: "Averages and the four cases",
  checks: [
    ...averages.averages.flatMap(({ low, high, base, upper, ...row }): readonly Check[] => {
      const day = { low, high };
      const thresholds = { lower: base, upper: upper ?? Number.POSITIVE_INFINITY };
      const about = `${low} to ${high} °C above ${base}${upper === null ? "" : `, below ${upper}`}`;
      const common = { source: "leafpaceDerivation", unit: "°C·d" } as const;
      return [
        {
          what: `simple average, ${about}`,
          published: row.method1,
          ours: () => simpleAverage(day, thresholds),
          ...common,
          ...EXACT,
        },
        {
          what: `clamped average, ${about}`,
          published: row.method2,
          ours: () => clampedAverage(day, thresholds),
          ...common,
          ...EXACT,
        },
        ...(["sine", "triangle"] as const).map((shape) => ({
          what: `single ${shape}, ${about}`,
          published: row[shape],
          ours: () => singleDegreeDays(day, thresholds, shape, "horizontal"),
          ...common,
          ...HALF,
        })),
      ];
    }),
    ...averages.fourCase.map(
      ({ base, low, high, result }): Check => ({
        what: `four cases, ${low} to ${high} °C above ${base}`,
        source: "metIeData03",
        unit: "°C·d",
        published: result,
        ours: () => fourCaseDegreeDays({ low, high }, base),
        ...EXACT,
      }),
    ),
  ],
};

/** Seeded numbers from 0 to 1 (a linear congruential generator). */
function* random(seed: number): Generator<number, never> {
  for (let state = seed; ; ) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    yield state / 2 ** 32;
  }
}

const DAYS = 10_000;

/** Worst difference from the integral over many random days from −60 to 60 °C; half of them have thresholds a crop could have. */
function worst(
  difference: (day: { low: number; high: number }, next: number, lower: number, upper: number) => number,
): number {
  const numbers = random(20_260_420);
  const within = (from: number, to: number): number => from + (to - from) * numbers.next().value;
  let most = 0;
  for (let i = 0; i < DAYS; i++) {
    const [a, b, next] = [within(-60, 60), within(-60, 60), within(-60, 60)];
    const lower = i % 2 === 0 ? within(-60, 60) : within(-2, 12);
    const upper = lower + within(0, 40);
    most = Math.max(
      most,
      Math.abs(difference({ low: Math.min(a, b), high: Math.max(a, b) }, next, lower, upper)),
    );
  }
  return most;
}

export const againstIntegral: Subject = {
  name: `Closed forms against quadrature, ${DAYS.toLocaleString("en")} random days each`,
  checks: (["sine", "triangle"] as const).flatMap((shape) =>
    CUT_OFFS.flatMap((cutOff): readonly Check[] => {
      const common = {
        source: "leafpaceDerivation",
        unit: "°C·d",
        published: 0,
        tolerance: 1e-9,
        why: "a sum of 120 °C in double precision, with room for quadrature split at the crossings",
      } as const;
      return [
        {
          what: `single ${shape}, ${cutOff}, worst`,
          ours: () =>
            worst((day, _, lower, upper) => {
              const between = { lower, upper };
              return singleDegreeDays(day, between, shape, cutOff) - integrated(day, between, shape, cutOff);
            }),
          ...common,
        },
        {
          what: `double ${shape}, ${cutOff}, worst`,
          ours: () =>
            worst((day, next, lower, upper) => {
              const between = { lower, upper };
              const rising = integrated(day, between, shape, cutOff);
              const falling = integrated({ low: next, high: day.high }, between, shape, cutOff);
              return doubleDegreeDays(day, next, between, shape, cutOff) - (rising + falling) / 2;
            }),
          ...common,
        },
      ];
    }),
  ),
};
