import type { Problem } from "../problem/index.ts";
import type { Instant, LocalDate } from "../quantity/index.ts";
import { shown } from "./faults.ts";
import type { LogSaid } from "./logReading.ts";
import { scaleText } from "./scale.ts";
import type { SectionFound } from "./section.ts";
import { steadyHint, summerHint } from "./standardTime.ts";

/** Share of numbers no air has from which the unit is the reason, and how many different ones a broken sensor may show. judgement */
const UNLIKELY = 0.25;
const BROKEN = 8;

const DAY = 86_400_000;

interface Around {
  readonly file: string;
  readonly said: LogSaid;
  /** The zone the log's clock shows. */
  readonly zone: string;
  readonly today: LocalDate;
  readonly now: Instant;
}

const yearOf = (wall: number): number => new Date(wall).getUTCFullYear();

/** What keeps one part of a log from being stored. */
export function faultsOf(found: SectionFound, { file, said, zone, now }: Around): readonly Problem[] {
  const { layout, series, latest, dropped, rows } = found;
  const problems: Problem[] = [];
  const stop = (
    code: string,
    line: number | null,
    column: string | null,
    expected: string,
    received: string,
    hint: string,
  ): void => {
    problems.push({ code, weight: "stops", file, line, column, expected, received, hint });
  };
  const { times, of } = layout;
  const momentName = layout.names[times.kind === "moment" ? times.moment : times.year] ?? null;
  const reading = of.kind === "hours" ? of.columns[0]! : of.low;
  const readingName = layout.names[reading.index] ?? null;
  const sums = [...series.values()].flatMap((each) => (each.kind === "hours" ? [each.sums] : []));
  const days = [...series.values()].flatMap((each) => (each.kind === "days" ? each.days : []));
  const used = days.length + sums.reduce((sum, each) => sum + each.used, 0);
  const countOf = (reason: string): number => dropped.find((each) => each.reason === reason)?.count ?? 0;

  if (found.unset !== null && (found.unset === 1970 || used === 0)) {
    stop(
      "log-clock-unset",
      layout.line,
      momentName,
      "times of a clock that was set",
      `a log that begins with ${found.unset}`,
      "The logger's clock was not set, so nobody knows when this was measured. Set it before the next log.",
    );
    return problems;
  }
  if (found.untimed * 2 > rows) {
    stop(
      "log-time-missing",
      layout.line,
      momentName,
      "a time of day with each reading, or a low and a high for each day",
      "dates without either",
      "Export the readings with their times, or columns named low and high.",
    );
    return problems;
  }
  if (found.scales.unitless !== null)
    stop(
      "log-unit-missing",
      found.scales.unitless.line,
      readingName,
      "a unit, °F or °C, in the header or behind the number",
      shown(found.scales.unitless.text),
      "Say --unit F or --unit C.",
    );
  if (series.size === 0 && found.undated !== null && countOf("noReading") < rows) {
    const { line, text } = found.undated;
    const short =
      text
        .replace(/\s+\d{1,2}[:h]\d{2}.*$/u, "")
        .split(/[-/.\s]+/u)
        .filter((part) => part !== "").length === 2 && /^\d/u.test(text);
    const hint =
      said.dates !== null
        ? "Try another order behind --dates."
        : short
          ? "The year is missing; export the log with it."
          : "Look at this line of the file.";
    stop(
      "log-dates-unreadable",
      line,
      momentName,
      short ? "a date with its year" : "dates and times below the header",
      shown(text),
      hint,
    );
    return problems;
  }
  if (found.settled === null && found.ambiguous !== null)
    stop(
      "log-dates-ambiguous",
      found.ambiguous.line,
      momentName,
      "dates whose order can be told",
      shown(found.ambiguous.text),
      "Say --dates mdy when the month comes first, --dates dmy when the day does.",
    );
  if (problems.length > 0) return problems;
  if (
    found.scales.implausible.count > UNLIKELY * (used + found.scales.implausible.count) &&
    found.scales.implausible.different > BROKEN
  ) {
    const { scale } = [...found.scales.bySource.values()][0]!;
    stop(
      "log-unit-unlikely",
      layout.line,
      readingName,
      `temperatures of air in ${scaleText(scale)}`,
      `${found.scales.implausible.count} of ${used + found.scales.implausible.count} that no air has`,
      `Is it another unit? Say --unit F or --unit C.`,
    );
    return problems;
  }
  if (found.halvesLost !== null)
    stop(
      "log-times-ambiguous",
      found.halvesLost.line,
      momentName,
      "times of 24 hours, or AM and PM behind them",
      "each hour from 1 to 12 twice a day",
      "Nobody can tell morning from evening; export the log again.",
    );
  const ahead = now + DAY;
  if (latest !== null && latest.wall > ahead) {
    stop(
      "log-in-the-future",
      latest.line,
      momentName,
      "times before now",
      `one in the year ${yearOf(latest.wall)}`,
      "Was the logger's clock set wrong, or the year counted otherwise? Nothing can have been measured yet.",
    );
  }
  const unreadable = dropped.find(({ reason }) => reason === "unreadable");
  if (unreadable !== undefined && unreadable.count > used)
    stop(
      "log-unreadable",
      unreadable.firstLine,
      null,
      "a date, a time and a temperature in most lines",
      `${unreadable.count} of ${rows} lines without`,
      "Look at this line of the file; --dates, --unit and --column say how to read it.",
    );
  const year = sums[0]?.first == null ? 2026 : new Date(sums[0].first).getUTCFullYear();
  const skipped = sums.find((each) => each.skipped !== null);
  if (skipped !== undefined)
    stop(
      "log-hour-that-never-was",
      skipped.skipped,
      momentName,
      `times of the clock in ${zone}`,
      `${countOf("noSuchHour")} in the hour it skips in spring`,
      `The logger does not change its clock: import it with the zone it keeps, ${steadyHint(zone, year)}.`,
    );
  const even = sums.find((each) => each.evenThrough !== null);
  if (even !== undefined && skipped === undefined)
    stop(
      "log-clock-does-not-change",
      even.evenThrough,
      momentName,
      `an hour that comes twice, as on the clock in ${zone}`,
      "one that comes once",
      `The logger does not change its clock: import it with the zone it keeps, ${summerHint(zone, year)} if it was set in summer, ${steadyHint(zone, year)} if in winter.`,
    );
  return problems;
}
