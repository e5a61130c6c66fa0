// How far the example's odds move when twice as many weathers are followed; and what many cost beside one.

import { fileURLToPath } from "node:url";
import { contextOf } from "../../src/cli/context.ts";
import { weekInput } from "../../src/cli/weekInput.ts";
import {
  addDays,
  members,
  type Outcome,
  pastYears,
  usualError,
  type WeekInput,
  weatherOf,
} from "../../src/index.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";

const FOLDER = fileURLToPath(new URL("../../examples/hollow-creek", import.meta.url));
const silent = { terminal: false, columns: undefined, write: () => undefined };

/** The example's Monday as the command reads it. */
async function example(): Promise<WeekInput> {
  const given = { farm: FOLDER, on: "2026-04-20" };
  const io = {
    stdout: silent,
    stderr: silent,
    env: {},
    cwd: FOLDER,
    zone: "America/New_York",
    now: () => Date.parse("2026-04-20T10:00:00Z"),
    input: async () => Buffer.from(""),
  };
  const read = await weekInput(given, contextOf(io, given));
  if ("problems" in read) throw new Error(`the example cannot be read: ${JSON.stringify(read.problems)}`);
  return read.input;
}

/** Odds of every succession at every pick that is planned, left as it is: the plan itself may change with its worth. */
const oddsOf = ({ successions }: Outcome): readonly number[] =>
  successions.flatMap(({ atPicks }) =>
    atPicks.filter(({ pick }) => pick.planned).map(({ oddsUnchanged }) => oddsUnchanged),
  );

const COUNTS = [8, 16, 32, 64, 128, 256] as const;
/** Odds may move by so much. [points] */
const MOST = 2;

async function doublings(): Promise<boolean> {
  const inputs: readonly (readonly [string, WeekInput])[] = [
    ["Hollow Creek, Apr 20, 2026", await example()],
    ["its beds in Seattle, May 6, 2013", mondayInput(exampleFarm(), "Seattle", addDays("2013-05-06", 0))],
    ["its beds in New York, Apr 22, 2013", mondayInput(exampleFarm(), "New York", addDays("2013-04-22", 0))],
  ];
  console.log("Greatest move of any odds at the picks planned when members double [points]");
  console.log(
    `${"".padEnd(36)}${COUNTS.slice(1)
      .map((n) => `to ${n}`.padStart(8))
      .join("")}`,
  );
  let small = true;
  for (const [name, input] of inputs) {
    const odds = COUNTS.map((count) =>
      oddsOf(week({ ...input, settings: { ...input.settings, members: count } })),
    );
    const moves = odds
      .slice(1)
      .map((all, i) => 100 * Math.max(...all.map((each, k) => Math.abs(each - odds[i]![k]!))));
    console.log(`${name.padEnd(36)}${moves.map((move) => move.toFixed(1).padStart(8)).join("")}`);
    const own = COUNTS.indexOf(input.settings.members as (typeof COUNTS)[number]);
    if (moves[own]! >= MOST) small = false;
  }
  return small;
}

/** Median of many. [µs] */
function microseconds(work: () => unknown): number {
  const times = Array.from({ length: 60 }, () => {
    const begun = process.hrtime.bigint();
    work();
    return Number(process.hrtime.bigint() - begun) / 1000;
  });
  return times.sort((a, b) => a - b)[30]!;
}

const DEAR = 40;

/** 64 members of 21 days for one place beside one. */
function cost(input: WeekInput): boolean {
  const { farm, settings, forecast, on } = input;
  const { place } = farm;
  const { weather } = weatherOf({
    place,
    settings,
    hours: input.sensors[0]?.hours ?? [],
    daily: [],
    forecast,
    usual: [],
    on,
    from: addDays("2026-04-20", -2),
    until: addDays("2026-04-20", 20),
  })!;
  const make = (count: number) => () =>
    members({
      weather,
      place,
      settings: { ...settings, members: count },
      on,
      issued: forecast?.issued ?? null,
      error: (lead) => usualError(lead, settings),
      past: pastYears([]),
    });
  for (const count of [1, 64]) microseconds(make(count));
  const [one, many] = [microseconds(make(1)), microseconds(make(64))];
  const ratio = many / one;
  console.log(
    `\n21 days of one place: one member ${one.toFixed(0)} µs, 64 members ${many.toFixed(0)} µs, ratio ${ratio.toFixed(1)}, at most ${DEAR}`,
  );
  return ratio <= DEAR;
}

const only = process.argv[2];
const passed = [only === "cost" ? true : await doublings(), only === "odds" ? true : cost(await example())];
if (passed.includes(false)) process.exitCode = 1;
