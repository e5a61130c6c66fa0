import type { OptionSpec } from "./spec.ts";

/** Options every command takes. */
export const SHARED: readonly OptionSpec[] = [
  { flags: "--farm <dir>", description: "the farm folder (else the nearest farm.yaml, from here upward)" },
  { flags: "--json", description: "print the result as JSON" },
  { flags: "-o, --output <file>", description: "write the result into a file", writes: true },
  { flags: "-q, --quiet", description: "no word on the way, only results and problems" },
  { flags: "--strict", description: "exit with 1 when something needs you" },
  { flags: "--no-color", description: "no colour" },
  { flags: "--ascii", description: "plain letters only" },
  { flags: "--no-input", description: "never ask (leafpace never does)" },
  { flags: "--verbose", description: "say which folder is read" },
];
