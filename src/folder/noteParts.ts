import type { CoverState, Note } from "../farm/index.ts";
import type { LocalDate } from "../quantity/index.ts";
import type { Units } from "./faults.ts";
import { plainCommas, type Token, tokensOf } from "./noteAmount.ts";
import { type NamesIn, namesIn } from "./noteNames.ts";
import { type Misreading, misread, type NoteSetting } from "./noteRead.ts";
import { type SaidIn, saidIn } from "./noteWhen.ts";

export type Role =
  | "emerged"
  | "strip"
  | "not ready"
  | "cut"
  | "last"
  | "loss"
  | "resown"
  | "everything"
  | "bare"
  | CoverState;

export const ROLES: Readonly<Record<string, Role>> = {
  up: "emerged",
  emerged: "emerged",
  sprouted: "emerged",
  germinated: "emerged",
  strip: "strip",
  unready: "not ready",
  cut: "cut",
  harvested: "cut",
  last: "last",
  final: "last",
  lost: "loss",
  loss: "loss",
  resown: "resown",
  reseeded: "resown",
  on: "on",
  off: "off",
  vented: "vented",
  vent: "vented",
  nights: "nights",
  bare: "bare",
  uncovered: "bare",
  all: "everything",
  everything: "everything",
};

export const COVERS: readonly (Role | undefined)[] = ["on", "off", "vented", "nights", "bare"];

/** Words that carry nothing here. */
export const FILLERS: ReadonlySet<string> = new Set(
  "a an the and both of is are was were it has have been came come put took taken bed beds tunnel tunnels leaf leaves long about now".split(
    " ",
  ),
);

/** The words of a line without its names and its moment. */
export interface Spoken {
  readonly roles: readonly Role[];
  /** What is neither a name nor a moment nor a word of the trade. */
  readonly left: readonly Token[];
  readonly words: readonly string[];
}

/** A line in parts, before anything is made of them. */
export interface Parts extends Spoken {
  readonly names: NamesIn;
  readonly said: SaidIn;
}

/** null: a comma between digits could be either. */
export function spokenIn(text: string, units: Units): Spoken | null {
  const rest = plainCommas(
    text
      .toLowerCase()
      .replace(/\b(in|lbs?|oz|cm|mm|kg)\.(?!\d)/gu, "$1")
      .replace(/\b(?:re[\s-]sown|(?:sown|sowed|seeded)\s+again)\b/gu, "resown")
      .replace(/\b(?:not(?:\s+yet)?|isn't|isnt)\s+ready(?:\s+yet)?\b/gu, "unready")
      .replace(/\b(?:bare|check)[\s-]+strip\b/gu, "strip")
      .replace(/\b(?:at|every|by)\s+nights?\b/gu, "nights"),
    units,
  );
  if (rest === null) return null;
  const tokens = tokensOf(rest);
  const roleOf = (token: Token): Role | undefined =>
    Object.hasOwn(ROLES, token.text) ? ROLES[token.text] : undefined;
  return {
    roles: tokens.flatMap((token) => roleOf(token) ?? []),
    left: tokens.filter(
      (token) => token.kind === "join" || (roleOf(token) === undefined && !FILLERS.has(token.text)),
    ),
    words: tokens.filter(({ kind }) => kind !== "join").map((token) => token.text),
  };
}

/** @param day - The day "today" and "yesterday" are said on. */
export function partsOf(
  head: string,
  { farm, names: known, today }: NoteSetting,
  day: LocalDate,
): Parts | Misreading {
  const names = namesIn(head, known);
  const said = saidIn(names.rest, today, farm.units, day);
  if ("unclear" in said) return misread(said.unclear);
  const spoken = spokenIn(said.rest, farm.units);
  if (spoken === null) return misread("Write a point for decimals, and a blank between numbers.");
  return { names, said, ...spoken };
}

export type Kind = Note["kind"];

/** Words that are a kind of note themselves. */
const KINDS_SAID: ReadonlySet<Role> = new Set(["emerged", "strip", "not ready", "cut", "loss", "resown"]);

/** The kinds of note the words of the trade speak of; a leaf where there are none. */
export function kindsOf({ roles, names, said }: Parts): readonly Kind[] {
  const kinds = new Set<Kind>();
  for (const role of roles) {
    if (KINDS_SAID.has(role)) kinds.add(role as Kind);
    else if (COVERS.includes(role)) kinds.add("cover");
  }
  if (kinds.size > 0) return [...kinds];
  if (roles.includes("last")) return ["cut"];
  // "Creek 1 net on Tuesday": the "on" before the day is the cover's.
  return [said.on && names.tunnels.length > 0 && names.successions.length === 0 ? "cover" : "leaf"];
}
