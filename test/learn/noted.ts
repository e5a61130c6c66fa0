import type { Farm, Note, Succession } from "../../src/farm/index.ts";
import type { IssuedOutlook, IssuedPick, IssuedSheet } from "../../src/folder/index.ts";
import {
  centimetre,
  type Instant,
  instantAt,
  type Kilogram,
  kilogram,
  type LocalDate,
  metre,
} from "../../src/quantity/index.ts";
import { sample } from "../sheet/sample.ts";

/** Sheets and notes made by hand, on the sample's farm and clock. */

const ZONE = "America/New_York";

export const at = (date: string, hour = 6): Instant => instantAt(ZONE, date, hour);
export const cm: typeof centimetre = centimetre;
export const kg: (value: number) => Kilogram = kilogram;
export const date = (text: string): LocalDate => text as LocalDate;

type Kind = Note extends infer Each
  ? Each extends Note
    ? Omit<Each, "at" | "line" | "remark">
    : never
  : never;

export const note = (when: Instant, what: Kind): Note => ({ at: when, line: 2, remark: "", ...what }) as Note;
export const leaf = (when: Instant, succession: string, length: number): Note =>
  note(when, { kind: "leaf", succession, lengths: [cm(length)] });
export const cut = (when: Instant, succession: string, weight: number | null, last = false): Note =>
  note(when, { kind: "cut", succession, weight: weight === null ? null : kg(weight), last });

export const sown = (id: string, crop = "arugula"): Succession => ({
  id,
  crop,
  tunnel: "n1",
  from: metre(0),
  to: metre(7.5),
  sown: date("2026-03-16"),
  market: null,
  cuts: 0,
  net: false,
});

export const farmOf = (successions: readonly Succession[], notes: readonly Note[]): Farm => ({
  ...sample().farm,
  successions,
  notes,
});

export const pickAt = (day: string, market = "stall"): IssuedPick => ({
  market,
  marketDate: date(day),
  at: at(day),
  planned: true,
});

/** Salad size from 8 to 12 cm. */
export const outlook = (succession: string, said: Partial<IssuedOutlook> = {}): IssuedOutlook => ({
  succession,
  crop: "arugula",
  cropName: "arugula",
  sown: date("2026-03-16"),
  smallest: cm(8),
  largest: cm(12),
  emergence: null,
  reach: null,
  early: null,
  late: null,
  atPicks: [],
  fate: null,
  ...said,
});

export const sheetOn = (
  on: Instant,
  successions: readonly IssuedOutlook[],
  products: IssuedSheet["products"] = [],
): IssuedSheet => ({
  version: 1,
  on,
  days: 7,
  walks: [],
  tunnels: [],
  promises: [],
  changes: [],
  successions,
  products,
});
