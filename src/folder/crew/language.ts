import type { CoverState } from "../../farm/index.ts";

/** What is done with one cloth at one walk. `…Nights`: from then on it lies by night only. */
export type Act =
  | "on"
  | "onLifted"
  | "layReady"
  | "onNights"
  | "off"
  | "lift"
  | "offNights"
  | "leaveNights"
  | "lower"
  | "lowerNights"
  | "offAlsoNights"
  | "leaveOff"
  | "leaveOn"
  | "onAlsoDays"
  | "liftAlways"
  | "onLiftedAlways"
  | "offForDay"
  | "onForNight";

/** The state that is noted of each; null: a round of a rhythm, nothing new. */
export const ACTS: Readonly<Record<Act, CoverState | null>> = {
  on: "on",
  onLifted: "vented",
  layReady: "nights",
  onNights: "nights",
  off: "off",
  lift: "vented",
  offNights: "nights",
  leaveNights: "nights",
  lower: "on",
  lowerNights: "nights",
  offAlsoNights: "off",
  leaveOff: "off",
  leaveOn: "on",
  onAlsoDays: "on",
  liftAlways: "vented",
  onLiftedAlways: "vented",
  offForDay: null,
  onForNight: null,
};

/** What a cut is for: as what it is sold, and whether it is kept cold until then. */
export type Purpose = "salad" | "braising" | "small" | "coldSalad" | "coldBraising" | "coldSmall";

/** What keeps people, cloth and leaves from harm. `…One`: until one o'clock, which Spanish counts as a single hour. */
export type Safety =
  | "windLimit"
  | "windExpected"
  | "frozenCloth"
  | "snowOnCloth"
  | "snowOnBeds"
  | "wetLeaves"
  | "frozenLeaves"
  | "frozenLeavesUntil"
  | "frozenLeavesUntilOne";

/** When a card is for; `…Of` where the walk has several cards. */
export type Heading = "morning" | "evening" | "cutting" | "morningOf" | "eveningOf" | "cuttingOf";

/** Everything else a card says. */
export type Other =
  | "cut"
  | "reply"
  | "replyWithWeight"
  | "nothing"
  | "noPlan"
  | "dayUS"
  | "dayMetric"
  | "am"
  | "pm"
  | "clock"
  | "noon"
  | "midnight"
  | "lb"
  | "kg"
  | "blankLb"
  | "blankKg"
  | "mph"
  | "kmh";

export type SentenceName = Act | Purpose | Safety | Heading | Other;

/**
 * A language of the cards. Every sentence is whole, with holes in braces; none is put together from words. What is filled in is
 * a name, a number or another sentence of this table.
 */
export interface CrewLanguage {
  readonly sentences: Readonly<Record<SentenceName, string>>;
  /** Covers and crops of the catalogue by id. Names a farm gives itself stay as typed. */
  readonly covers: Readonly<Record<string, string>>;
  readonly crops: Readonly<Record<string, string>>;
  /** What cards said before, and their months: such a card may still be sent back. */
  readonly formerly: { readonly sentences: readonly string[]; readonly months: readonly string[] };
  /** From Sunday, and from January; no word stands in both. */
  readonly weekdays: readonly string[];
  readonly months: readonly string[];
  /** What people write beside something they did not do. */
  readonly notDone: readonly string[];
  /** What they write to be kind, or to say that all is done, and that changes nothing on a card. */
  readonly courtesies: readonly string[];
  /** What they write with a weight, and its word in a note. */
  readonly weightWords: Readonly<Record<string, string>>;
}
