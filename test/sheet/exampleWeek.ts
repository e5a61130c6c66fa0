import { fileURLToPath } from "node:url";
import { contextOf } from "../../src/cli/context.ts";
import type { Io } from "../../src/cli/io.ts";
import { weekInput } from "../../src/cli/weekInput.ts";
import type { Outcome } from "../../src/decide/index.ts";
import { formatProblem } from "../../src/problem/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { week } from "../week.ts";

const FOLDER = fileURLToPath(new URL("../../examples/hollow-creek", import.meta.url));

const silent = { terminal: false, columns: undefined, write: () => undefined };
const IO: Io = {
  stdout: silent,
  stderr: silent,
  env: {},
  cwd: FOLDER,
  zone: "America/New_York",
  now: () => Date.parse("2026-04-20T10:00:00Z"),
  input: async () => Buffer.from(""),
};

/** What is known on the example farm on its Monday, with its log and forecast. */
export async function exampleInput(days?: string): Promise<WeekInput> {
  const given = { farm: FOLDER, on: "2026-04-20", ...(days === undefined ? {} : { days }) };
  const read = await weekInput(given, contextOf(IO, given));
  if ("problems" in read) throw new Error(read.problems.map(formatProblem).join("\n"));
  return read.input;
}

let asked: Promise<Outcome> | null = null;

/** The example farm's answer for that Monday; planned once for all that look at it. */
export function exampleWeek(): Promise<Outcome> {
  asked ??= exampleInput().then((input) => week(input));
  return asked;
}
