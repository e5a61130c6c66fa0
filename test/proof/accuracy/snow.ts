import { catalogue } from "../../../src/farm/index.ts";
import { snowOf } from "../../../src/weather/index.ts";
import published from "../../published/rain-snow.json" with { type: "json" };
import type { Subject } from "./check.ts";

const { settings } = catalogue();

/** The warmest air, by tenths, at which all falls as snow. [°C] */
const warmestSnow = (): number => {
  const air = Float64Array.from({ length: 100 }, (_, i) => (i - 50) / 10);
  const { snowfall } = snowOf(air, new Float64Array(100).fill(1), new Uint8Array(100), settings);
  return air[snowfall.lastIndexOf(1)]!;
};

export const snow: Subject = {
  name: "Snow",
  checks: [
    {
      what: "warmest air in which it snows",
      source: "jennings2018",
      unit: "°C",
      published: published.threshold.celsius,
      ours: warmestSnow,
      tolerance: 0,
      why: "taken over",
    },
  ],
};
