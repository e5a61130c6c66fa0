import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { shell } from "./shell.ts";

test("a table of normals in the folder stands in beyond the forecast, before the months in farm.yaml, and the sheet says so", async () => {
  const here = shell("foretold");
  try {
    writeFileSync(
      join(here.dir, "normals.csv"),
      "date,low (F),high (F)\nApr 15,35,55\nMay 15,45,68\nJun 15,54,77\n",
    );
    await here.run("import nws-forecast.json");
    const { stdout } = await here.run("week --on 2026-04-20 --days 3 --json");
    expect(JSON.parse(stdout).madeFrom).toMatchObject({
      forecastSource: "the National Weather Service",
      forecastEnds: "2026-04-26",
      usualFrom: "2026-04-27",
      usualBy: { by: "normals" },
      carriedFrom: null,
    });
  } finally {
    here.end();
  }
});
