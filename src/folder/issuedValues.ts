import {
  type Centimetre,
  centimetre,
  type Instant,
  instant,
  type Kilogram,
  kilogram,
  type LocalDate,
} from "../quantity/index.ts";
import type { Json, JsonHints } from "./jsonFile.ts";

export const HINTS: JsonHints = {
  unreadable: "Take the file away or bring it back from a copy; leafpace only passes it over.",
  otherForm: "It was changed by hand or cut off: take it away or bring it back from a copy.",
};

/* What is not as it must be is a problem, and then nothing of the file counts: what stands in for it is never seen. */
export const numberAt = (at: Json, what: string, most: number): number => at.number(what, 0, most) ?? 0;
export const textAt = (at: Json, what: string): string => at.text(what) ?? "";
export const instantAt = (at: Json): Instant => at.at("instant").time("a moment") ?? instant(0);
export const sizeAt = (at: Json): Centimetre => centimetre(numberAt(at, "centimetres", 500));
export const weightAt = (at: Json): Kilogram => kilogram(numberAt(at, "kilograms", 1_000_000));

export function dateAt(at: Json): LocalDate {
  const text = textAt(at, "a date");
  const real = /^\d{4}-\d\d-\d\d$/u.test(text) && !Number.isNaN(Date.parse(text));
  if (!real && text !== "") at.fault("json-date", "a date like 2026-04-20", HINTS.otherForm);
  return text as LocalDate;
}

/** One of some words, or a problem. */
export function oneOf<Word extends string>(at: Json, what: string, words: readonly [Word, ...Word[]]): Word {
  const text = textAt(at, what);
  const found = words.find((each) => each === text);
  if (found === undefined && text !== "")
    at.fault("json-choice", `one of ${words.join(", ")}`, HINTS.otherForm);
  return found ?? words[0];
}
