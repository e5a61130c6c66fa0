import { describe, expect, test } from "vitest";
import { feet, pounds } from "../../src/quantity/index.ts";
import { farmOf, MINIMAL, problemsOf } from "./fixtures.ts";

const read = (line: string) => farmOf({ farm: `${MINIMAL}${line}\n` });
const told = (line: string): string[] => problemsOf({ farm: `${MINIMAL}${line}\n` });

describe("hands", () => {
  test("have a pace of cutting and minutes for a walk and for a pick", () => {
    const { labour } = read(
      "labour: { wage: 20, cutting: 0.6 min/ft, minutes per walk: 40, minutes per pick: 120 }",
    );
    expect(labour).toEqual({ wage: 20, pace: 1, cutting: 0.6 / feet(1), walk: 40, picking: 120 });
    expect(read("labour: { cutting: 2 min per m }").labour.cutting).toBe(2);
    expect(read("labour: { price of a changed instruction: 2.5 }").labour.changedInstruction).toBe(2.5);
  });

  test("have no time below none, and cutting is a time per length", () => {
    expect(told("labour: { cutting: 2, minutes per walk: -1, minutes per pick: soon }")).toEqual([
      'farm.yaml:8 "labour.cutting": expected a time per length of bed like 0.6 min/ft or 2 min/m, received "2". Write the unit behind the number.',
      'farm.yaml:8 "labour.minutes per walk": expected minutes of all hands together from 0 to 1440, received "-1". Write a plain number.',
      'farm.yaml:8 "labour.minutes per pick": expected minutes of all hands together from 0 to 1440, received "soon". Write a plain number.',
    ]);
    expect(told("labour: { price of a changed instruction: -1 }")).toEqual([
      'farm.yaml:8 "labour.price of a changed instruction": expected an amount in the farm\'s currency from 0 to 10000, received "-1". Write a plain number.',
    ]);
    expect(told("labour: { cutting: 2 min }")).toEqual([
      'farm.yaml:8 "labour.cutting": expected a time per length of bed like 0.6 min/ft or 2 min/m, received "2 min". This unit measures something else; the field holds a time per length of bed.',
    ]);
  });

  test("wash and keep cold so much, or as much as there is", () => {
    expect(read("handling: { washing: 80 lb, cooler: 0 lb }").handling).toEqual({
      washing: pounds(80),
      cooler: 0,
    });
    expect(read("").handling).toEqual({ washing: null, cooler: null });
    expect(told("handling: { washing: 0 lb, cooler: -1 lb }")).toEqual([
      'farm.yaml:8 "handling.washing": expected a weight above zero, received "0 lb". Leave it out where all that is cut can be washed.',
      'farm.yaml:8 "handling.cooler": expected a weight like 30 lb or 14 kg, not below zero, received "-1 lb". Take the minus sign out.',
    ]);
  });

  test("lay one layer or two", () => {
    expect(read("limits: { layers: 1 }").limits.layers).toBe(1);
    expect(told("limits: { layers: 3 }")).toEqual([
      'farm.yaml:8 "limits.layers": expected a number of layers from 1 to 2, received "3". Write a whole number.',
    ]);
  });
});
