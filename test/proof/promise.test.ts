import { expect, test } from "vitest";
import { shareKept, weeksKept } from "./keptShare.ts";

test("a share is counted over promises of more than nothing, and a week's promises hang together", () => {
  const kept = { product: "mix", mix: true, ahead: 4, median: 2, mayCome: 3 };
  const weeks = [
    [
      { ...kept, safe: 1, came: 1 },
      { ...kept, safe: 1, came: 2 },
      { ...kept, safe: 0, came: 0 },
    ],
    [
      { ...kept, safe: 1, came: 0.9 },
      { ...kept, safe: 1, came: 0 },
    ],
  ];
  const share = shareKept(weeks, ({ safe }) => safe);
  expect(share).toMatchObject({ promises: 4, kept: 2 });
  expect(share.binomial).toBeCloseTo(1.96 * 0.25, 6);
  expect(share.byWeek).toBeCloseTo((1.96 * Math.SQRT2) / 4, 6);
});

// Few weeks say little: `npm run promise` follows hundreds.
test("over some weeks as they might go in measured weather, what is safe is there in four cases of five, as far as so few can say", () => {
  const weeks = [...weeksKept("random", 7, 3), ...weeksKept("example", 2, 3)];
  const { promises, kept } = shareKept(weeks, ({ safe }) => safe);
  expect(promises).toBeGreaterThanOrEqual(7);
  const limit = 2.6 * Math.sqrt((0.8 * 0.2) / promises);
  expect(Math.abs(kept / promises - 0.8)).toBeLessThan(limit);
});
