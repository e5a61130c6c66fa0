import { expect, test } from "vitest";
import { shell } from "./shell.ts";

test("an amount of rain or snow that was typed is told as it was understood, and kept", async () => {
  const at = shell("stocked");
  try {
    const { code, stdout } = await at.run("import -", {
      input: "Tue 34 30 cloud wind 5 mph snow 4 in\nWed 50 40 rain 0.25 in\n",
    });
    expect(code).toBe(0);
    expect(stdout).toContain("Tue, 30.0 to 34.0 °F, cloud, wind 5 mph, rain or snow, 0.40 in as water\n");
    expect(stdout).toContain("Wed, 40.0 to 50.0 °F, cloud, rain 0.25 in\n");
    expect((await at.run("week")).code).toBe(0);
  } finally {
    at.end();
  }
});
