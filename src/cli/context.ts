import { resolve } from "node:path";
import { formatProblem, type Problem } from "../problem/index.ts";
import type { Io } from "./io.ts";
import { type Look, lookOf } from "./look.ts";
import type { Given } from "./spec.ts";
import { writeWhole } from "./writeWhole.ts";

/** Done; something needs the grower, under --strict only; could not run. */
export const DONE = 0;
export const NEEDS_YOU = 1;
export const COULD_NOT = 2;

/** What every command has at hand. */
export interface Context {
  readonly io: Io;
  /** Folder named with --farm, or null. */
  readonly farm: string | null;
  readonly json: boolean;
  readonly strict: boolean;
  readonly verbose: boolean;
  /** How standard output may look; never coloured when it goes to a file. */
  readonly look: Look;
  /** Writes the result: to standard output, or to the file of --output. */
  result(text: string): Promise<void>;
  /** A word on the way, to standard error; not under --quiet. */
  say(text: string): void;
  /** Tells why the command could not run. */
  refuse(problems: readonly Problem[]): Promise<number>;
}

/** Something wrong on the command line itself. */
export const usage = (option: string, expected: string, received: string, hint: string): Problem => ({
  code: "usage",
  weight: "stops",
  file: option,
  line: null,
  column: null,
  expected,
  received: `"${received}"`,
  hint,
});

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

/** Problems as people read them: what stops first, and how many of each on the last line. */
export function problemText(problems: readonly Problem[]): string {
  const stops = problems.filter(({ weight }) => weight === "stops");
  const looks = problems.filter(({ weight }) => weight === "needsYou");
  const lines = [
    ...stops.map(formatProblem),
    ...(stops.length > 0 && looks.length > 0 ? ["", "Worth a look:"] : []),
    ...looks.map(formatProblem),
  ];
  if (problems.length === 1) return `${lines[0]}\n`;
  const first = stops.length === 0 ? "" : `${count(stops.length, "problem", "problems")} to put right first`;
  const second = looks.length === 0 ? "" : `${looks.length} worth a look`;
  return `${lines.join("\n")}\n\n${[first, second].filter((text) => text !== "").join(", ")}.\n`;
}

/** Problems as data, versioned. */
export const problemJson = (problems: readonly Problem[]): string =>
  `${JSON.stringify({ format: "leafpace problems", version: 1, problems }, null, 2)}\n`;

/** Makes the context of a command from what was given on the line. */
export function contextOf(io: Io, given: Given): Context {
  const output = typeof given.output === "string" && given.output !== "-" ? given.output : null;
  const json = given.json === true;
  const quiet = given.quiet === true;
  const color = given.color !== false && output === null;
  const result = async (text: string): Promise<void> => {
    if (output === null) io.stdout.write(text);
    else await writeWhole(io.cwd, output, text);
  };
  return {
    io,
    farm: typeof given.farm === "string" ? resolve(io.cwd, given.farm) : null,
    json,
    strict: given.strict === true,
    verbose: given.verbose === true,
    look: lookOf(output === null ? io.stdout : { ...io.stdout, terminal: false }, io, {
      color,
      ascii: given.ascii === true,
    }),
    result,
    say: (text) => {
      if (!quiet) io.stderr.write(text);
    },
    refuse: async (problems) => {
      if (json) await result(problemJson(problems));
      else io.stderr.write(problemText(problems));
      return COULD_NOT;
    },
  };
}
