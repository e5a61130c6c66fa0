import { addDays, type Change, type LocalDate, settingKey } from "../../src/index.ts";
import { CITIES, type City, mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { faultsOf, laterWhenWarmer } from "../real/expectations.ts";
import { week } from "../week.ts";

/** Every fifth Monday from March 2012 to November 2015 in both cities, and the five that are named. */
const NAMED: readonly (readonly [City, string])[] = [
  ["New York", "2012-03-05"],
  ["New York", "2014-03-10"],
  ["New York", "2012-06-18"],
  ["New York", "2015-05-11"],
  ["Seattle", "2013-05-06"],
];
const spread = (Object.keys(CITIES) as City[]).flatMap((city) =>
  Array.from({ length: 38 }, (_, step) => [city, addDays("2012-03-19", step * 35)] as const),
);

/** What a change was for, a limit counted as what it guards against. */
function reasonOf({ decidedBy, limit }: Change): Exclude<Change["decidedBy"], "limit"> | "other" {
  if (decidedBy !== "limit") return decidedBy;
  return limit === "rowCoverInHeat" ? "stress" : "other";
}

const farm = exampleFarm();
const reasons = new Map<string, number>();
const chosen = { "shade on": 0, "nights only": 0, "row cover off to slow": 0, "no change": 0 };
const count = (name: string): void => void reasons.set(name, (reasons.get(name) ?? 0) + 1);
const faults: string[] = [];
let compared = 0;
let notProved = 0;
let demanded = 0;
const mondays = [...NAMED, ...spread];
for (const [city, monday] of mondays) {
  const outcome = week(mondayInput(farm, city, monday as LocalDate));
  faults.push(...faultsOf(outcome).map((fault) => `${city} ${monday}: ${fault}`));
  const later = laterWhenWarmer(outcome, week(mondayInput(farm, city, monday as LocalDate, 1.5)), 1.5);
  faults.push(...later.faults.map((fault) => `${city} ${monday}, 1.5 °C warmer: ${fault}`));
  compared += later.compared;
  const { worth, worthUnchanged, proved } = outcome.together!;
  if (!proved) notProved += 1;
  if (worth < worthUnchanged - 1e-6) {
    demanded += 1;
    if (outcome.tunnels.every(({ unchangedBreaks }) => unchangedBreaks.length === 0))
      faults.push(`${city} ${monday}: worth less and no limit asks for it`);
  }
  for (const { changes } of outcome.tunnels) {
    if (changes.length === 0) chosen["no change"] += 1;
    for (const change of changes) {
      count(reasonOf(change));
      const warming = (key: string): boolean => key.includes("row-cover") || key.includes("film");
      const [from, to] = [settingKey(change.from), settingKey(change.to)];
      if (to.includes("shade") && !from.includes("shade")) chosen["shade on"] += 1;
      if (to.includes(":nights") && !from.includes(":nights")) chosen["nights only"] += 1;
      if (warming(from) && !warming(to) && change.decidedBy === "timing")
        chosen["row cover off to slow"] += 1;
    }
  }
}

const total = [...reasons.values()].reduce((sum, value) => sum + value, 0);
console.log(
  `${mondays.length} Mondays, ${mondays.length * farm.tunnels.length} tunnel weeks, ${total} changes, ${notProved} not proved best`,
);
for (const [name, value] of reasons)
  console.log(`  decided by ${name}: ${value} (${Math.round((100 * value) / total)} %)`);
for (const [name, value] of Object.entries(chosen)) console.log(`  ${name}: ${value}`);
console.log(`  worth less than nothing changed because a limit demands it: ${demanded} weeks`);
console.log(`  compared with a warmer copy: ${compared} successions`);
for (const fault of faults) console.log(`FAULT ${fault}`);
console.log(`${faults.length} faults`);
if (faults.length > 0 || Object.values(chosen).includes(0)) process.exitCode = 1;
