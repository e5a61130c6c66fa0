import { expect, test } from "vitest";
import { midweek, tooCalm } from "./midweekTrials.ts";

// A few only: `npm run midweek` plans a hundred.
test("a week planned anew on Wednesday gives up no more than the price of the instructions it saves", () => {
  const weeks = [1, 2, 3, 4].map(midweek);
  expect(weeks.filter(tooCalm)).toEqual([]);
  expect(weeks.every(({ scratch, calm, walks }) => calm <= scratch && scratch <= walks)).toBe(true);
  expect(weeks.reduce((sum, { scratch, calm }) => sum + scratch - calm, 0)).toBeGreaterThan(0);
});
