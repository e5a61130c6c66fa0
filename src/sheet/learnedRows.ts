import type { Learned, NoteCount } from "../decide/index.ts";
import { type Farm, type KeptWhat, SEASONS_OF_YEAR, type SeasonOfYear } from "../farm/index.ts";
import type { LearnedCells, LearnedRow } from "../folder/index.ts";
import { list } from "../problem/index.ts";

const NUMBERS = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
] as const;

/** @example counted(1, "leaf", "leaves") // => "one leaf" */
export const counted = (count: number, one: string, several: string): string =>
  `${NUMBERS[count] ?? count} ${count === 1 ? one : several}`;

/** Notes by kind as a sentence names them; "" for none. */
export const notesCounted = ({ leaf, cut, notReady }: NoteCount): string =>
  list(
    [
      leaf > 0 ? counted(leaf, "leaf", "leaves") : "",
      cut > 0 ? counted(cut, "cut", "cuts") : "",
      notReady > 0 ? counted(notReady, 'note "not ready"', 'notes "not ready"') : "",
    ].filter((words) => words !== ""),
  );

/**
 * What was learned, a line for each crop, each of its seasons and each cover, in the farm's order.
 *
 * @param cells - The grower's own, kept as they are.
 */
export function learnedRows(
  farm: Farm,
  learned: Learned,
  cells: readonly LearnedCells[],
): readonly LearnedRow[] {
  const own = (
    what: KeptWhat,
    name: string,
    season: SeasonOfYear | null,
  ): Pick<LearnedRow, "keep" | "remark"> => {
    const found = cells.find((each) => each.what === what && each.name === name && each.season === season);
    return { keep: found?.keep ?? "", remark: found?.remark ?? "" };
  };
  const crops = [...farm.crops.keys()].flatMap((id): readonly LearnedRow[] => {
    const crop = learned.crops.get(id);
    if (crop === undefined) return [];
    return [null, ...SEASONS_OF_YEAR].flatMap((season): readonly LearnedRow[] => {
      const notes = crop.notes.get(season);
      if (notes === undefined) return [];
      const { shift, spread, before } = season === null ? crop.farm : crop.season(season);
      const kept = (farm.kept ?? []).some(
        (each) => each.what === "requirement" && each.name === id && (each.season ?? season) === season,
      );
      return [
        {
          what: "requirement",
          name: id,
          season,
          value: Math.exp(shift),
          spread,
          own: kept ? 1 : Math.max(0, 1 - (spread / before) ** 2),
          from: notesCounted(notes),
          ...own("requirement", id, season),
        },
      ];
    });
  });
  const covers = learned.covers.flatMap(({ cover, factors }) =>
    factors.map(
      ({ what, factor, spread, own: share, pairs }): LearnedRow => ({
        what,
        name: cover,
        season: null,
        value: factor,
        spread,
        own: share,
        from: pairs === 0 ? "" : counted(pairs, "pair measured", "pairs measured"),
        ...own(what, cover, null),
      }),
    ),
  );
  return [...crops, ...covers];
}
