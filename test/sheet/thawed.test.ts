import { describe, expect, test } from "vitest";
import { type Instant, instantAt } from "../../src/quantity/index.ts";
import { crewText, weekHtml, weekText } from "../../src/sheet/index.ts";
import { sample } from "./sample.ts";

/** The arugula's pick is at 6 on Friday; its leaves are frozen until an hour, or all day. */
const frozen = (hour: number | null) => {
  const outcome = sample();
  const thaw: Instant | null = hour === null ? null : instantAt(outcome.farm.place.zone, "2026-04-24", hour);
  const successions = outcome.successions.map((outlook) =>
    outlook.succession.id === "A12"
      ? { ...outlook, atFate: { ...outlook.atFate!, frozen: true, thaw } }
      : outlook,
  );
  return { ...outcome, successions };
};
const told = (hour: number | null): string =>
  weekText(frozen(hour), { width: 200, unicode: true, color: false }).replaceAll("\u00a0", " ");

describe("a pick of frozen leaves", () => {
  test("is told from the hour they have thawed on", () => {
    expect(told(9)).toContain(
      "[ ] From about 9 am, when thawed: cut the arugula (A12) in North 1, 24 lb, for Sat Apr 25.",
    );
    expect(weekHtml(frozen(9)).replaceAll("\u00a0", " ")).toContain(
      "From about 9 am, when thawed: cut, for Sat Apr 25",
    );
  });

  test("waits until they thaw where no hour is known", () => {
    expect(told(null)).toContain("[ ] Once thawed: cut the arugula (A12) in North 1, 24 lb, for Sat Apr 25.");
  });

  test.each(["en", "es"] as const)("is on the card of that hour, in %s", (language) => {
    const cards = crewText(frozen(9), language).split("\n\n");
    const card = cards.find((each) => each.includes("A12"))!;
    expect(card).toMatch(/^R0424-0900 /u);
    expect(card).toContain(language === "en" ? "before 9 am" : "antes de las 9 am");
  });
});
