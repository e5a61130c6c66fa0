import { describe, expect, it } from "vitest";
import { addDays, type LocalDate } from "../../src/quantity/index.ts";
import { week } from "../week.ts";
import { type City, mondayInput } from "./cities.ts";
import { exampleFarm } from "./exampleFarm.ts";
import { coveredInHeat, faultsOf, laterWhenWarmer } from "./expectations.ts";

const farm = exampleFarm();
const plan = (city: City, monday: string, warmer = 0) =>
  week(mondayInput(farm, city, monday as LocalDate, warmer));

describe("weeks of real weather, Seattle and New York 2012–2015 (vega-datasets)", () => {
  it.each(["2012-03-05", "2014-03-10"])(
    "puts frost first and the warmest cloth on in New York, %s",
    (monday) => {
      const outcome = plan("New York", monday);
      expect(faultsOf(outcome)).toEqual([]);
      expect(outcome.warnings[0]).toMatchObject({ kind: "frost", severity: "danger" });
      expect(outcome.warnings.some(({ kind }) => kind === "wind")).toBe(true);
      for (const { changes } of outcome.tunnels) {
        const lays = changes.filter(({ to, from }) => to.length > from.length);
        expect(
          lays.filter(({ walk }) => walk.tooWindy).map(({ tunnel, walk }) => `${tunnel.id} on ${walk.date}`),
        ).toEqual([]);
      }
    },
  );

  it.each([
    ["New York", "2012-06-18"],
    ["New York", "2015-05-11"],
    ["Seattle", "2013-05-06"],
  ] as const)("leaves no row cover on by day in %s, %s", (city, monday) => {
    const outcome = plan(city, monday);
    expect(faultsOf(outcome)).toEqual([]);
    expect(coveredInHeat(outcome, 20)).toEqual([]);
  });

  it("holds its rules on Mondays spread over the years", () => {
    const faults: string[] = [];
    for (const [city, first] of [
      ["Seattle", "2012-06-04"],
      ["New York", "2012-07-16"],
    ] as const) {
      for (let step = 0; step < 3; step++) {
        const monday = addDays(first, step * 7 * 43);
        faults.push(...faultsOf(plan(city, monday)).map((fault) => `${city} ${monday}: ${fault}`));
      }
    }
    expect(faults).toEqual([]);
  });

  it("is never later in a warmer copy of a week that stays below the optimum", () => {
    const monday = "2013-01-21" as LocalDate;
    const before = plan("Seattle", monday);
    const later = laterWhenWarmer(before, plan("Seattle", monday, 1.5), 1.5);
    expect(later.compared).toBeGreaterThan(8);
    expect(later.faults).toEqual([]);
  });
});
