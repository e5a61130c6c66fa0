import { describe, expect, it } from "vitest";
import { tunnelLogs } from "../../src/decide/index.ts";
import { celsius, type LocalDate, metre, startOf, type UtcHour } from "../../src/quantity/index.ts";
import { madeFrom } from "../../src/sheet/madeFrom.ts";
import type { HourlyRecord, SensorRecords } from "../../src/weather/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";

const MONDAY = "2013-04-22" as LocalDate;
const farm = exampleFarm();
/** Nothing is laid anew: what is looked at here is what was logged. */
const input = mondayInput({ ...farm, limits: { ...farm.limits, changesPerWeek: 0 } }, "Seattle", MONDAY);
const outside = input.sensors[0]!;

/** A logger in Creek 1 that recorded the last weeks as so much warmer than outside. */
function withLogger(warmer: number): WeekInput {
  const hours = outside.hours
    .slice(-50 * 24)
    .map((record): HourlyRecord => ({ ...record, mean: celsius(record.mean + warmer) }));
  const inside: SensorRecords = { sensor: "creek-1", hours };
  const sensors = new Map([...input.farm.sensors, ["creek-1", "T1"]]);
  return { ...input, farm: { ...input.farm, sensors }, sensors: [outside, inside] };
}

const lettuce = (warmer: number) =>
  week(withLogger(warmer)).successions.find(({ succession }) => succession.id === "S01")!;

describe("a tunnel's own logger", () => {
  it("decides how far the beds under it have come", () => {
    const [cold, warm] = [lettuce(0), lettuce(6)];
    expect(warm.thermalTime).toBeGreaterThan(cold.thermalTime * 1.2);
  });

  it("says nothing of tunnels under another cloth, and nothing of the air outside", () => {
    // Creek 1 lies under 19 g, these have had 30 g alone.
    const others = (outcome: ReturnType<typeof week>) =>
      outcome.successions
        .filter(({ succession }) => ["T8", "T10"].includes(succession.tunnel))
        .map(({ thermalTime }) => thermalTime);
    const [without, withIt] = [week(input), week(withLogger(6))];
    expect(others(withIt)).toEqual(others(without));
    expect(withIt.weather).toEqual(without.weather);
    expect(withIt.madeFrom.sensors).toEqual(["outside"]);
  });

  it("is said on the sheet with its age", () => {
    const outcome = week(withLogger(3));
    const sentences = madeFrom(outcome.farm, outcome.madeFrom, outcome.on);
    expect(sentences.map((sentence) => sentence.replaceAll(/\s/gu, " "))).toContain(
      "Creek 1: its own logger up to Mon Apr 22, 7 am, under an hour old.",
    );
    const before = { ...input, sensors: [outside] };
    expect(week(before).madeFrom.tunnels).toEqual([]);
  });
});

it("a logger in a long tunnel tells of each of its sections that has none of its own", () => {
  const hour = 1000 as UtcHour;
  const record = (mean: number): HourlyRecord => ({
    hour,
    mean: celsius(mean),
    lowest: celsius(mean),
    highest: celsius(mean),
    count: 1,
  });
  const [whole] = input.farm.tunnels;
  const section = (part: number) => ({
    ...whole!,
    id: `T1-${part}`,
    section: { of: "T1", name: "Creek 1", from: metre(0) },
  });
  const farm = {
    ...input.farm,
    tunnels: [section(1), section(2)],
    sensors: new Map([
      ["a", "T1"],
      ["b", "T1-2"],
    ]),
  };
  const sensors = [
    { sensor: "a", hours: [record(1)] },
    { sensor: "b", hours: [record(2)] },
  ];
  const weather = { first: hour, temperature: new Float64Array(1) } as Parameters<typeof tunnelLogs>[2];
  const logs = tunnelLogs(farm, sensors, weather, startOf(1001 as UtcHour));
  expect([...logs].map(([id, { temperature }]) => [id, temperature[0]])).toEqual([
    ["T1-1", 1],
    ["T1-2", 2],
  ]);
});

it("of two loggers in one tunnel the first that has an hour counts, and nothing recorded after now does", () => {
  const first = 1000 as UtcHour;
  const record = (hour: number, mean: number): HourlyRecord => ({
    hour: hour as UtcHour,
    mean: celsius(mean),
    lowest: celsius(mean),
    highest: celsius(mean),
    count: 1,
  });
  const farm = {
    ...input.farm,
    sensors: new Map([
      ["a", "T1"],
      ["b", "T1"],
    ]),
  };
  const sensors = [
    { sensor: "a", hours: [record(999, 1), record(1001, 2)] },
    { sensor: "b", hours: [record(1001, 9), record(1002, 3), record(1004, 4)] },
  ];
  const weather = { first, temperature: new Float64Array(6) } as Parameters<typeof tunnelLogs>[2];
  const logs = tunnelLogs(farm, sensors, weather, startOf(1004 as UtcHour));
  expect([...logs.keys()]).toEqual(["T1"]);
  expect([...logs.get("T1")!.temperature]).toEqual([Number.NaN, 2, 3, Number.NaN, Number.NaN, Number.NaN]);
  expect(logs.get("T1")!.latest).toBe(startOf(1003 as UtcHour));
});
