import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import { airCharts } from "../../src/sheet/html/airChart.ts";
import { gridPart } from "../../src/sheet/html/grid.ts";
import { measuringPart } from "../../src/sheet/html/measuring.ts";
import { type Sheet, sheetOf, weekHtml } from "../../src/sheet/index.ts";
import { namesOf } from "../../src/sheet/names.ts";
import { exampleWeek } from "./exampleWeek.ts";
import { metricSample, sample } from "./sample.ts";

/** `WRITE_GOLDEN=1 npx vitest run test/sheet` writes them anew, to be looked at before they are kept. */
const writing = process.env.WRITE_GOLDEN === "1" && process.env.CI === undefined;

const golden = (name: string): string =>
  fileURLToPath(new URL(`../golden/week-${name}.html`, import.meta.url));

let example: Outcome;
let sheet: Sheet;
beforeAll(async () => {
  example = await exampleWeek();
  sheet = sheetOf(example);
});

test.each<readonly [string, () => string]>([
  ["sample", () => weekHtml(sample())],
  ["sample-metric", () => weekHtml(metricSample())],
  ["example-grid", () => gridPart(sheet.grid, sheet.summary).toString()],
  ["example-leaves", () => measuringPart(sheet.beds, sheet.strip, example).toString()],
  ["example-air", () => airCharts(example, namesOf(example.farm, example.successions)).join("\n")],
])("%s is byte for byte as it was looked at", (name, made) => {
  const found = `${made().trimEnd()}\n`;
  if (writing) writeFileSync(golden(name), found);
  expect(existsSync(golden(name)), `test/golden/week-${name}.html is missing: see the top of this file`).toBe(
    true,
  );
  expect(found).toBe(readFileSync(golden(name), "utf8").replaceAll("\r\n", "\n"));
});
