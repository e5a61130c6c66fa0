import type { CommandSpec } from "../spec.ts";

export const check: CommandSpec = {
  name: "check",
  summary: "every problem in the farm folder at once",
  options: [],
  examples: [
    { command: "leafpace check", shows: "problems with file, line, column and the next step" },
    { command: "leafpace check --strict", shows: "the same, and exit code 1 when something is worth a look" },
  ],
  load: () => import("./check.ts"),
};
