import { expect, it } from "vitest";
import { calibration, plainSettings } from "../proof/calibration.ts";

// Talts and others 2018, arXiv:1804.06788. The report of `npm run learning` does many more farms.
it("ranks of what is true among what is believed are uniform, with floor, drift and weighing down off", () => {
  for (const { what, p, mean, spread } of calibration(500, 11, plainSettings())) {
    expect(p, what).toBeGreaterThan(0.01);
    expect(Math.abs(mean - 0.5), what).toBeLessThan(0.04);
    expect(Math.abs(spread - 0.289), what).toBeLessThan(0.02);
  }
});

it("ranks are not uniform where what is believed is far too wide", () => {
  const wide = calibration(500, 11, { ...plainSettings(), spreadFloor: 0.15 });
  expect(wide[2]!.p).toBeLessThan(1e-6);
  expect(wide[2]!.spread).toBeLessThan(0.25);
});
