import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import pages from "../published/forecast-pages.json" with { type: "json" };
import { type PlayedServices, playedServices } from "./services.ts";
import { type Shell, shell } from "./shell.ts";

let services: PlayedServices;
let here: Shell;
beforeAll(async () => {
  services = await playedServices();
});
afterAll(() => services.end());
beforeEach(() => {
  services.play("good");
  services.asked.length = 0;
  services.waited.length = 0;
  here = shell("foretold", services.web);
});
afterEach(() => here.end());

const agent = "leafpace/from-source (ann@foretold.example)";

describe("what a service is asked for", () => {
  test("the National Weather Service first for the farm's gridpoint, then for its layers", async () => {
    await here.run("import --from-service nws");
    expect(services.asked).toEqual([`/points/44.12,-72.84 by ${agent}`, `/gridpoints/XYZ/10,20 by ${agent}`]);
  });
  test("MET Norway for the place and its height", async () => {
    await here.run("import --from-service met-norway --contact https://farm.example/us");
    expect(services.asked).toEqual([
      "/weatherapi/locationforecast/2.0/complete?lat=44.12&lon=-72.84&altitude=189 by leafpace/from-source (https://farm.example/us)",
    ]);
  });
  test("never with more decimals than the services allow", async () => {
    const farm = readFileSync(join(here.dir, "farm.yaml"), "utf8");
    const exact = farm.replace("latitude: 44.12,", "latitude: 44.123456789,");
    writeFileSync(join(here.dir, "farm.yaml"), exact);
    await here.run("import --from-service met-norway");
    const decimals = /lat=\d+\.(\d+)/u.exec(services.asked[0]!)![1]!;
    expect(decimals).toHaveLength(pages.mostDecimals);
  });
  test("nothing, when nobody can be reached", async () => {
    const { code } = await here.run(["import", "--from-service", "nws", "--contact", "ann\r\nX-Evil: 1@x.y"]);
    expect([code, services.asked]).toEqual([2, []]);
  });
});

describe("when it is tried again", () => {
  test("a busy service is waited for as long as it asks", async () => {
    services.play("busy once");
    expect((await here.run("import --from-service met-norway")).code).toBe(0);
    expect(services.waited).toEqual([2000]);
  });
  test("a service that stays busy is tried three times, later and later", async () => {
    services.play("always busy");
    expect((await here.run("import --from-service met-norway")).code).toBe(2);
    expect([services.asked.length, services.waited]).toEqual([3, [1000, 4000]]);
  });
  test("one that asks to wait long is not asked again", async () => {
    services.play("busy for an hour");
    expect((await here.run("import --from-service met-norway")).code).toBe(2);
    expect([services.asked.length, services.waited]).toEqual([1, []]);
  });
  test("an answer that was cut off is asked for again", async () => {
    services.play("cut off once");
    expect((await here.run("import --from-service met-norway")).code).toBe(0);
    expect(services.asked).toHaveLength(2);
  });
  test("one who refuses, or sends what is no forecast, is asked once", async () => {
    for (const name of [
      "refusing",
      "not here",
      "a web page",
      "sending elsewhere",
      "endless",
      "half a JSON",
    ]) {
      services.play(name);
      services.asked.length = 0;
      expect((await here.run("import --from-service met-norway")).code).toBe(2);
      expect([name, services.asked.length]).toEqual([name, 1]);
    }
  });
});

test("a redirection within the service is followed", async () => {
  services.play("moved within");
  expect((await here.run("import --from-service nws")).code).toBe(0);
  expect(services.asked.map((line) => line.split(" ")[0])).toEqual([
    "/points/44.12,-72.84",
    "/moved/points/44.12,-72.84",
    "/gridpoints/XYZ/10,20",
    "/moved/gridpoints/XYZ/10,20",
  ]);
});

test("a page the service says will end is used, and that is told", async () => {
  services.play("ending");
  const { code, stderr } = await here.run("import --from-service met-norway --quiet");
  expect([code, stderr]).toEqual([
    0,
    "--from-service met-norway: expected a page the service keeps up, received one it says will end soon. The forecast is good; look for a newer leafpace.\n",
  ]);
});

describe("what was fetched last", () => {
  const kept = (): string[] => readdirSync(join(here.dir, "forecasts"));
  test("is not asked for while it holds", async () => {
    services.play("good for half an hour");
    await here.run("import --from-service met-norway");
    services.asked.length = 0;
    await here.run("import --from-service met-norway");
    expect(services.asked).toEqual([]);
  });
  test("is asked for again once it is gone", async () => {
    services.play("good for half an hour");
    await here.run("import --from-service met-norway");
    for (const name of kept()) rmSync(join(here.dir, "forecasts", name));
    await here.run("import --from-service met-norway");
    expect(kept()).toEqual(["2026-04-20T0841Z.csv"]);
  });
  test("is remembered only when it was stored", async () => {
    services.play("good for half an hour");
    await here.run("import --from-service met-norway --dry-run");
    services.asked.length = 0;
    await here.run("import --from-service met-norway --dry-run");
    expect(services.asked).toHaveLength(1);
  });
});

test("when a service fails, what else was to be imported is not stored either", async () => {
  services.play("refusing");
  const { code } = await here.run("import nws-forecast.json --from-service nws");
  expect([code, readdirSync(here.dir).includes("forecasts")]).toEqual([2, false]);
});

test("the sheet says whose forecast it was", async () => {
  await here.run("import --from-service met-norway");
  const { stdout } = await here.run("week --on 2026-04-20T12:00 --days 3");
  expect(stdout).toContain("- Forecast of MET Norway issued Mon Apr 20, 4:41 am, 7 hours old; it ends with");
});

test("nothing but the fetching of a forecast can use the network", () => {
  const src = fileURLToPath(new URL("../../src", import.meta.url));
  const using = readdirSync(src, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .filter((name) =>
      /(?<![\w.])fetch\(|(?:from|import\(?)\s*["'](?:node:)?(?:https?|http2|net|tls|dgram|dns|undici)["']|XMLHttpRequest|WebSocket/u.test(
        readFileSync(join(src, name), "utf8"),
      ),
    );
  expect(using.map((name) => name.replaceAll("\\", "/"))).toEqual(["cli/fetchPage.ts"]);
});
