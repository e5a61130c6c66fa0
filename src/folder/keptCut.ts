import type { Farm } from "../farm/index.ts";
import { addDays, type LocalDate, localDate, weekday } from "../quantity/index.ts";
import { after, FIGURES, type KeptRead, type KeptSetting, notKnown, outside, SETTLED } from "./keptRead.ts";
import type { NamesIn } from "./noteNames.ts";
import { goingBy, whichOne } from "./noteOfBed.ts";
import { spokenIn } from "./noteParts.ts";
import { misread } from "./noteRead.ts";
import { AHEAD, saidIn } from "./noteWhen.ts";

const NOT = /\b(?:not|never|no|don't|dont)\b|\bun(?=cut\b)/giu;

/**
 * The day greens are cut that are said to be cut on a day: that day, or where a market is meant its last pick. A day with
 * a market and no pick means the market, as long as its pick still lies ahead.
 */
function cuttingDay({ markets }: Farm, said: LocalDate, forMarket: boolean, today: LocalDate): LocalDate {
  const picked = markets.some(({ weekday: day, picks }) =>
    picks.some(({ daysBefore }) => weekday(addDays(said, daysBefore)) === day),
  );
  const before = markets
    .filter((market) => market.weekday === weekday(said))
    .flatMap(({ picks }) => picks.map(({ daysBefore }) => daysBefore));
  const last = before.length === 0 ? said : addDays(said, -Math.min(...before));
  return forMarket || (!picked && last >= today) ? last : said;
}

/** Reads on which day successions are cut, or that they are not. */
export function cutKept(names: NamesIn, setting: KeptSetting): KeptRead {
  const { farm, on } = setting;
  const today = localDate(farm.place.zone, on);
  const said = saidIn(names.rest, today, farm.units, today, AHEAD);
  if ("unclear" in said) return misread(said.unclear);
  const spoken = spokenIn(said.rest.replace(NOT, " ").replace(SETTLED, " "), farm.units);
  if (spoken === null) return FIGURES;
  const fitting = names.successions.length === 0 ? goingBy(names, farm, on) : [];
  if (names.successions.length === 0 && fitting.length !== 1)
    return whichOne({ names, left: spoken.left }, fitting, setting);
  const strange = spoken.left.filter(({ text }) => !["for", "market", "early"].includes(text));
  if (strange.length > 0) return notKnown(strange.map(({ text }) => text));
  const ids = names.successions.length > 0 ? names.successions : fitting.map(({ id }) => id);
  if (said.rest.search(NOT) >= 0)
    return said.date !== null || said.hour !== null
      ? misread(`Leave the day out: "${ids[0]!} not cut" counts for all that is planned.`)
      : ids.map((succession) => ({ kind: "uncut", succession }));
  if (said.date === null) return misread(`Say the day, like "${ids[0]!} cut Friday".`);
  const date = cuttingDay(
    farm,
    said.date,
    spoken.left.some(({ text }) => text === "for"),
    today,
  );
  if (date < today || date >= after(setting)) return outside(setting);
  const part = typeof said.hour === "number" ? (said.hour < 12 ? "morning" : "evening") : said.hour;
  return ids.map((succession) => ({ kind: "cut", succession, date, part }));
}
