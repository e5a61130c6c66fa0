import { expect, test } from "vitest";
import { ownRequirements } from "../../src/decide/index.ts";
import { merged } from "../../src/decide/logs.ts";
import { type Counted, type Crop, catalogue, type Farm } from "../../src/farm/index.ts";
import { celsius, centimetre, degreeDays, type Instant, type LocalDate } from "../../src/quantity/index.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";

const { crops, settings } = catalogue();
const lettuce = crops.get("lettuce-mix")!;
const input = mondayInput(exampleFarm(), "Seattle", "2013-08-26" as LocalDate);
const hours = merged(input.sensors);

const stated: Counted = {
  sum: degreeDays(333),
  method: "simple average",
  base: celsius(4.4),
  upper: null,
  cutOff: "none",
  from: "sowing",
  to: centimetre(8),
  at: "here",
};
const farmWith = (counted: Counted): Farm => {
  const crop: Crop = { ...lettuce, counted };
  return { ...input.farm, crops: new Map([["lettuce-mix", crop]]) };
};

test("a farm that states nothing in another way is left as it is", () => {
  const found = ownRequirements({ ...input.farm, crops }, hours, input.on, settings);
  expect(found.farm.crops).toBe(crops);
  expect(found).toMatchObject({ brought: [], problems: [] });
});

test("a stated sum is brought over from every sowing date of the log that reaches it, and their mean counts", () => {
  const { farm, brought, problems } = ownRequirements(farmWith(stated), hours, input.on, settings);
  expect(problems).toEqual([]);
  const { requirement, sowings } = brought[0]!;
  expect(farm.crops.get("lettuce-mix")!.requirement).toBe(requirement);
  // Ninety days of log, of which a growth takes some thirty.
  expect(sowings!.count).toBeGreaterThan(40);
  expect(sowings!.count).toBeLessThan(75);
  expect(sowings!.least).toBeLessThan(requirement);
  expect(sowings!.most).toBeGreaterThan(requirement);
  // At a steady 15 °C it is 303. Afternoons above the optimum add to an average and not to the crop's own clock.
  expect(requirement).toBeLessThan(303);
  expect(requirement).toBeGreaterThan(0.75 * 303);
});

test("without a whole growth in the log a steady temperature stands in, and says so", () => {
  for (const log of [[], hours.slice(0, 24 * 10)]) {
    const { brought } = ownRequirements(farmWith(stated), log, input.on as Instant, settings);
    expect(brought[0]!.sowings).toBeNull();
    expect(brought[0]!.counted).toEqual({ ...stated, at: 15 });
    expect(brought[0]!.steady).toBe(15);
    expect(Math.round(brought[0]!.requirement)).toBe(303);
  }
});

test("a sum reached before anything is up is told, and the catalogue's requirement counts", () => {
  const { farm, problems } = ownRequirements(
    farmWith({ ...stated, sum: degreeDays(12) }),
    [],
    input.on,
    settings,
  );
  expect(farm.crops.get("lettuce-mix")!.requirement).toBe(lettuce.requirement);
  expect(problems).toEqual([
    {
      code: "requirement-unreachable",
      weight: "needsYou",
      file: "farm.yaml",
      line: null,
      column: "crops.lettuce-mix.counted.sum",
      expected: "a sum that is reached after emergence",
      received: "12 °C·d by simple average from sowing",
      hint: "Check the sum, its base and its unit; until then the catalogue's requirement counts.",
    },
  ]);
});
