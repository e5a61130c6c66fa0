import type { CommandSpec, OptionSpec } from "../spec.ts";

/** The moment a command looks from. */
export const ON: OptionSpec = {
  flags: "--on <moment>",
  description:
    "the moment to plan from, 2026-04-20 or 2026-04-20T14:30 (else now); a date alone is just before its morning walk",
};

/** How many weathers ahead odds and ranges are counted over. */
export const MEMBERS: OptionSpec = {
  flags: "--members <n>",
  description: "ways the weather may go that odds and ranges count, 2 to 1024 (else 64)",
};

export const week: CommandSpec = {
  name: "week",
  summary: "the cover schedule: which covers on and off, on which walk",
  options: [
    ON,
    { flags: "--days <n>", description: "days to plan, 1 to 21 (else 7)" },
    MEMBERS,
    {
      flags: "--keep <text>",
      description:
        'what is settled already, planned around: "T3 as it is", "T3 bare on Friday", "S04 cut Friday", "S04 not cut"; may be repeated',
      repeats: true,
    },
    {
      flags: "--what-if",
      description:
        "also what one more piece, pair of hands or another day of picking would be worth; takes a while",
    },
    {
      flags: "--html <file>",
      description: "write the sheet as a page for paper and phone; - prints it",
      writes: true,
    },
    {
      flags: "--csv <file>",
      description: "write what to do as a table for a spreadsheet; - prints it",
      writes: true,
    },
    {
      flags: "--promise <file>",
      description: "write what is safe to offer on each selling day as a message; - prints it",
      writes: true,
    },
    {
      flags: "--issue",
      description: "keep the sheet in sheets/ as it is given out, for leafpace score",
    },
    {
      flags: "--crew <file>",
      description: "write each walk as a message for a phone, sent back to note what was done; - prints it",
      writes: true,
    },
    {
      flags: "--language <code>",
      description: "language of these messages (else en)",
      choices: ["en", "es"],
    },
  ],
  examples: [
    { command: "leafpace week", shows: "the schedule from the next walk on" },
    { command: "leafpace week --on 2026-04-20 --days 10", shows: "ten days from that morning's walk" },
    {
      command: 'leafpace week --keep "T3 row-cover-19 on nights to Friday" --keep "S04 not cut"',
      shows: "the rest, around what you have settled",
    },
    { command: "leafpace week --html week.html", shows: "one page to print or to send to a phone" },
    { command: "leafpace week --crew crew.txt --language es", shows: "a message a walk, in Spanish" },
    { command: "leafpace week --json -o week.json", shows: "everything behind it, to recompute" },
    { command: "leafpace week --issue", shows: "the sheet, kept for leafpace score" },
  ],
  load: () => import("./week.ts"),
};
