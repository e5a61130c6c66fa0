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
    {
      flags: "--elevation <height>",
      description: "above the sea, with its unit, like 620ft; else sea level",
    },
    {
      flags: "--zone <zone>",
      description:
        "time zone of the farm, like America/New_York; else the machine's, where it fits the longitude",
    },
    {
      flags: "--bed <bed>",
      description: 'a bed, like "arugula, 50 ft, sown 2026-04-01"; again for each',
      repeats: true,
    },
    {
      flags: "--market <day>",
      description: "the day of the week you sell on; again for each",
      repeats: true,
    },
    {
      flags: "--cloth <cloth>",
      description: 'cloth you own, like "row-cover-19 60 ft"; again for each',
      repeats: true,
    },
    {
      flags: "--usual <month>",
      description: 'usual low and high of a month, like "Apr 38 60"; again for each',
      repeats: true,
    },
  ],
  examples: [
    { command: "leafpace start my-farm", shows: "a folder to fill in; nothing there is overwritten" },
    { command: "leafpace start my-farm --units metric", shows: "the same in metres and °C" },
    {
      command:
        'leafpace start my-farm --latitude 44.1 --longitude -72.8 --bed "arugula, 50 ft, sown 2026-04-01" --market Friday',
      shows: "a farm with a bed, ready for a forecast",
    },
  ],
  load: () => import("./start.ts"),
};
