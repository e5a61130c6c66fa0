import type { CommandSpec } from "../spec.ts";

export const score: CommandSpec = {
  name: "score",
  summary: "how past sheets did, by what you noted since",
  options: [
    {
      flags: "--on <moment>",
      description: "the moment to look back from, 2026-06-01 or 2026-06-01T20:00 (else now)",
    },
    {
      flags: "--html <file>",
      description: "write it as a page with pictures; - prints it",
      writes: true,
    },
  ],
  examples: [
    { command: "leafpace score", shows: "dates, sizes, odds, weights and forecasts against what came" },
    { command: "leafpace score --html score.html", shows: "one page with pictures" },
    { command: "leafpace score --json -o score.json", shows: "every outcome behind it" },
  ],
  load: () => import("./score.ts"),
};
