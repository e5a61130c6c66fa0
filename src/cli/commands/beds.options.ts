import type { CommandSpec } from "../spec.ts";
import { MEMBERS, ON } from "./week.options.ts";

export const beds: CommandSpec = {
  name: "beds",
  summary: "where each succession stands",
  options: [
    ON,
    MEMBERS,
    {
      flags: "--save-learned",
      description:
        "write what your notes say of crops and covers into learned.csv, what you wrote there kept",
    },
  ],
  examples: [
    { command: "leafpace beds", shows: "size now and at the next picks if nothing is changed" },
    { command: "leafpace beds --on 2026-04-20", shows: "the same as on that morning" },
    { command: "leafpace beds --save-learned", shows: "a table to look at, to freeze and to correct" },
  ],
  load: () => import("./beds.ts"),
};
