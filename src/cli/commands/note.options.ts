import type { CommandSpec } from "../spec.ts";

export const note: CommandSpec = {
  name: "note",
  summary: "note what was seen or done: a leaf, a cover, a cut",
  argument: { form: "[words...]", description: 'one note, like S01 4in 3.5in; a remark behind " - "' },
  options: [
    { flags: "--file <file>", description: "a whole walk, one note a line; - for standard input" },
    {
      flags: "--on <moment>",
      description: 'when, where a line does not say it: "Apr 18 7am", yesterday, 2026-04-18 (else now)',
    },
    { flags: "-n, --dry-run", description: "say what is understood and write nothing" },
    { flags: "--undo", description: "take back what the last run wrote; again, the one before" },
  ],
  examples: [
    {
      command: "leafpace note S01 4in 3.5in 4.2in",
      shows: "longest leaf of three plants; the median counts",
    },
    { command: "leafpace note S09 up since Sunday", shows: "half of the row has come up" },
    {
      command: "leafpace note S06 not ready",
      shows: "still below salad size: it needs longer than was thought",
    },
    {
      command: "leafpace note S03 strip 3in 3.2in",
      shows: "a stretch left bare, measured on the day its bed is: what the cover does here",
    },
    {
      command: "leafpace note Creek 1 cover off",
      shows: "a tunnel by its name or id; also on, vented, nights, bare",
    },
    { command: "leafpace note S03 cut 14 lb last", shows: "without last, it grows again" },
    { command: "leafpace note S04 lost 20 % - slugs", shows: "a share of the bed, and a remark" },
    { command: "leafpace note S05 resown", shows: "the same bed sown again with the same crop" },
    {
      command: "leafpace note --file walk.txt",
      shows: "every line of it or, when one is not understood, none",
    },
  ],
  load: () => import("./note.ts"),
};
