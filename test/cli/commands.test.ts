import { existsSync, mkdirSync, readdirSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { lookOf } from "../../src/cli/look.ts";
import { momentGiven } from "../../src/cli/moment.ts";
import { readNewestForecast, readSensors } from "../../src/cli/store.ts";
import { template } from "../../src/cli/template.ts";
import { type Instant, instant, instantAt } from "../../src/quantity/index.ts";
import { farmOf, MINIMAL } from "../folder/fixtures.ts";
import { type Shell, shell } from "./shell.ts";

const open: Shell[] = [];
const begin = (folder: string | null): Shell => {
  const here = shell(folder);
  open.push(here);
  return here;
};
afterEach(() => {
  for (const here of open.splice(0)) here.end();
});

const read = (here: Shell, ...path: readonly string[]): string =>
  readFileSync(join(here.dir, ...path), "utf8");

describe("start", () => {
  test.each(["US", "metric"] as const)(
    "every example in the %s templates is right once its # is taken away",
    async (units) => {
      const here = begin(null);
      for (const { name, text } of template(units)) {
        const plain =
          name === "farm.yaml"
            ? text.replace(
                /^# (?=(?:currency|usual weather|products|selling|labour|handling|limits|crops|covers):| {2})/gmu,
                "",
              )
            : text
                .split("\n")
                .filter(
                  (line) => !/^# .*(?:One line|The cloth|A column|What you saw|For example)/u.test(line),
                )
                .map((line) => line.replace(/^# /u, ""))
                .sort((a, b) => Number(/^(?:id|when),/u.test(b)) - Number(/^(?:id|when),/u.test(a)))
                .join("\n");
        writeFileSync(join(here.dir, name), plain);
      }
      expect((await here.run("check")).all).toBe(
        "My farm: no problems. 1 tunnel, 1 succession, 2 cloths, 7 notes.\n",
      );
    },
  );

  test("the place stays open until it is filled in, unless options say it", async () => {
    const here = begin(null);
    await here.run("start");
    const open = (await here.run("check")).stdout.match(/"place\.\w+": expected/gu);
    expect(open).toHaveLength(4);
    await here.run(
      "start said --units metric --latitude -34.6 --longitude -58.4 --elevation 300m --zone America/Argentina/Buenos_Aires",
    );
    expect((await here.run("--farm said check")).code).toBe(0);
    const refused = await here.run("start bad --latitude 460 --zone Mars/Base");
    expect([refused.code, refused.stderr.split("\n").length, existsSync(join(here.dir, "bad"))]).toEqual([
      2,
      5,
      false,
    ]);
  });

  test("what is there stays as it is", async () => {
    const here = begin(null);
    writeFileSync(join(here.dir, "farm.yaml"), "mine");
    await here.run("start");
    expect(read(here, "farm.yaml")).toBe("mine");
    expect(existsSync(join(here.dir, "notes.csv"))).toBe(true);
  });
});

describe("check", () => {
  test("exits with 1 under --strict when something is only worth a look", async () => {
    const here = begin("little");
    writeFileSync(
      join(here.dir, "successions.csv"),
      "id,crop,tunnel,from (ft),to (ft),sown,remark\nS01,kale,T1,0,25,2026-03-20,fine\n",
    );
    expect((await here.run("check")).code).toBe(0);
    const { code, stdout } = await here.run("check --strict");
    expect([code, stdout]).toEqual([
      1,
      'successions.csv:1 column "remark": expected a known column, received "remark". It is not read. Known: id, crop, tunnel, from, to, sown, market, cuts, net.\n',
    ]);
  });

  test("finds the folder from below", async () => {
    const here = begin("little");
    mkdirSync(join(here.dir, "a", "b"), { recursive: true });
    expect((await here.run("check", { cwd: join(here.dir, "a", "b") })).code).toBe(0);
  });

  test("writes into a file instead", async () => {
    const here = begin("little");
    const { all } = await here.run("check -o result.txt");
    expect([all, read(here, "result.txt")]).toEqual([
      "",
      "Little Field: no problems. 2 tunnels, 2 successions, 2 cloths, 1 note.\n",
    ]);
  });

  test("tells of records nobody has placed", async () => {
    const here = begin("little");
    await here.run("import log.csv");
    const store = read(here, "temperature", "outside-2026.csv").replace("sensor outside", "sensor barn");
    writeFileSync(join(here.dir, "temperature", "barn-2026.csv"), store);
    expect((await here.run("check")).stdout).toBe(
      'farm.yaml "sensors": expected every sensor with records in temperature/, received none for "barn". Its records are not used. Add a line "barn: outside", or the tunnel it hangs in.\n',
    );
  });

  test("counts the lines of a file as an editor does, remarks and quotes or not", async () => {
    const here = begin("little");
    const text =
      '# a "remark, with a quote\n\nid,crop,tunnel,from (ft),to (ft),sown\n# another\nS01,"kale",T1,0,25,soon\n';
    writeFileSync(join(here.dir, "successions.csv"), `\uFEFF${text.replaceAll("\n", "\r\n")}`);
    expect((await here.run("check")).stdout).toBe(
      'successions.csv:5 column "sown": expected a date like 2026-03-01, received "soon". Use year-month-day.\n',
    );
  });
});

describe("import", () => {
  test("again changes no byte", async () => {
    const here = begin("little");
    await here.run("import log.csv forecast.csv");
    const before = read(here, "temperature", "outside-2026.csv");
    expect(before).toMatch(/^leafpace temperature 1,sensor outside,UTC hours,degrees Celsius\n/u);
    // 41.5 and 40.5 °F, the first two readings: 5.278 and 4.722 °C.
    expect(before).toContain("\n2026-04-18T04Z,10,2,4.722,5.278,log.csv\n");
    await here.run("import log.csv forecast.csv");
    expect(read(here, "temperature", "outside-2026.csv")).toBe(before);
    expect(readdirSync(join(here.dir, "temperature"))).toEqual(["outside-2026.csv"]);
    expect(readdirSync(here.dir).filter((name) => name.includes("lock"))).toEqual([]);
  });

  test("a dry run leaves the folder as it is", async () => {
    const here = begin("little");
    await here.run("import log.csv -n");
    expect(existsSync(join(here.dir, "temperature"))).toBe(false);
  });

  test("one file that cannot be read keeps all of them out", async () => {
    const here = begin("little");
    expect((await here.run("import log.csv ambiguous.csv")).code).toBe(2);
    expect(existsSync(join(here.dir, "temperature"))).toBe(false);
  });

  test("two files that overlap give every hour once, the later one winning", async () => {
    const here = begin("little");
    const header = "Timestamp,Temp (C)\n";
    const line = (hour: number, value: number): string =>
      `2026-04-20 ${String(hour).padStart(2, "0")}:00,${value}\n`;
    writeFileSync(join(here.dir, "a.csv"), header + [0, 1, 2, 3].map((hour) => line(hour, 5)).join(""));
    writeFileSync(join(here.dir, "b.csv"), header + [2, 3, 4].map((hour) => line(hour, 6)).join(""));
    await here.run("import a.csv");
    await here.run("import b.csv");
    const { sensors } = await readSensors(here.dir, instant(Date.UTC(2027, 0, 1)));
    expect(sensors[0]!.hours.map(({ mean }) => mean)).toEqual([5, 5, 6, 6, 6]);
  });

  test("two at the same time both arrive", async () => {
    const here = begin("little");
    const names = ["a", "b", "c"];
    names.forEach((name, index) => {
      writeFileSync(join(here.dir, `${name}.csv`), `Timestamp,Temp (C)\n2026-04-1${index} 00:00,5\n`);
    });
    const codes = await Promise.all(names.map((name) => here.run(`import ${name}.csv`)));
    expect(codes.map(({ code }) => code)).toEqual([0, 0, 0]);
    const { sensors } = await readSensors(here.dir, instant(Date.UTC(2027, 0, 1)));
    expect(sensors[0]!.hours).toHaveLength(3);
  });

  test("what a killed run has left behind does no harm", async () => {
    const here = begin("little");
    const lock = join(here.dir, ".leafpace.lock");
    mkdirSync(lock);
    utimesSync(lock, new Date(2020, 0), new Date(2020, 0));
    mkdirSync(join(here.dir, "temperature"));
    writeFileSync(join(here.dir, "temperature", "outside-2026.csv.1234567"), "leafpace temp");
    expect((await here.run("import log.csv")).code).toBe(0);
    expect((await here.run("check")).code).toBe(0);
  });

  test("a damaged store is told and left alone", async () => {
    const here = begin("little");
    mkdirSync(join(here.dir, "temperature"));
    const path = join(here.dir, "temperature", "outside-2026.csv");
    writeFileSync(path, "leafpace temperature 1\nhour,sum,count,lowest,highest,origin\n2026-04-1");
    const { code, stderr } = await here.run("import log.csv");
    expect([code, stderr.split("\n")[0]]).toEqual([
      2,
      'temperature/outside-2026.csv:3: expected an hour like 2026-04-20T13Z with sum, count, lowest and highest, received "2026-04-1". Delete the line, then import the log again.',
    ]);
    expect(readFileSync(path, "utf8")).toContain("2026-04-1");
  });

  test("standard input, and a degree sign of one byte", async () => {
    const here = begin("little");
    const { code } = await here.run("import -", { input: "Timestamp,Temp (°C)\n2026-04-20 00:00,5\n" });
    expect(code).toBe(0);
    writeFileSync(
      join(here.dir, "old.csv"),
      Buffer.from("Timestamp,Temp (°F)\n2026-04-20 00:00,50\n", "latin1"),
    );
    expect((await here.run("import old.csv --json")).stdout).toContain('"unit": "F"');
  });

  test("several sensors, and none named", async () => {
    const here = begin("little");
    writeFileSync(
      join(here.dir, "farm.yaml"),
      `${read(here, "farm.yaml")}sensors: { outside: outside, probe: T1 }\n`,
    );
    expect((await here.run("import log.csv")).stderr).toBe(
      "--sensor: expected the sensor the log belongs to, received nothing. Say one of outside, probe.\nNothing was stored.\n",
    );
    expect((await here.run("import log.csv --sensor probe")).stdout).toContain(
      "temperature/probe-2026.csv written.",
    );
  });
});

describe("what was known at a moment", () => {
  const farm = farmOf({ farm: MINIMAL.replace("units: metric", "units: US") });
  const given = (text: string): Instant | null => {
    const read = momentGiven({ on: text }, farm, 0);
    return "at" in read ? read.at : null;
  };

  test("a date alone is one minute before its morning walk", () => {
    expect(given("2026-04-20")).toBe(instantAt("America/New_York", "2026-04-20", 7) - 60_000);
    expect(given("2026-04-20T14:30")).toBe(instantAt("America/New_York", "2026-04-20", 14.5));
    expect(given("2026-04-20 evening")).toBe(instantAt("America/New_York", "2026-04-20", 18));
    expect(given("soon")).toBeNull();
  });

  test("records and forecasts from later are not read", async () => {
    const here = begin("little");
    await here.run("import log.csv forecast.csv");
    await here.run("import forecast.csv --issued 2026-04-20T15:00");
    const on = instantAt("America/New_York", "2026-04-19", 7.5);
    const { sensors } = await readSensors(here.dir, on);
    expect(sensors[0]!.hours.at(-1)!.hour).toBe(Date.UTC(2026, 3, 19, 10) / 3_600_000);
    expect((await readNewestForecast(here.dir, on)).forecast).toBeNull();
    const later = instantAt("America/New_York", "2026-04-20", 6);
    expect((await readNewestForecast(here.dir, later)).forecast!.issued).toBe(
      instantAt("America/New_York", "2026-04-20", 5 + 10 / 60),
    );
  });
});

describe("how text may look", () => {
  const io = (env: Readonly<Record<string, string>>) => ({ env }) as unknown as Parameters<typeof lookOf>[1];
  const sink = (terminal: boolean, columns?: number) => ({ terminal, columns, write: () => {} });
  const plain = { color: true, ascii: false };

  test("a flag is stronger than NO_COLOR, that than FORCE_COLOR, that than the terminal", () => {
    expect(lookOf(sink(true), io({}), plain).color).toBe(true);
    expect(lookOf(sink(true), io({}), { ...plain, color: false }).color).toBe(false);
    expect(lookOf(sink(true), io({ NO_COLOR: "1", FORCE_COLOR: "1" }), plain).color).toBe(false);
    expect(lookOf(sink(true), io({ NO_COLOR: "" }), plain).color).toBe(true);
    expect(lookOf(sink(false), io({ FORCE_COLOR: "1" }), plain).color).toBe(true);
    expect(lookOf(sink(true), io({ TERM: "dumb" }), plain).color).toBe(false);
    expect(lookOf(sink(false), io({}), plain).color).toBe(false);
  });

  test("off a terminal it is always 80 columns", () => {
    expect(lookOf(sink(false), io({ COLUMNS: "200" }), plain).width).toBe(80);
    expect(lookOf(sink(true, 100), io({}), plain).width).toBe(100);
    expect(lookOf(sink(true, 20), io({}), plain).width).toBe(60);
  });
});
