import { expect, test } from "vitest";
import { farmOf, MINIMAL, problemsOf } from "./fixtures.ts";

const farm = (usual: string): string => `${MINIMAL}usual weather:\n${usual}`;

test("any months may be given, by name or its first letters, each with its units", () => {
  const { usual } = farmOf({
    farm: farm("  Apr: { low: 41 F, high: 59 F }\n  September: { low: 8 C, high: 50 F }\n"),
  });
  expect(usual).toEqual([
    { month: 4, low: 5, high: 15 },
    { month: 9, low: 8, high: 10 },
  ]);
  expect(farmOf({}).usual).toEqual([]);
});

test("what is wrong is told with its line and setting", () => {
  expect(
    problemsOf({
      farm: farm(
        "  Apr: { low: 60 F, high: 38 F }\n  Agust: { low: 1 C, high: 2 C }\n  May: { low: 4, high: 60 F }\n  June: { high: 60 F }\n  Jul: { low: 1 C, high: 2 C, mean: 3 C }\n  July: { low: 1 C, high: 2 C }\n",
      ),
    }),
  ).toEqual([
    'farm.yaml:9 "usual weather.Apr.high": expected a high not below the low, received "38 F". Swap the two.',
    'farm.yaml:10 "usual weather.Agust": expected a month, received "Agust". Did you mean "August"?',
    'farm.yaml:11 "usual weather.May.low": expected a temperature like 85 F or 29 C, received "4". Write the unit behind the number.',
    'farm.yaml:12 "usual weather.June.low": expected a temperature like 38 F, received nothing. Add a line "low: ...".',
    'farm.yaml:13 "usual weather.Jul.mean": expected a known setting, received "mean". Known here: low, high.',
    'farm.yaml:14 "usual weather.July": expected each month once, received a group of settings. Take one of the two out.',
  ]);
});
