import { expect, test } from "vitest";
import { readPlaces, withPlaces, writePlaces } from "../../src/folder/index.ts";
import { formatProblem } from "../../src/problem/index.ts";
import { farmOf, MINIMAL } from "./fixtures.ts";

const farm = farmOf({ farm: MINIMAL });
const read = (text: string) => readPlaces("temperature/sensors.csv", text, farm);

test("places are read as they were written, also after a spreadsheet", () => {
  const places = new Map([
    ["north", "outside"],
    ["probe", "T1"],
  ]);
  expect(read(writePlaces(places))).toEqual({ places, problems: [] });
  expect(read('\uFEFF"sensor";"hangs"\r\n"north";"outside"\r\n\r\nprobe\tT1\r\n;\r\n')).toEqual({
    places,
    problems: [],
  });
  expect(read("")).toEqual({ places: new Map(), problems: [] });
});

test("a tunnel that is no more, and a line that says nothing, are told and left out", () => {
  const { places, problems } = read("sensor,hangs\nprobe,T9\nnorth\nthe barn,outside\nsouth,outside\n");
  expect([...places]).toEqual([["south", "outside"]]);
  expect(problems.map((problem) => `${problem.weight} ${formatProblem(problem)}`)).toEqual([
    'needsYou temperature/sensors.csv:2 column "hangs": expected outside or a tunnel, received "T9". Known: outside, T1.',
    'needsYou temperature/sensors.csv:3: expected a sensor and where it hangs, received "north". Delete the line, then import with --sensor and --hangs.',
    'needsYou temperature/sensors.csv:4: expected a sensor and where it hangs, received "the barn,outside". Delete the line, then import with --sensor and --hangs.',
  ]);
});

test("what farm.yaml says of a sensor counts before what an import was told", () => {
  const known = withPlaces(
    farm,
    new Map([
      ["outside", "T1"],
      ["probe", "T1"],
    ]),
  );
  expect([...known.sensors]).toEqual([
    ["outside", "outside"],
    ["probe", "T1"],
  ]);
});
