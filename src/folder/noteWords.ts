import type { Farm, Note } from "../farm/index.ts";
import { type Centimetre, type Kilogram, toInches, toPounds } from "../quantity/index.ts";
import type { Units } from "./faults.ts";

/** Decimals that count in a leaf, a weight or a share as it is written down. */
const DECIMALS = 3;

const rounded = (value: number): number => Number(value.toFixed(DECIMALS));

/** A value in the first of two units in which it is a round number, else in the first. */
function roundIn(values: readonly (readonly [value: number, unit: string])[]): string {
  const round = values.find(([value]) => Math.abs(value - rounded(value)) < 1e-9);
  const [value, unit] = round ?? values[0]!;
  return `${rounded(value)} ${unit}`;
}

/** @example leafWords(centimetre(10.16), "US") // => "4 in" */
export function leafWords(length: Centimetre, units: Units): string {
  const both = [[toInches(length), "in"] as const, [length, "cm"] as const];
  return roundIn(units === "US" ? both : both.reverse());
}

/** @example massWords(pounds(14), "US") // => "14 lb" */
export function massWords(mass: Kilogram, units: Units): string {
  const both = [[toPounds(mass), "lb"] as const, [mass, "kg"] as const];
  return roundIn(units === "US" ? both : both.reverse());
}

/** The value of a note, as notes.csv has it. */
export function noteValue(note: Note, units: Units): string {
  switch (note.kind) {
    case "leaf":
    case "strip":
      return note.lengths.map((length) => leafWords(length, units)).join(" ");
    case "cover":
      return `${note.cover} ${note.state}`;
    case "cut":
      return [note.weight === null ? "" : massWords(note.weight, units), note.last ? "last" : ""]
        .filter((word) => word !== "")
        .join(" ");
    case "loss":
      return `${rounded(note.share * 100)} %`;
    default:
      return "";
  }
}

/** A note as a grower may write it, without its moment. @example noteWords(note, farm) // => "S01 4 in 3.5 in" */
export function noteWords(note: Note, { units, tunnels }: Pick<Farm, "units" | "tunnels">): string {
  const value = noteValue(note, units);
  if (note.kind === "cover")
    return `${tunnels.find(({ id }) => id === note.tunnel)?.name ?? note.tunnel} ${value}`;
  const verb = {
    leaf: "",
    strip: "strip",
    emerged: "up",
    "not ready": "not ready",
    cut: "cut",
    loss: "lost",
    resown: "resown",
  }[note.kind];
  return [note.succession, verb, value].filter((word) => word !== "").join(" ");
}
