import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { serviceForecast, writeForecast } from "../../src/folder/index.ts";

const text = (name: string): string =>
  readFileSync(new URL(`../cli/folders/foretold/${name}.json`, import.meta.url), "utf8");

type Content = Record<string, unknown> | unknown[];

/** Every place in a page, as the thing that holds it and its name there. */
function places(value: unknown): readonly { readonly holder: Content; readonly name: string }[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.keys(value).flatMap((name) => [
    { holder: value as Content, name },
    ...places((value as Record<string, unknown>)[name]),
  ]);
}

const STRANGE = [null, "", "−4", "NaN", 1e308, -1e308, 911, [], {}, true, "2026-02-30T25:00:00Z"];

test.each(["nws-forecast", "nws-hourly", "nws-gridpoints", "met-compact", "met-complete"])(
  "whatever stands at any places of %s, it is a forecast of finite numbers or told what is wrong",
  (name) => {
    const original = text(name);
    const spots = places(JSON.parse(original)).length;
    const change = fc.record({
      spot: fc.nat(spots - 1),
      value: fc.oneof(fc.constantFrom(...STRANGE), fc.jsonValue()),
    });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const page: unknown = JSON.parse(original);
        const all = places(page);
        for (const { spot, value } of changes)
          (all[spot]!.holder as Record<string, unknown>)[all[spot]!.name] = value;
        const { forecast, problems } = serviceForecast(
          "page.json",
          JSON.stringify(page),
          "Europe/Paris",
          null,
        );
        if (forecast === null) expect(problems.length).toBeGreaterThan(0);
        else expect(writeForecast(forecast)).not.toMatch(/NaN|Infinity|undefined|null/u);
        for (const { expected, hint } of problems) expect(`${expected}${hint}`).not.toMatch(/NaN|undefined/u);
      }),
      { numRuns: 150, seed: 20260420 },
    );
  },
);

test("whatever text it is given, it says what is wrong and does not fall", () => {
  fc.assert(
    fc.property(fc.oneof(fc.json(), fc.string()), (page) => {
      const { forecast, problems } = serviceForecast("page.json", `{"properties":${page}}`, "UTC", null);
      expect([forecast, problems.length > 0]).toEqual([null, true]);
    }),
    { numRuns: 300, seed: 20260420 },
  );
});
