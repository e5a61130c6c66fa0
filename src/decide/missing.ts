import { coverHistory, type Farm, lyingAt, type Succession } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import {
  addDays,
  daysBetween,
  HOUR,
  type Instant,
  type LocalDate,
  localDate,
  localMinute,
} from "../quantity/index.ts";
import type { Gap } from "../weather/index.ts";
import type { MadeFrom, Pick } from "./outcome.ts";

/** A farm and the moment it is looked at from. */
export interface AskedOfFarm {
  readonly farm: Farm;
  readonly on: Instant;
}

/** What a sheet is asked of and made from, as far as something may be missing. */
export interface Asked extends AskedOfFarm {
  /** Days planned. [d] */
  readonly days: number;
  readonly madeFrom: MadeFrom;
  /** First moment of the log; null without one. */
  readonly logBegins: Instant | null;
  /** Markets ahead; null where nothing can be planned at all. */
  readonly picks: readonly Pick[] | null;
}

/** Age of the log's end from which sizes are no longer to be trusted without a word. [d] judgement */
const OLD_LOG = 2;

/** A gap worth a word at the top; shorter ones are told where the sheet says what it was made from. [h] judgement */
const LONG_GAP = 12;

/** Most days a plan may have. [d] */
const MOST_DAYS = 21;

const need = (code: string, file: string, expected: string, received: string, hint: string): Problem => ({
  code,
  weight: "needsYou",
  file,
  line: null,
  column: null,
  expected,
  received,
  hint,
});

/** Successions whose last cut is not noted yet. */
const unfinished = ({ successions, notes }: Farm, on: Instant): readonly Succession[] =>
  successions.filter(
    ({ id }) =>
      !notes.some((note) => note.kind === "cut" && note.last && note.succession === id && note.at <= on),
  );

const IMPORT = "Import one with: leafpace import FILE.";

const standIn = ({ usualFrom }: MadeFrom): string =>
  usualFrom === null ? "the last known days are carried on" : "your usual weather stands in";

function forecast({ farm, on, days, madeFrom }: Asked): readonly Problem[] {
  const last = addDays(localDate(farm.place.zone, on), days - 1);
  const { forecastIssued, forecastEnds, unforeseenFrom, latest, usualFrom } = madeFrom;
  if (forecastIssued === null) {
    const nothing = latest === null && usualFrom === null;
    const until = nothing
      ? "With neither log nor forecast there is nothing to plan by."
      : `Until then ${standIn(madeFrom)}.`;
    return [need("forecast-missing", "forecasts", "a forecast", "none", `${IMPORT} ${until}`)];
  }
  if (forecastEnds === null || unforeseenFrom === null || unforeseenFrom > last) return [];
  const shorter = unforeseenFrom > forecastEnds;
  const hint = `Import a newer one; ${shorter ? "after it" : "where none is"} ${standIn(madeFrom)}.`;
  return [
    shorter
      ? need("forecast-short", "forecasts", `a forecast to ${last}`, `one to ${forecastEnds}`, hint)
      : need(
          "forecast-hole",
          "forecasts",
          `a forecast for every day to ${last}`,
          `none for ${unforeseenFrom}`,
          hint,
        ),
  ];
}

function gaps({ farm, madeFrom }: Asked, since: LocalDate | undefined): readonly Problem[] {
  const { zone } = farm.place;
  const end = madeFrom.latest;
  const within = ({ from, to, origin }: Gap): boolean =>
    origin !== "filled" &&
    to - from >= LONG_GAP * HOUR &&
    end !== null &&
    to < end &&
    since !== undefined &&
    localDate(zone, to) >= since;
  const open = madeFrom.gaps.filter(within);
  const gap = open.at(-1);
  if (gap === undefined) return [];
  const rest = open.length - 1;
  const more = rest === 0 ? "" : `, and ${rest} more ${rest === 1 ? "gap" : "gaps"}`;
  const when = `none from ${localMinute(zone, gap.from)} to ${localMinute(zone, gap.to)}`;
  const hint = "Import what the logger has of that time; until then it is estimated.";
  return [need("log-gap", "temperature", "a log without gaps", when + more, hint)];
}

function log(asked: Asked): readonly Problem[] {
  const { farm, on, madeFrom, logBegins } = asked;
  const { zone } = farm.place;
  if (madeFrom.latest === null || logBegins === null)
    return [need("log-missing", "temperature", "an outside temperature log", "none", IMPORT)];
  const problems: Problem[] = [];
  const earliest = unfinished(farm, on)
    .map(({ sown }) => sown)
    .sort()[0];
  const began = localDate(zone, logBegins);
  if (earliest !== undefined && earliest < began)
    problems.push(
      need(
        "log-starts-late",
        "temperature",
        `a log from ${earliest}, the first sowing`,
        `one from ${began}`,
        "The days before it stand on the mean of the first two weeks; measure a leaf of the older beds.",
      ),
    );
  problems.push(...gaps(asked, earliest));
  if (on - madeFrom.latest > OLD_LOG * 24 * HOUR)
    problems.push(
      need(
        "log-old",
        "temperature",
        "a log up to the last two days",
        `one up to ${localDate(zone, madeFrom.latest)}`,
        "Import what the logger has; sizes since then are estimated.",
      ),
    );
  return problems;
}

function market({ farm, on, picks }: Asked): readonly Problem[] {
  if (picks === null || picks.some(({ planned }) => planned)) return [];
  const next = picks[0];
  const expected = "a market to cut for in the days planned";
  if (next === undefined)
    return [need("market-none", "farm.yaml", expected, "none", "Look at the markets' days in farm.yaml.")];
  const days = Math.min(MOST_DAYS, daysBetween(localDate(farm.place.zone, on), next.date) + 1);
  const received = `none; the next is cut for on ${next.date}`;
  return [need("market-none", "farm.yaml", expected, received, `Plan further with --days ${days}.`)];
}

function sowings({ farm, on }: AskedOfFarm): readonly Problem[] {
  const today = localDate(farm.place.zone, on);
  const left = unfinished(farm, on);
  const ahead = left.filter(({ sown }) => sown > today);
  const problems = ahead.map(({ id, sown }) =>
    need(
      "sown-ahead",
      "successions.csv",
      `a sowing of ${id} up to ${today}`,
      sown,
      "It counts from that day on; correct the date if it is sown already.",
    ),
  );
  if (ahead.length < left.length) return problems;
  const received =
    farm.successions.length === 0 ? "none" : left.length === 0 ? "only finished ones" : "only later ones";
  const hint = "Add a line to successions.csv for each bed that is sown.";
  return [...problems, need("nothing-stands", "successions.csv", "a succession that stands", received, hint)];
}

function cloth({ farm, on }: AskedOfFarm): readonly Problem[] {
  const lying = new Map<string, string[]>();
  for (const tunnel of farm.tunnels)
    for (const { cover } of lyingAt(coverHistory(farm, tunnel), on))
      lying.set(cover, [...(lying.get(cover) ?? []), tunnel.name]);
  return [...lying].flatMap(([cover, tunnels]) => {
    const owned = farm.pieces
      .filter((piece) => piece.cover === cover)
      .reduce((sum, { count }) => sum + count, 0);
    if (tunnels.length <= owned) return [];
    const expected = `at least ${tunnels.length} of ${cover}, which lies on ${tunnels.join(", ")}`;
    const hint = "Add the cloth to pieces.csv, or note which tunnel it was taken off.";
    return [need("cloth-too-few", "pieces.csv", expected, `${owned}`, hint)];
  });
}

const cuts = ({ farm, on }: AskedOfFarm): readonly Problem[] =>
  farm.successions.flatMap(({ id, cuts }) => {
    const dated = farm.notes.some((note) => note.kind === "cut" && note.succession === id && note.at <= on);
    if (cuts === 0 || dated) return [];
    const hint = `Add a line: when,cut,${id},weight.`;
    return [need("cut-undated", "notes.csv", `a note of when ${id} was cut`, "none", hint)];
  });

/** What is missing in the farm itself, whatever the weather. */
export const missingOnFarm = (asked: AskedOfFarm): readonly Problem[] => [
  ...sowings(asked),
  ...cloth(asked),
  ...cuts(asked),
];

/** What the grower should know is missing; the sheet is made all the same. */
export const missing = (asked: Asked): readonly Problem[] => [
  ...log(asked),
  ...forecast(asked),
  ...market(asked),
  ...missingOnFarm(asked),
];
