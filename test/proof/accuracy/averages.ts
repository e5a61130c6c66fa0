import { clampedAverage } from "../../../src/growth/index.ts";
import fahrenheit from "../../published/degree-days-86-50.json" with { type: "json" };
import type { Subject } from "./check.ts";

const { days, lower, upper, sumOfFirstThree } = fahrenheit;

/** The growing degree-day of American extension: low and high kept between 50 and 86 °F. */
export const averages: Subject = {
  name: "Clamped average, 50 to 86 °F",
  checks: [
    ...days.map(({ low, high, result, source }) => ({
      what: `${low} to ${high} °F`,
      source,
      unit: "°F·d",
      published: result,
      ours: () => clampedAverage({ low, high }, { lower, upper }),
      tolerance: 0,
      why: "printed whole",
    })),
    {
      what: "three days of the column",
      source: "wisconsinColumn2018",
      unit: "°F·d",
      published: sumOfFirstThree,
      ours: () => days.slice(0, 3).reduce((sum, day) => sum + clampedAverage(day, { lower, upper }), 0),
      tolerance: 0,
      why: "printed whole",
    },
  ],
};
