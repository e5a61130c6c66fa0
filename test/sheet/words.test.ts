import { describe, expect, test } from "vitest";
import {
  celsius,
  centimetre,
  fahrenheit,
  feet,
  HOUR,
  inches,
  instant,
  instantAt,
  kilogram,
  type LocalDate,
  metre,
  metrePerSecond,
  milesPerHour,
  pounds,
} from "../../src/quantity/index.ts";
import { actions } from "../../src/sheet/actions.ts";
import { ascii } from "../../src/sheet/ascii.ts";
import { clean } from "../../src/sheet/clean.ts";
import * as words from "../../src/sheet/words.ts";
import { TIED, wrap } from "../../src/sheet/wrap.ts";
import { exampleFarm } from "../real/exampleFarm.ts";

const loose = (text: string | null): string | null => text?.replaceAll(TIED, " ") ?? null;
const size = (low: number, middle: number, high: number) => ({
  low: centimetre(low),
  middle: centimetre(middle),
  high: centimetre(high),
});

describe("quantities", () => {
  test("temperatures in whole degrees, halves of a degree Celsius near freezing", () => {
    expect(loose(words.temperature("US", fahrenheit(26.4)))).toBe("26 °F");
    expect(loose(words.temperature("US", fahrenheit(-0.4)))).toBe("0 °F");
    expect(loose(words.temperature("metric", celsius(-2.3)))).toBe("−2.5 °C");
    expect(loose(words.temperature("metric", celsius(26.6)))).toBe("27 °C");
  });

  test("wind and lengths", () => {
    expect(loose(words.wind("US", milesPerHour(15)))).toBe("15 mph");
    expect(loose(words.wind("metric", metrePerSecond(5)))).toBe("18 km/h");
    expect(loose(words.length("US", feet(50)))).toBe("50 ft");
    expect(loose(words.length("metric", metre(15.24)))).toBe("15 m");
  });

  test("leaves no more precisely than their spread", () => {
    const narrow = { low: inches(3), middle: inches(3.3), high: inches(3.6) };
    expect(loose(words.leaf("US", narrow))).toBe("3¼ in");
    expect(loose(words.leaf("US", { ...narrow, low: inches(2.3), high: inches(4) }))).toBe("3½ in");
    expect(loose(words.leaf("US", { ...narrow, low: inches(1.5), high: inches(5) }))).toBe("3 in");
    expect(loose(words.leaf("US", { low: inches(0), middle: inches(0.05), high: inches(0.1) }))).toBe(
      "under ¼ in",
    );
    expect(loose(words.leaf("metric", size(7.5, 8.3, 9)))).toBe("8.5 cm");
    expect(loose(words.leaf("metric", size(6, 8.3, 11)))).toBe("8 cm");
  });

  test("a leaf beside a limit never on the wrong side of it", () => {
    const beside = (middle: number, limit: number) =>
      loose(words.leafBeside("metric", size(middle - 2, middle, middle + 2), centimetre(limit)));
    expect(beside(14.2, 12)).toBe("14 cm");
    expect(beside(12.3, 12)).toBe("just over 12 cm");
    expect(beside(13.4, 13.3)).toBe("just over 13.5 cm");
    expect(beside(7.8, 8)).toBe("just under 8 cm");
  });

  test("two sizes of one leaf with the same precision", () => {
    const wide = { low: inches(3), middle: inches(4.3), high: inches(5) };
    const narrow = { low: inches(3), middle: inches(3.3), high: inches(3.6) };
    expect(words.leaves("US", wide, narrow).map(loose)).toEqual(["4½ in", "3½ in"]);
  });

  test("weights whole above ten, in halves above one, finer below", () => {
    expect(loose(words.weight("US", pounds(41.6)))).toBe("42 lb");
    expect(loose(words.weight("US", pounds(7.4)))).toBe("7½ lb");
    expect(loose(words.weight("US", pounds(0.3)))).toBe("¼ lb");
    expect(loose(words.weight("US", pounds(0.05)))).toBe("under ¼ lb");
    expect(loose(words.weight("metric", kilogram(0.33)))).toBe("0.3 kg");
    expect(loose(words.weight("metric", kilogram(0)))).toBe("0 kg");
    expect(loose(words.weightStated("metric", kilogram(12.5)))).toBe("12.5 kg");
    expect(loose(words.weightStated("US", pounds(30)))).toBe("30 lb");
    expect(loose(words.lacking("US", pounds(40), pounds(33.4)))).toBe("7 lb");
    expect(loose(words.lacking("metric", kilogram(12.5), kilogram(10.2)))).toBe("2.5 kg");
    expect(words.lacking("US", pounds(33), pounds(33.2))).toBeNull();
  });

  test("a weight that was typed as it was typed", () => {
    expect(loose(words.weightTyped("US", pounds(12.3)))).toBe("12.3 lb");
    expect(loose(words.weightTyped("metric", kilogram(6.25)))).toBe("6.25 kg");
  });

  test("values in currency or weight", () => {
    const dollars = { units: "US", currency: "$" } as const;
    expect(words.value(dollars, 12.4)).toBe("$12");
    expect(words.value(dollars, -8.6)).toBe("−$9");
    expect(loose(words.value(dollars, 0.2))).toBe("under $1");
    expect(words.value(dollars, 0)).toBe("$0");
    expect(loose(words.value({ units: "metric", currency: "CHF" }, 30))).toBe("CHF 30");
    expect(loose(words.value({ units: "metric", currency: null }, -3.2))).toBe("−3 kg");
  });
});

test.each([
  [0, "hardly"],
  [0.009, "hardly"],
  [0.01, "1 in 20"],
  [0.09, "1 in 10"],
  [0.2, "1 in 5"],
  [0.4, "2 in 5"],
  [0.5, "1 in 2"],
  [0.78, "4 in 5"],
  [0.88, "9 in 10"],
  [0.95, "19 in 20"],
  [0.99, "19 in 20"],
  [0.991, "almost surely"],
  [1, "almost surely"],
])("a chance of %d is %s", (chance, said) => {
  expect(loose(words.odds(chance))).toBe(said);
});

test('behind "odds of" and "risk of" the ends of the scale are told as what they are', () => {
  expect([0, 0.5, 1].map((chance) => loose(words.chanceOf(chance)))).toEqual([
    "hardly any",
    "1 in 2",
    "almost certain",
  ]);
});

test("no chance is told as none or all in five", () => {
  for (let chance = 0; chance <= 1; chance += 0.001)
    expect(loose(words.odds(chance))).not.toMatch(/^0|5 in 5/);
});

describe("dates and times", () => {
  const date = "2026-04-24" as LocalDate;
  test("in the order the farm reads", () => {
    expect(loose(words.day("US", date))).toBe("Fri Apr 24");
    expect(loose(words.day("metric", date))).toBe("Fri 24 Apr");
    expect(loose(words.dayAndYear("US", date))).toBe("Fri Apr 24, 2026");
    expect(loose(words.dayAndYear("metric", date))).toBe("Fri 24 Apr 2026");
    expect(loose(words.night("US", "2026-04-30" as LocalDate))).toBe("the night from Thu Apr 30 to Fri");
    expect(loose(words.nightAhead("US", "2026-04-30" as LocalDate, date))).toBe("Thu night");
    expect(loose(words.nightAhead("metric", "2026-05-01" as LocalDate, date))).toBe("Fri night, 1 May");
  });

  test.each([
    [0, "midnight", "0:00"],
    [5.5, "5:30 am", "5:30"],
    [7, "7 am", "7:00"],
    [12, "noon", "12:00"],
    [12.25, "12:15 pm", "12:15"],
    [18, "6 pm", "18:00"],
  ])("hour %d is %s or %s", (hour, us, metric) => {
    expect(loose(words.clock("US", hour))).toBe(us);
    expect(words.clock("metric", hour)).toBe(metric);
  });

  test("midnight says which day it begins", () => {
    const farm = { units: "US", place: exampleFarm().place } as const;
    expect(loose(words.moment(farm, instantAt(farm.place.zone, date, 0)))).toBe("midnight before Fri Apr 24");
    expect(loose(words.moment({ ...farm, units: "metric" }, instantAt(farm.place.zone, date, 0)))).toBe(
      "Fri 24 Apr, 0:00",
    );
  });

  test("minutes told one by one add up", () => {
    expect(loose(words.minutesTogether([5.6, 5.6, 5.6])!)).toBe("18 min");
    expect(words.minutesTogether([0.3, 0.3])).toBeNull();
  });

  test("ages", () => {
    const at = (hours: number) => words.age(instant(0), instant(hours * HOUR));
    expect([0.5, 1, 47, 48, 75].map(at)).toEqual([
      "under an hour old",
      "1 hour old",
      "47 hours old",
      "2 days old",
      "3 days old",
    ]);
  });
});

describe("settings and what is done", () => {
  const name = (id: string): string => id;
  test("settings in words", () => {
    expect(words.setting([], name)).toBe("bare");
    expect(words.setting([{ cover: "row cover 19 g", state: "on" }], name)).toBe("row cover 19 g on");
    expect(words.setting([{ cover: "row cover 19 g", state: "nights" }], name)).toBe(
      "row cover 19 g on every night, off every day",
    );
    expect(words.setting([{ cover: "film", state: "vented" }], name)).toBe("film vented: one side lifted");
  });

  const states = ["off", "on", "vented", "nights"] as const;
  const layers = (state: (typeof states)[number]) => (state === "off" ? [] : [{ cover: "the cloth", state }]);

  test("every change of one cloth is one whole sentence, at either walk", () => {
    for (const before of states)
      for (const after of states)
        for (const part of ["morning", "evening"] as const) {
          const said = actions(layers(before), layers(after), part, name);
          const idle = before === after && before !== "nights";
          expect(said, `${before} ${after} ${part}`).toHaveLength(idle ? 0 : 1);
          for (const sentence of said) expect(sentence).toMatch(/^[A-Z].*the cloth.*\.$/);
        }
  });

  test("what comes off comes off first", () => {
    expect(
      actions([{ cover: "shade", state: "on" }], [{ cover: "row cover", state: "on" }], "evening", name),
    ).toEqual(["Take off shade.", "Put on row cover."]);
  });

  test("a second equal cloth is told on its own", () => {
    const one = [{ cover: "row cover", state: "on" }] as const;
    expect(actions(one, [...one, ...one], "evening", name)).toEqual(["Put on row cover."]);
  });
});

describe("lines", () => {
  test("break between words and keep numbers with their units", () => {
    expect(wrap(`Up to ${loose("x")} 96${TIED}°F at the crop.`, 12)).toEqual([
      "Up to x",
      "96 °F at the",
      "crop.",
    ]);
  });

  test("break a word that is longer than the line", () => {
    expect(wrap("abcdefghij k", 4)).toEqual(["abcd", "efgh", "ij k"]);
    expect(wrap(`Wed${TIED}Apr${TIED}22`, 7)).toEqual(["Wed Apr", "22"]);
    expect(wrap("新しい畑", 4)).toEqual(["新し", "い畑"]);
  });

  test("in ASCII keep their meaning", () => {
    expect(ascii("½ in, 3½ in, −2 °C, 2 × C1, 3–5 … Mâche €8 畑")).toBe(
      "0.5 in, 3.5 in, -2 C, 2 x C1, 3-5 ... Mache EUR 8 ?",
    );
  });
});

test("names lose what a terminal obeys and what cannot be seen", () => {
  const command = String.fromCharCode(27);
  expect(clean(`${command}[2JNorth${command}]8;;http://x${String.fromCharCode(7)} 1${command}`)).toBe(
    "North 1",
  );
  expect(clean("\u202Eabc\u2069\u00ad\u0000")).toBe("abc");
  expect(clean(" \n ")).toBe("(no name)");
  expect(clean("Été – λ 畑 🥬")).toBe("Été – λ 畑 🥬");
});
