import type { CommandSpec } from "../spec.ts";

export const importing: CommandSpec = {
  name: "import",
  summary: "take in temperature logs and forecasts",
  argument: {
    form: "[file...]",
    description: "logs, daily records, forecasts, or folders of them; - for standard input",
  },
  options: [
    { flags: "-n, --dry-run", description: "say what is understood and store nothing" },
    { flags: "--sensor <name>", description: "the sensor a log belongs to, by its name" },
    {
      flags: "--hangs <where>",
      description: "where a new sensor hangs: outside, or a tunnel; it is remembered",
    },
    {
      flags: "--unit <unit>",
      description: "unit of the log, whatever the file says",
      choices: ["F", "C"],
    },
    {
      flags: "--dates <order>",
      description: "order of the dates: month first, day first or year first",
      choices: ["mdy", "dmy", "ymd"],
    },
    { flags: "--zone <zone>", description: "time zone of the logger's clock (else the farm's)" },
    { flags: "--column <header>", description: "the temperature column, by its name or its number" },
    { flags: "--issued <moment>", description: "when a forecast was issued, like 2026-04-20T05:00" },
    {
      flags: "--from-service <service>",
      description:
        "fetch the forecast at the farm: nws (National Weather Service, the United States) or met-norway (MET Norway, the whole world)",
      choices: ["nws", "met-norway"],
    },
    {
      flags: "--contact <address>",
      description: 'your e-mail or web address, which services require (else "contact" in farm.yaml)',
    },
    { flags: "--undo", description: "take back the last import; again, the one before" },
  ],
  examples: [
    { command: "leafpace import logger.csv --dry-run", shows: "what is understood of the file" },
    {
      command: "leafpace import logger.csv forecast.csv",
      shows: "both stored in the farm folder; again changes nothing",
    },
    {
      command: "leafpace import -",
      shows: 'a forecast typed one line a day: "Mon 62 41 sun", "Tue 65/44 mixed", "59 38"',
    },
    {
      command: "leafpace import --from-service nws",
      shows: "the forecast at the farm, fetched now; nothing else uses the network",
    },
  ],
  load: () => import("./import.ts"),
};
