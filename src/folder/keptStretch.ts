import { addDays, type Instant, instantAt, type LocalDate } from "../quantity/index.ts";
import type { Units } from "./faults.ts";
import type { FarmClock } from "./moment.ts";
import { AHEAD, saidIn, type Unclear } from "./noteWhen.ts";

/** From one walk to another, and the line's other words. null: from the first walk, to the end. */
export interface StretchIn {
  readonly from: Instant | null;
  readonly to: Instant | null;
  readonly rest: string;
  /** An "on" stood before the day; it may be the day's or a cover's. */
  readonly on: boolean;
}

type Part = "morning" | "evening";

/** A day and a walk, as far as they are said. */
interface WalkSaid {
  readonly date: LocalDate | null;
  readonly part: Part | null;
  readonly rest: string;
  readonly on: boolean;
}

const SPAN = /(?:\b(?:from|since)\b(?<first>.+?))?(?:\b(?<word>to|through|until|till)\b(?<last>.+))?$/iu;

/** Covers change on no other hour than that of a walk. */
function walkSaid(text: string, today: LocalDate, { walks }: FarmClock, units: Units): WalkSaid | Unclear {
  const said = saidIn(text, today, units, today, AHEAD);
  if ("unclear" in said) return said;
  const { date, hour, rest, on } = said;
  const part =
    typeof hour === "number" ? (["morning", "evening"] as const).find((each) => walks[each] === hour) : hour;
  return part === undefined
    ? { unclear: "Covers change on a walk; say morning or evening in the place of the hour." }
    : { date, part, rest, on };
}

const DAYS: Unclear = { unclear: 'Say the days like "from Tuesday evening to Thursday morning".' };

/**
 * The stretch a line says. A walk alone reaches to the next walk, a day alone to the morning walk of the next day, also
 * at the end of a stretch: "to Thursday" takes Thursday in, "until Thursday" does not.
 *
 * @param today - The date at the moment planned from, from which names of days count on.
 */
export function stretchIn(
  text: string,
  today: LocalDate,
  clock: FarmClock,
  units: Units,
): StretchIn | Unclear {
  const at = (date: LocalDate, part: Part): Instant => instantAt(clock.zone, date, clock.walks[part]);
  const { index, groups } = SPAN.exec(text)!;
  const { first, word, last } = groups!;
  const head = text.slice(0, index);
  if (first === undefined && last === undefined) {
    const said = walkSaid(head, today, clock, units);
    if ("unclear" in said) return said;
    const { part, rest, on } = said;
    if (said.date === null && part === null) return { from: null, to: null, rest, on };
    const date = said.date ?? today;
    const next = part === "morning" ? at(date, "evening") : at(addDays(date, 1), "morning");
    return { from: at(date, part ?? "morning"), to: next, rest, on };
  }
  const begin = first === undefined ? null : walkSaid(first, today, clock, units);
  if (begin !== null && "unclear" in begin) return begin;
  const end = last === undefined ? null : walkSaid(last, begin?.date ?? today, clock, units);
  if (end !== null && "unclear" in end) return end;
  if ([begin, end].some((said) => said !== null && said.date === null && said.part === null)) return DAYS;
  const from = begin === null ? null : at(begin.date ?? today, begin.part ?? "morning");
  const lastDay = end?.date ?? begin?.date ?? today;
  const within = end?.part === null && /^t(?:o|hrough)$/iu.test(word ?? "");
  const to = end === null ? null : at(within ? addDays(lastDay, 1) : lastDay, end.part ?? "morning");
  return { from, to, rest: [head, begin?.rest ?? "", end?.rest ?? ""].join(" "), on: false };
}
