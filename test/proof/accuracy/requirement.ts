import { afterHarvests, gainOf } from "../../learn/harvests.ts";
import published from "../../published/requirement-updates.json" with { type: "json" };
import { calibrationTold } from "../calibration.ts";
import type { Check, Subject } from "./check.ts";

const { steady, drifting } = published;
const from = {
  source: "leafpaceDerivation",
  tolerance: 5e-7,
  why: "half of the last digit printed",
} as const;

/** Conjugate and Kalman updates of a requirement, which the joint answer must contain. */
export const requirementUpdates: Subject = {
  name: "Requirement, harvest by harvest",
  checks: [1, 2, 3, 4].flatMap((count): readonly Check[] => [
    {
      ...from,
      what: `gain of harvest ${count}`,
      unit: "1",
      published: steady.gains[count - 1]!,
      ours: () => gainOf(count),
    },
    {
      ...from,
      what: `mean after ${count}`,
      unit: "°C·d",
      published: steady.means[count - 1]!,
      ours: () => afterHarvests(count, 0).mean,
    },
    {
      ...from,
      what: `spread after ${count}`,
      unit: "°C·d",
      published: steady.spreads[count - 1]!,
      ours: () => Math.sqrt(afterHarvests(count, 0).variance),
    },
    {
      ...from,
      what: `mean after ${count} with a drift`,
      unit: "°C·d",
      published: drifting.means[count - 1]!,
      ours: () => afterHarvests(count, drifting.drift).mean,
    },
    ...(count < 4
      ? []
      : [
          {
            ...from,
            what: "variance after 4 with a drift",
            unit: "(°C·d)²",
            published: drifting.lastVariance,
            ours: () => afterHarvests(4, drifting.drift).variance,
          },
        ]),
  ]),
  findings: () => calibrationTold(1000).lines,
};
