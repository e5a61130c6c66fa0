import type { Farm, Note } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Kilogram, kilogram, toPounds } from "../quantity/index.ts";
import { shownLength } from "./faults.ts";
import { massWords } from "./noteWords.ts";

/** How many times its usual weight a bed may have borne before the weight or its unit looks like a slip. judgement */
const MOST = 4;

/** A weight nobody measured, to two figures. */
const roughly = (mass: Kilogram, units: Farm["units"]): string =>
  `${Number((units === "US" ? toPounds(mass) : mass).toPrecision(2))} ${units === "US" ? "lb" : "kg"}`;

/** Cuts of more than their bed can bear. `numbered`: their lines have numbers. */
export function heavyCuts(
  {
    file,
    numbered,
    column,
  }: { readonly file: string; readonly numbered: boolean; readonly column: string | null },
  notes: readonly Note[],
  { successions, crops, units }: Farm,
): readonly Problem[] {
  return notes.flatMap((note): readonly Problem[] => {
    if (note.kind !== "cut" || note.weight === null) return [];
    const about = successions.find(({ id }) => id === note.succession);
    const crop = about === undefined ? undefined : crops.get(about.crop);
    if (about === undefined || crop === undefined) return [];
    const usual = kilogram(crop.yield * (about.to - about.from));
    if (note.weight <= MOST * usual) return [];
    return [
      {
        code: "cut-heavy",
        weight: "needsYou",
        file,
        line: numbered ? note.line : null,
        column,
        expected: `a weight that ${shownLength((about.to - about.from) as typeof about.to, units)} of ${crop.name} can bear, usually some ${roughly(usual, units)}`,
        received: massWords(note.weight, units),
        hint: "Look at the weight and its unit.",
      },
    ];
  });
}
