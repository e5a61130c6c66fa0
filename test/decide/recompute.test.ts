import { describe, expect, it } from "vitest";
import type { LocalDate } from "../../src/quantity/index.ts";
import { weekJson } from "../../src/sheet/index.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";
import { recompute } from "./recompute.ts";

const farm = exampleFarm();

describe("the answer as JSON", () => {
  it.each([
    ["New York", "2013-04-22"],
    ["Seattle", "2013-05-06"],
    ["New York", "2012-06-18"],
  ] as const)("lets anyone recompute sizes, worth and the choice in %s, %s", (city, monday) => {
    const answer = JSON.parse(weekJson(week(mondayInput(farm, city, monday as LocalDate))));
    let sizes = 0;
    for (const plan of answer.tunnels) {
      const schedule: readonly string[] = plan.choice.map((s: number) => plan.settings[s].key);
      const planned = recompute(answer, plan.tunnel, schedule);
      const stay = recompute(
        answer,
        plan.tunnel,
        schedule.map(() => plan.now),
      );
      for (const part of ["timing", "stress", "damage", "labour"] as const) {
        expect(planned[part]).toBeCloseTo(plan.parts[part], 6);
        expect(stay[part]).toBeCloseTo(plan.partsUnchanged[part], 6);
      }
      for (const [way, found] of [
        ["planned", planned],
        ["unchanged", stay],
      ] as const) {
        for (const { succession, at, cm } of found.sizes) {
          const outlook = answer.successions.find(
            (each: { succession: string }) => each.succession === succession,
          );
          const told = outlook.atPicks.find(
            (each: { pick: { at: { instant: string } } }) => each.pick.at.instant === at,
          );
          expect(cm).toBeCloseTo(told[way].middleCm, 6);
          sizes += 1;
        }
      }
      for (const change of plan.changes) {
        const next =
          plan.changes.find((each: { walk: number }) => each.walk > change.walk)?.walk ?? schedule.length;
        const without = schedule.map((key, i) => (i >= change.walk && i < next ? change.from : key));
        const other = recompute(answer, plan.tunnel, without);
        for (const part of ["timing", "stress", "damage", "labour"] as const) {
          expect(planned[part] - other[part]).toBeCloseTo(change.gain[part], 6);
        }
      }
    }
    expect(sizes).toBeGreaterThan(50);
  });
});
