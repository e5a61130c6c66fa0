import { expect, test } from "vitest";
import { missing } from "../../src/decide/missing.ts";
import { formatProblem } from "../../src/problem/index.ts";
import { instantAt } from "../../src/quantity/index.ts";
import { farmOf, MINIMAL } from "../folder/fixtures.ts";

test("a gap of the log is told by the minutes of the farm's clock, also where it is half an hour apart from others", () => {
  const zone = "Asia/Kolkata";
  const farm = farmOf({
    farm: MINIMAL.replace("America/New_York", zone),
    successions: "id,crop,tunnel,from (m),to (m),sown\nS01,spinach,T1,0,5,2026-03-01",
  });
  const at = (date: string, hour: number) => instantAt(zone, date, hour);
  const problems = missing({
    farm,
    on: at("2026-04-20", 7),
    days: 7,
    logBegins: at("2026-02-01", 0.5),
    picks: [],
    madeFrom: {
      sensors: ["outside"],
      latest: at("2026-04-20", 5.5),
      tunnels: [],
      gaps: [{ from: at("2026-04-02", 3.5), to: at("2026-04-03", 9.5), origin: "estimated" }],
      forecastIssued: at("2026-04-20", 5),
      forecastEnds: null,
      unforeseenFrom: null,
      carriedFrom: null,
      usualFrom: null,
      usualBehind: false,
      doubtful: [],
      learnedFrom: 0,
      members: 0,
      broughtOver: [],
      shortDays: null,
    },
  });
  expect(problems.filter(({ code }) => code === "log-gap").map(formatProblem)).toEqual([
    "temperature: expected a log without gaps, received none from 2026-04-02 03:30 to 2026-04-03 09:30. Import what the logger has of that time; until then it is estimated.",
  ]);
});
