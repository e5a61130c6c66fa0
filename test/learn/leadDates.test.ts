import { expect, it } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { changeOf, changeOff, LEAD_CROPS, leadDates } from "../proof/leadDates.ts";

const { settings } = catalogue();

// Simulated farms, drawn from what is believed of farms; the report of `npm run learning` does many more.
it.each(LEAD_CROPS)(
  "five cuts of $id take a third off the error of its dates where the farm is off, and add none where it is not",
  (crop) => {
    const told = new Map([-1, 0, 1].map((off) => [off, leadDates(crop, off, 300, 4, settings)]));
    expect(changeOff(told)).toBeLessThanOrEqual(-1 / 3);
    expect(changeOf(told.get(0)!)).toBeLessThanOrEqual(0.05);
    for (const { before, after, pace } of told.values()) {
      expect(after.crps).toBeLessThan(Math.min(before.crps, pace.crps));
      expect(after.width).toBeLessThan(before.width);
    }
  },
);
