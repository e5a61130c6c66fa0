import type { CommandSpec } from "../spec.ts";
import { MEMBERS, ON } from "./week.options.ts";

export const beds: CommandSpec = {
  name: "beds",
  summary: "where each succession stands",
  options: [ON, MEMBERS],
  examples: [
    { command: "leafpace beds", shows: "size now and at the next picks if nothing is changed" },
    { command: "leafpace beds --on 2026-04-20", shows: "the same as on that morning" },
  ],
  load: () => import("./beds.ts"),
};
