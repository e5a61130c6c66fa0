import { expect, it } from "vitest";
import { sceneOf, stripPlaces, stripTeaches } from "../../src/decide/index.ts";
import { namesOf } from "../../src/sheet/names.ts";
import { strip } from "../../src/sheet/strip.ts";
import type { WeekInput } from "../../src/week.ts";
import { planAll, week } from "../week.ts";
import { ARUGULA, frostyFarm, LETTUCE } from "./frostyFarm.ts";
import { at, clear, leaf } from "./smallFarm.ts";

const placesOf = (input: WeekInput) => {
  const scene = sceneOf(input).scene!;
  return stripPlaces(scene, planAll(scene).plans);
};

/** Cool days that cloth makes grow, for beds half grown. */
const cool = clear([1, 9], [1, 9], [2, 10], [2, 10], [2, 11], [3, 11]);
const halfGrown = frostyFarm({ notes: [leaf(ARUGULA, 6), leaf(LETTUCE, 6)] }, cool);

it("a strip is offered where the plan lays a cloth that a bed has never had, until that bed is cut", () => {
  const places = placesOf(halfGrown);
  expect(places.length).toBeGreaterThan(0);
  for (const { expected, error, spread, worth } of places) {
    expect(expected).toBeGreaterThan(0);
    expect(error).toBeGreaterThan(0);
    expect(spread).toBeGreaterThan(0);
    expect(worth).toBeGreaterThan(0);
  }
  const { farm } = halfGrown;
  const laid = {
    at: at(-9, 18),
    line: 2,
    remark: "",
    kind: "cover" as const,
    cover: "row-cover-30",
    state: "on" as const,
  };
  const notes = [
    ...farm.notes,
    ...["A", "B"].map((tunnel) => ({ ...laid, tunnel })),
    ...["A", "B"].map((tunnel) => ({ ...laid, tunnel, state: "off" as const, at: at(-2, 7) })),
  ];
  const later = placesOf({ ...halfGrown, farm: { ...farm, notes } });
  expect(later.filter(({ cover }) => cover === "row-cover-30")).toEqual([]);
});

it("the sheet tells the one that teaches most, and only when that is worth a line", () => {
  const outcome = week(halfGrown);
  const names = namesOf(outcome.farm, outcome.successions);
  const most = outcome.strip!;
  expect(stripTeaches(most) * most.worth).toBe(
    Math.max(...placesOf(halfGrown).map((place) => stripTeaches(place) * place.worth)),
  );
  const worthwhile = { ...most, worth: 40 / stripTeaches(most) };
  expect(strip({ ...outcome, strip: worthwhile }, names)!.asked).toMatch(
    /^Leave a short stretch of the .+ bare\. On .+ measure a leaf there and one under the row cover .+ beside it/u,
  );
  expect(strip({ ...outcome, strip: { ...most, worth: 0.5 } }, names)).toBeNull();
  expect(strip({ ...outcome, strip: null }, names)).toBeNull();
});
