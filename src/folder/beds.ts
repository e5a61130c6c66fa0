import { type Note, type Succession, standingSowings, type Tunnel } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { daysBetween, type Instant, instantAt, type LocalDate, localDate } from "../quantity/index.ts";
import type { FarmSettings } from "./farmFile.ts";
import { shownLength } from "./faults.ts";
import type { Placed } from "./successionsFile.ts";

/** Two beds that touch at their ends do not overlap. [m] */
export const TOUCH = 0.01;

/** Days from which a bed sown once more over its whole stretch was cut in between, not written down wrongly. [d] judgement */
const RESOWN = 21;

/** Later than any note. */
const ALL_NOTES = Number.POSITIVE_INFINITY as Instant;

/** Beds that cannot stand where they are said to, and those that were sown again without their last cut noted. */
export interface Beds {
  readonly problems: readonly Problem[];
  /** The last cut a bed must have had by the day its place was sown again. */
  readonly lastCuts: readonly Note[];
}

type Bed = Placed<Succession>;

const overlap = (a: Succession, b: Succession): boolean => a.from < b.to - TOUCH && b.from < a.to - TOUCH;

const resown = (older: Succession, newer: Succession, { beds }: Tunnel): boolean =>
  beds === 1 &&
  daysBetween(older.sown, newer.sown) >= RESOWN &&
  newer.from <= older.from + TOUCH &&
  newer.to >= older.to - TOUCH;

/** Looks at every tunnel's beds: as many as it has may lie side by side, and a bed is free after its last cut. */
export function bedsOf(
  file: string,
  placed: readonly Bed[],
  { tunnels, units, place }: FarmSettings,
  notes: readonly Note[],
): Beds {
  const problems: Problem[] = [];
  const lastCuts: Note[] = [];
  const gone = new Map<string, LocalDate>();
  const sown = placed.map(({ value }) => value);
  const standing = standingSowings({ successions: sown, notes }, place.zone, ALL_NOTES);
  const beds = standing.successions.map((value, i): Bed => ({ value, line: placed[i]!.line }));
  for (const note of standing.notes)
    if (note.kind === "cut" && note.last) gone.set(note.succession, localDate(place.zone, note.at));
  const told = (
    bed: Bed,
    code: string,
    weight: Problem["weight"],
    expected: string,
    received: string,
    hint: string,
  ) => problems.push({ code, weight, file, line: bed.line, column: "from", expected, received, hint });
  for (const tunnel of tunnels) {
    const here = beds
      .filter(({ value }) => value.tunnel === tunnel.id)
      .sort((a, b) => (a.value.sown < b.value.sown ? -1 : a.value.sown > b.value.sown ? 1 : a.line - b.line));
    here.forEach((newer, index) => {
      const { value } = newer;
      const others: Bed[] = [];
      for (const older of here.slice(0, index).reverse()) {
        if (others.length === tunnel.beds) break;
        const end = gone.get(older.value.id);
        if (!overlap(older.value, value) || (end !== undefined && end <= value.sown)) continue;
        if (end === undefined && resown(older.value, value, tunnel)) {
          const { id } = older.value;
          gone.set(id, value.sown);
          const at: Instant = instantAt(place.zone, value.sown, 0);
          lastCuts.push({
            kind: "cut",
            at,
            line: newer.line,
            succession: id,
            weight: null,
            last: true,
            remark: "",
          });
          told(
            newer,
            "bed-resown",
            "needsYou",
            `the last cut of ${id} noted, since ${value.id} is sown where it stands`,
            "none",
            `From ${value.sown} on ${id} counts as cut. Note it in notes.csv: the date, cut, ${id}, last.`,
          );
        } else others.push(older);
      }
      const last = others[0];
      if (last === undefined || others.length < tunnel.beds) return;
      const [later, earlier] = newer.line > last.line ? [newer, last] : [last, newer];
      const stretch = `${shownLength(later.value.from, units)} to ${shownLength(later.value.to, units)}`;
      told(
        later,
        "beds-overlap",
        "stops",
        `a stretch of ${tunnel.id} that is free`,
        `${stretch}, where ${earlier.value.id} stands (line ${earlier.line})`,
        `Correct one of the two, or note the last cut of ${last.value.id}.`,
      );
    });
  }
  return { problems, lastCuts };
}
