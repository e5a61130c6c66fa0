import type { LearnedCover, LearnedSuccession, MadeFrom, SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import { clean } from "./clean.ts";
import { counted, notesCounted } from "./learnedRows.ts";
import { type Names, namesOf } from "./names.ts";
import { capital } from "./words.ts";

const whole = (share: number): string => `${Math.round(share * 100)} %`;

/** How a requirement stands beside the catalogue's. */
function beside(ratio: number): string {
  const more = Math.round((ratio - 1) * 100);
  if (more === 0) return "needs what the catalogue says";
  return more > 0 ? `needs ${more} % more than the catalogue` : `needs ${-more} % less than the catalogue`;
}

/** Which notes an estimate is from, nearest first. */
function fromNotes({ here, sameSeason, elsewhere, season }: LearnedSuccession): string {
  const parts = [
    [notesCounted(here), "here"],
    [notesCounted(sameSeason), `of this crop on this farm in ${season}`],
    [notesCounted(elsewhere), "of this crop in other seasons"],
  ];
  return list(parts.flatMap(([notes, where]) => (notes === "" ? [] : [`${notes} ${where}`])));
}

function why(
  { succession, requirement, spread }: SuccessionOutlook,
  learned: LearnedSuccession,
  names: Names,
): readonly string[] {
  const { estimates, grown } = learned;
  const [part, estimate] = [grown.parts.at(-1), estimates.at(-1)];
  const notes = fromNotes(learned);
  if (part === undefined || estimate === undefined || notes === "") return [];
  const ratio = requirement / part.requirement;
  const doubts = `give or take ${whole(spread)}, ${whole(estimate.before)} without notes`;
  const again = part.regrowth ? ", growing again," : "";
  return [`${capital(names.succession(succession.id))}${again} ${beside(ratio)}, ${doubts}: ${notes}.`];
}

const WHAT = { "day warmth": "by day", "night warmth": "by night", shade: "as shade" } as const;

function coverWords({ cover, factors, strips }: LearnedCover, farm: Farm, names: Names): readonly string[] {
  const told = factors
    .filter(({ pairs, kept }) => pairs > 0 || kept !== null)
    .map(({ what, factor, own, pairs, kept }) => {
      const how =
        kept === null
          ? `${counted(pairs, "pair", "pairs")} measured; ${whole(own)} the farm's own`
          : kept.value.typed
            ? "as you set it: the farm's own"
            : "frozen as it was";
      return `${whole(factor)} of the catalogue's ${WHAT[what]} (${how})`;
    });
  const days = (value: number): string => `${Math.abs(value).toFixed(1)} days`;
  const gained = (value: number): string => (value < 0 ? "lost" : "gained");
  return [
    ...(told.length === 0 ? [] : [`${capital(names.cover(cover))}: ${told.join(", ")}.`]),
    ...strips.map(
      ({ crop, strips: count, gained: got, expected, own }) =>
        `${capital(names.cover(cover))} on ${clean(farm.crops.get(crop)?.name ?? crop)}: ${gained(got)} ${days(got)}; expected ${expected < 0 !== got < 0 ? `${gained(expected)} ` : ""}${days(expected)}; ${counted(count, "check strip", "check strips")}, ${whole(own)} the farm's own.`,
    ),
  ];
}

/** What the grower keeps of requirements. */
function keptWords(farm: Farm): readonly string[] {
  return (farm.kept ?? [])
    .filter(({ what }) => what === "requirement")
    .map(({ name, season, value: { shift, typed } }) => {
      const crop = capital(clean(farm.crops.get(name)?.name ?? name));
      const when = season === null ? "" : ` in ${season}`;
      return `${crop}${when} ${beside(Math.exp(shift))}: ${typed ? "as you set it in learned.csv, the farm's own" : "frozen in learned.csv"}.`;
    });
}

/** How estimates moved and from which notes, as whole sentences. */
export function learnedWords(
  farm: Farm,
  outlooks: readonly SuccessionOutlook[],
  { learned }: MadeFrom,
): readonly string[] {
  if (learned === undefined) return [];
  const names = namesOf(farm, outlooks);
  return [
    ...outlooks
      .filter(({ stage, sizeNow }) => stage !== "finished" && (sizeNow !== null || stage === "emerging"))
      .flatMap((outlook) => why(outlook, learned.successions.get(outlook.succession.id)!, names)),
    ...keptWords(farm),
    ...learned.covers.flatMap((cover) => coverWords(cover, farm, names)),
  ];
}
