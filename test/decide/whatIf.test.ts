import { expect, test } from "vitest";
import { sceneOf, type WhatIf } from "../../src/decide/index.ts";
import type { Farm } from "../../src/farm/index.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { planAll, week } from "../week.ts";
import { at, bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

const [a, b] = [tunnel("A", 12), tunnel("B", 12)];
const beds = [bed("arugula", a, { market: "friday" }), bed("spinach", b, { market: "friday" })];
const example = exampleFarm();
const parts = {
  tunnels: [a, b],
  successions: beds,
  pieces: [
    piece("light", "row-cover-19", 15),
    piece("long", "row-cover-19", 40),
    piece("dark", "shade-40", 15),
  ],
  notes: [leaf(beds[0]!, 7), leaf(beds[1]!, 5)],
  labour: { ...example.labour, walk: 12, picking: 20 },
  products: example.products,
};
const days = clear([0, 9], [-1, 10], [1, 22], [2, 24], [3, 14]);
const asked = input(parts, days, at(0, 6.5));
const told = week({ ...asked, whatIf: true });

/** The farm that has it. */
function having(farm: Farm, what: WhatIf): Partial<Farm> {
  switch (what.kind) {
    case "piece":
      return {
        pieces: farm.pieces.map((each) => (each.id === what.piece.id ? { ...each, count: 2 } : each)),
      };
    case "hands":
      return { labour: { ...farm.labour, walk: 24, picking: 40 } };
    case "pick":
      return {
        markets: farm.markets.map((market) =>
          market.id === what.market.id
            ? {
                ...market,
                picks: market.picks.map((pick) => ({ ...pick, daysBefore: pick.daysBefore - what.days })),
              }
            : market,
        ),
      };
  }
}

test("one more piece of each cover, another pair of hands and other days of picking are tried, the most worth first", () => {
  const names = told.whatIf!.map((what) =>
    what.kind === "piece"
      ? what.piece.id
      : what.kind === "pick"
        ? `${what.market.id} ${what.days}`
        : what.kind,
  );
  // The length that is the shortest to fit both tunnels; Tuesday's pick of this Monday cannot be a day earlier any more.
  expect([...names].sort()).toEqual(["dark", "friday -1", "hands", "light"]);
  const worths = told.whatIf!.map(({ worth }) => worth);
  expect(worths).toEqual([...worths].sort((x, y) => y - x));
});

test("each is worth what the farm that has it plans, less the plan", () => {
  const worthOf = (farm: Farm): number => planAll(sceneOf({ ...asked, farm }).scene!).joint.worth;
  const plain = worthOf(asked.farm);
  for (const what of told.whatIf!) {
    const worth = worthOf({ ...asked.farm, ...having(asked.farm, what) }) - plain;
    expect(Math.abs(what.worth - worth), what.kind).toBeLessThanOrEqual(
      Math.max(1e-6 * Math.max(1, Math.abs(worth)), 2 * what.off),
    );
  }
});

test("more of a thing never costs anything", () => {
  for (const { kind, worth, off } of told.whatIf!)
    if (kind !== "pick") expect(worth, kind).toBeGreaterThanOrEqual(-1e-6 - off);
});

test("nobody who does not ask waits for it", () => {
  expect(week(asked).whatIf).toBeNull();
});
