import { create, unitDependencies } from "mathjs";
import { describe, expect, test } from "vitest";
import {
  type OtherUnits,
  parseQuantities,
  parseQuantity,
  type QuantityKind,
} from "../../src/quantity/index.ts";

const { unit } = create(unitDependencies!);
const byLibrary: OtherUnits = (value, name, base) => {
  try {
    return unit(value, name).toNumber(base);
  } catch {
    return null;
  }
};

const value = (text: string, kind: QuantityKind, stated: string | null = null): number | null =>
  parseQuantity(text, kind, stated).value;
const fault = (text: string, kind: QuantityKind, stated: string | null = null): string | null =>
  parseQuantity(text, kind, stated).fault;

describe("a time per length of bed is read in either unit", () => {
  test.each([
    ["2 min/m", 2],
    ["2 minutes per metre", 2],
    ["0.6 min/ft", 0.6 / 0.3048],
    ["30 s per foot", 0.5 / 0.3048],
    ["1 h a m", 60],
  ])("%s is %d min/m", (text, minutes) => {
    expect(value(text, "effort")).toBeCloseTo(minutes, 9);
  });

  test("and a time alone is none", () => {
    expect(fault("2 min", "effort")).toBe("wrongKind");
    expect(fault("2", "effort")).toBe("noUnit");
    expect(parseQuantity("2 min/yard", "effort", null, byLibrary).value).toBeCloseTo(2 / 0.9144, 9);
  });
});

describe("a length is read as growers write it", () => {
  test.each([
    ["50 ft", 15.24],
    ["50ft", 15.24],
    ["50 feet", 15.24],
    ["50'", 15.24],
    ["15 m", 15],
    ["1500 cm", 15],
    ["5 ft 6 in", 1.6764],
    [`5'6"`, 1.6764],
    ["1,5 m", 1.5],
    ["12 1/2 ft", 3.81],
    ["12½ ft", 3.81],
    ["50 FT.", 15.24],
  ])("%s is %d m", (text, metres) => {
    expect(value(text, "length")).toBeCloseTo(metres, 9);
  });
});

test("the table of spellings agrees with a unit library for every length, weight and speed", () => {
  const names = { ft: "ft", in: "in", cm: "cm", mm: "mm", km: "km" };
  for (const [ours, theirs] of Object.entries(names))
    expect(value(`3 ${ours}`, "length")).toBeCloseTo(byLibrary(3, theirs, "m")!, 9);
  for (const [ours, theirs] of Object.entries({ lb: "lb", oz: "oz", g: "g" }))
    expect(value(`3 ${ours}`, "mass")).toBeCloseTo(byLibrary(3, theirs, "kg")!, 9);
  for (const [ours, theirs] of Object.entries({ mph: "mi/h", "km/h": "km/h" }))
    expect(value(`3 ${ours}`, "speed")).toBeCloseTo(byLibrary(3, theirs, "m/s")!, 9);
});

test("a knot is 1852 m an hour", () => {
  expect(value("10 kn", "speed")).toBeCloseTo(5.1444, 4);
});

describe("a temperature and a difference are two kinds", () => {
  test("50 F is 10 °C as a temperature", () => expect(value("50 F", "temperature")).toBe(10));
  test("4 F of protection is 2.2 °C, not −15.6", () =>
    expect(value("4 F", "temperatureDifference")).toBeCloseTo(2.2222, 4));
  test("85 F is no farad and 29 C no coulomb, even with a unit library at hand", () => {
    expect(parseQuantity("85 F", "temperature", null, byLibrary).value).toBeCloseTo(29.444, 3);
    expect(parseQuantity("29 C", "temperature", null, byLibrary).value).toBe(29);
    expect(parseQuantity("85 F", "length", null, byLibrary).fault).toBe("wrongKind");
  });
  test.each(["68 °F", "68°F", "68 degF", "68 deg F", "68 fahrenheit"])("%s is 20 °C", (text) =>
    expect(value(text, "temperature")).toBeCloseTo(20, 9),
  );
  test("a minus sign of either kind counts", () => {
    expect(value("-5 C", "temperature")).toBe(-5);
    expect(value("−5 C", "temperature")).toBe(-5);
  });
  test("thermal time in °F·d is five ninths of it in °C·d", () =>
    expect(value("540 F d", "thermalTime")).toBeCloseTo(300, 9));
});

describe("without a unit the stated unit counts, and without that nothing is guessed", () => {
  test("50 in a column of feet", () => expect(value("50", "length", "ft")).toBe(15.24));
  test("a cell's own unit is stronger", () => expect(value("15 m", "length", "ft")).toBe(15));
  test("50 of nothing", () => expect(fault("50", "length")).toBe("noUnit"));
  test("1,500 ft may be two things", () => expect(fault("1,500 ft", "length")).toBe("ambiguous"));
  test("a share of 60 may be two things", () => expect(fault("60", "share")).toBe("ambiguous"));
  test.each(["", "abc", "12 ft x", "3-4 in", "1/0 ft", "ft"])("%j is no length", (text) =>
    expect(fault(text, "length")).not.toBeNull(),
  );
  test("a weight is no length", () => expect(fault("50 lb", "length")).toBe("wrongKind"));
});

test("shares and prices", () => {
  expect(value("60 %", "share")).toBeCloseTo(0.6, 12);
  expect(value("0.6", "share")).toBe(0.6);
  expect(value("12 per lb", "price")).toBeCloseTo(26.4555, 4);
  expect(value("$12/lb", "price")).toBeCloseTo(26.4555, 4);
  expect(value("26 per kg", "price")).toBe(26);
  expect(fault("12", "price")).toBe("noUnit");
});

test("a unit the trade does not use is left to the library given, and unknown without one", () => {
  expect(fault("2 chain", "length")).toBe("unknownUnit");
  expect(parseQuantity("2 chain", "length", null, byLibrary).value).toBeCloseTo(40.2336, 6);
  expect(parseQuantity("2 kelvin", "length", null, byLibrary).fault).toBe("unknownUnit");
});

test("several leaves in one cell, each with its unit or one unit for all", () => {
  expect(parseQuantities("3 in 4 in", "leaf", null).value).toEqual([7.62, 10.16]);
  expect(parseQuantities("7, 8 and 9 cm", "leaf", null).fault).toBe("unknownUnit");
  expect(parseQuantities("7, 8, 9 cm", "leaf", null).value).toEqual([7, 8, 9]);
  expect(parseQuantities("7 8 9", "leaf", null).fault).toBe("noUnit");
});
