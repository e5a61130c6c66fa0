import { catalogue } from "../../../src/farm/index.ts";
import { snowOf } from "../../../src/weather/index.ts";
import published from "../../published/snowmelt.json" with { type: "json" };
import type { Subject } from "./check.ts";

const { settings } = catalogue();

/** What melts of deep snow in a day of one temperature. [mm] */
function meltedAt(celsius: number): number {
  const air = new Float64Array(49).fill(celsius).fill(-1, 0, 24);
  const falls = new Float64Array(49);
  falls[0] = 500;
  const day = Uint8Array.from(air, (_, i) => Math.floor(i / 24));
  return 500 - snowOf(air, falls, day, settings).snow[48]!;
}

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
    {
      what: "melt of a day of 1 °C, coefficient stated in inches and °F",
      source: "nehSnowmelt2004",
      unit: "mm",
      published: published.melt.inchesPerFahrenheitDay * 25.4 * 1.8,
      ours: () => meltedAt(1),
      tolerance: 0.005,
      why: "printed to a hundredth of a millimetre",
    },
  ],
};
