import { mean, rootMeanSquare } from "simple-statistics";
import { describe, expect, it } from "vitest";
import type { Lying } from "../../src/cover/index.ts";
import { catalogue } from "../../src/farm/index.ts";
import { made } from "../proof/accuracy/check.ts";
import { coversFit, coversFree, coversShade } from "../proof/accuracy/covers.ts";
import gains from "../published/cover-gains.json" with { type: "json" };
import { gain } from "./oneHour.ts";

const { covers, settings } = catalogue();
const under = (id: string): readonly Lying[] => [{ cover: covers.get(id)!, vented: false }];

const left = (checks: typeof coversFit.checks): number[] => checks.map((check) => made(check).difference);

describe("the balance of covers beside what was measured (sources in test/published/cover-gains.json)", () => {
  it.each([...gains.day, ...gains.night.map((row) => ({ ...row, radiation: 0 }))])(
    "$what: gains what was printed with the fit",
    ({ cover, radiation, wind, cloud, printed }) => {
      const ours = gain(under(cover), { temperature: 10, radiation, wind, cloud }, settings);
      expect(Math.abs(ours - printed)).toBeLessThan(0.02);
    },
  );

  it("leaves 0.52 °C over the sixteen rows that set the parameters, as printed, and −0.13 °C of bias", () => {
    expect(coversFit.checks).toHaveLength(16);
    const off = left(coversFit.checks);
    expect(rootMeanSquare(off)).toBeCloseTo(0.52, 2);
    expect(mean(off)).toBeCloseTo(-0.13, 2);
  });

  it.each([
    ["that set nothing", coversFree],
    ["of shade", coversShade],
  ])("holds for every row %s within the tolerance named beside it", (_, { checks }) => {
    for (const check of checks) expect(made(check).passed, check.what).toBe(true);
  });

  it("leaves under 0.7 °C over the temperatures that set nothing and under 0.3 °C over those of shade", () => {
    expect(rootMeanSquare(left(coversFree.checks.filter(({ unit }) => unit === "°C")))).toBeLessThan(0.7);
    expect(rootMeanSquare(left(coversShade.checks))).toBeLessThan(0.3);
  });
});
