import { expect, test } from "vitest";
import { leadErrors } from "../../src/learn/index.ts";
import { date } from "./noted.ts";

test("errors of one lead are told as their mean and the mean of their size, by hand", () => {
  const followed = (lead: number, low: number, high: number) => ({
    issued: date("2026-04-20"),
    lead,
    error: { low, high },
  });
  expect(leadErrors([followed(3, 1, -2), followed(0, 0.5, 0.5), followed(3, -2, -1)])).toEqual([
    { lead: 0, forecasts: 1, mean: { low: 0.5, high: 0.5 }, usual: { low: 0.5, high: 0.5 } },
    { lead: 3, forecasts: 2, mean: { low: -0.5, high: -1.5 }, usual: { low: 1.5, high: 1.5 } },
  ]);
  expect(leadErrors([])).toEqual([]);
});
