import { catalogue } from "../../../src/farm/index.ts";
import { killingTemperature } from "../../../src/watch/index.ts";
import type { Subject } from "./check.ts";

const { crops, settings } = catalogue();
const killing = (id: string, lows: number): number =>
  killingTemperature(crops.get(id)!, { lows, lastDay: Math.max(lows, 3) + 3 }, settings);
const lost = (id: string): number => killing(id, 10) - killing(id, 0);

/** The same night after a week of 10 °C and one of 0 °C nights. */
export const hardeningRows: Subject = {
  name: "Hardening",
  checks: [
    {
      what: "spinach, hardiness lost in warmth",
      source: "rapidColdAcclimation",
      unit: "°C",
      published: [3, 5],
      ours: () => lost("spinach"),
      tolerance: 0,
      why: "a range",
    },
    {
      what: "red Russian kale, soft (winter canola)",
      source: "canolaFreezing2004",
      unit: "°C",
      published: -3,
      ours: () => killing("red-russian-kale", 10),
      tolerance: 0,
      why: "taken over",
    },
    {
      what: "red Russian kale, hardened",
      source: "dawlingWinterKill",
      unit: "°C",
      published: -9.5,
      ours: () => killing("red-russian-kale", 0),
      tolerance: 0,
      why: "taken over",
    },
    {
      what: "spinach, hardened leaves in January",
      source: "tamura2002",
      unit: "°C",
      published: [-18, -13],
      ours: () => killing("spinach", 0),
      tolerance: 0,
      why: "a range",
    },
  ],
};
