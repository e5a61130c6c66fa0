import { expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { farmOf, MINIMAL, problemsOf } from "./fixtures.ts";

const lettuce = (settings: string): string => `${MINIMAL}crops: { lettuce-mix: { ${settings} } }\n`;
const read = (settings: string) => farmOf({ farm: lettuce(settings) }).crops.get("lettuce-mix")!;

test("a requirement counted another way is remembered with all of it, to be brought over on the farm's own weather", () => {
  const crop = read(
    "counted.sum: 540 F d, counted.method: double sine, counted.base: 41 F, counted.upper: 77 F, counted.cutOff: vertical, counted.from: emergence, counted.to: 4 in",
  );
  expect(crop.counted).toEqual({
    sum: 300,
    method: "double sine",
    base: 5,
    upper: 25,
    cutOff: "vertical",
    from: "emergence",
    to: 10.16,
    at: "here",
  });
});

test("what is left out stays as the catalogue counted it, and an upper threshold caps", () => {
  const known = catalogue().crops.get("lettuce-mix")!;
  expect(read("counted.sum: 350 C d").counted).toEqual({ ...known.counted, sum: 350, at: "here" });
  expect(read("counted.sum: 350 C d, counted.upper: 25 C").counted).toMatchObject({
    upper: 25,
    cutOff: "horizontal",
  });
});

test("a plain requirement is of the model's own clock", () => {
  const crop = read("requirement: 310 C d");
  expect(crop.requirement).toBe(310);
  expect(crop.counted).toBeUndefined();
});

test("what cannot be counted is told at the border", () => {
  const said = (settings: string): string[] =>
    problemsOf({ farm: lettuce(settings) }).map((text) => text.replace(/^.*?expected /u, ""));
  expect(said("requirement: 300 C d, counted.sum: 350 C d")).toEqual([
    "either requirement or counted.sum, received a group of settings. Take out the one that is not yours.",
  ]);
  expect(said("counted.upper: 2 C")).toEqual([
    "a counted.upper above counted.base, received a group of settings. An upper threshold belongs to every cut-off but none.",
  ]);
  expect(said("counted.upper: 25 C, counted.cutOff: vertical")).toEqual([
    "the cut-off none or horizontal with simple average, received a group of settings. Only triangles and sines go with every cut-off.",
  ]);
  expect(said("counted.to: 1 cm")).toEqual([
    "a leaf above 1.5 cm (0.6 in) and below twice the largest salad size, received a group of settings. Write the leaf length it was counted to.",
  ]);
  expect(said("growth.form: yin")).toEqual([
    "a requirement beside growth.form, received a group of settings. A requirement belongs to the form it was found with: add requirement, or counted.sum, counted.method and counted.base.",
  ]);
  expect(problemsOf({ farm: `${MINIMAL}crops: { mustard: { counted.sum: 300 C d } }\n` })).toEqual([
    'farm.yaml:8 "crops.mustard": expected counted.sum, counted.method and counted.base, received a group of settings. A requirement counted in another way needs its sum, how it was counted, and above which temperature.',
  ]);
});
