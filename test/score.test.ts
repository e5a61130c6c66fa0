import { describe, expect, test } from "vitest";
import { at } from "./learn/noted.ts";
import { scored, scoreInput } from "./sheet/scoreSample.ts";

describe("how earlier sheets did", () => {
  test("looks at nothing that came after the moment it looks back from", () => {
    const early = scored({ on: at("2026-04-23", 12) });
    expect(early.outcomes.dates.map(({ succession }) => succession)).toEqual(["S01", "S07"]);
    expect([early.outcomes.weights, early.picks, early.verdict.kind]).toEqual([[], [], "tooEarly"]);
    const before = scored({ on: at("2026-04-19") });
    expect([before.sheets, before.outcomes.dates]).toEqual([0, []]);
  });

  test("sets kept forecasts against the log outside, day by day: 1 °C too cold by night, too warm by day", () => {
    const found = scored().forecasts;
    expect(found.map(({ lead, forecasts }) => [lead, forecasts])).toEqual([
      [0, 1],
      [1, 1],
      [2, 1],
    ]);
    for (const { mean } of found) {
      expect(mean.low).toBeCloseTo(1, 9);
      expect(mean.high).toBeCloseTo(-1, 9);
    }
    const indoors = { ...scoreInput().farm, sensors: new Map([["outside", "n1"]]) };
    expect(scored({ farm: indoors }).forecasts).toEqual([]);
  });

  test("of the same sheet given out twice counts the later", () => {
    const { sheets } = scoreInput();
    const [first] = sheets;
    const again = { ...first!, successions: first!.successions.map((each) => ({ ...each, reach: null })) };
    expect(
      scored({ sheets: [first!, again] }).outcomes.dates.every(({ projected }) => projected === null),
    ).toBe(true);
  });
});
