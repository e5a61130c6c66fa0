import type { CommandSpec } from "../spec.ts";

export const start: CommandSpec = {
  name: "start",
  summary: "begin a farm folder from commented templates",
  argument: { form: "[dir]", description: "the new folder (else this one)" },
  options: [
    {
      flags: "--units <units>",
      description: "units the templates are written in",
      choices: ["US", "metric"],
    },
    { flags: "--latitude <degrees>", description: "of the farm, north positive" },
    { flags: "--longitude <degrees>", description: "of the farm, east positive" },
    { flags: "--elevation <height>", description: "above the sea, with its unit, like 620ft" },
    { flags: "--zone <zone>", description: "time zone of the farm, like America/New_York" },
  ],
  examples: [
    { command: "leafpace start my-farm", shows: "a folder to fill in; nothing there is overwritten" },
    { command: "leafpace start my-farm --units metric", shows: "the same in metres and °C" },
  ],
  load: () => import("./start.ts"),
};
