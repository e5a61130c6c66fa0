import { describe, expect, it } from "vitest";
import coverData from "../../data/covers.json" with { type: "json" };
import cropData from "../../data/crops.json" with { type: "json" };
import { catalogue } from "../../src/farm/index.ts";
import { farmOf, MINIMAL, problemsOf } from "./fixtures.ts";

interface Value {
  readonly value: number | null;
  readonly unit: string;
}

const UNITS: Readonly<Record<string, string>> = {
  "°C": " C",
  "°C·d": " C d",
  cm: " cm",
  "kg/m": " kg/m",
  min: " min",
};

/** Every value of an entry of the catalogue as a farm would write it. */
const written = (values: Readonly<Record<string, Value>>): string =>
  Object.entries(values)
    .map(([key, { value, unit }]) => `${key}: ${value === null ? "none" : `${value}${UNITS[unit] ?? ""}`}`)
    .join(", ");

const { crops, covers } = catalogue();

describe("every value of the catalogue can be set in the farm folder", () => {
  it.each(Object.entries(cropData.crops))("of %s", (id, { values }) => {
    const farm = farmOf({ farm: `${MINIMAL}crops: { twin: { like: mustard, ${written(values)} } }\n` });
    const { requirementStanding: _, counted: __, ...known } = crops.get(id)!;
    expect(farm.crops.get("twin")).toMatchObject({ ...known, id: "twin", name: "twin" });
  });

  it.each(Object.entries(coverData.covers))("of %s", (id, { kind, values }) => {
    const farm = farmOf({
      farm: `${MINIMAL}covers: { twin: { like: net, kind: ${kind}, ${written(values)} } }\n`,
    });
    expect(farm.covers.get("twin")).toEqual({ ...covers.get(id)!, id: "twin", name: "twin" });
  });
});

it("a crop that would die hardened before it dies soft is a problem", () => {
  expect(problemsOf({ farm: `${MINIMAL}crops: { kale: { kill: -3 C } }\n` })).toEqual([
    'farm.yaml:8 "crops.kale": expected kill, of hardened plants, below killSoft and below unfit, received a group of settings. Correct the temperature that stands out.',
  ]);
});
