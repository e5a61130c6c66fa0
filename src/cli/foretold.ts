import { open } from "node:fs/promises";
import {
  type DateOrder,
  type FarmSettings,
  forecastFile,
  forecastHours,
  looksLikeForecast,
  looksLikeHours,
  looksLikePage,
  looksTyped,
  namesTemperature,
  parseMoment,
  type ReadForecast,
  reachesBeyond,
  serviceForecast,
  typedForecast,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";
import { otherMoment } from "./moment.ts";
import type { Given } from "./spec.ts";
import { allRows, type OpenTable } from "./table.ts";
import { heldText, readText } from "./textFile.ts";

/** What a forecast was read from: a table by its separator, typed lines, or a service's page. */
export type ReadFrom =
  | { readonly separator: string; readonly hourly: boolean }
  | { readonly page: string }
  | "typed";

/** A forecast as read, or why it could not be. */
export type Foretold = ReadForecast & { readonly from: ReadFrom };

/** First bytes looked at to tell a service's page, and the longest such page. [bytes] */
const SAMPLE = 4096;
const LONGEST = 20_000_000;

const tooLong = (file: string): Problem => ({
  code: "file-too-long",
  weight: "stops",
  file,
  line: null,
  column: null,
  expected: `a forecast of at most ${LONGEST / 1_000_000} MB`,
  received: "a longer file",
  hint: "Get the service's page again.",
});

/** The whole text of a file that begins as a service's page does; null for any other, and for one that cannot be opened. */
export async function pageText(
  held: Buffer | null,
  path: string,
  name: string,
): Promise<{ readonly text: string } | { readonly problem: Problem } | null> {
  if (held !== null) return looksLikePage(held.subarray(0, SAMPLE).toString()) ? heldText(held, name) : null;
  const opened = await open(path).catch(() => null);
  if (opened === null) return null;
  try {
    const { bytesRead, buffer } = await opened
      .read(Buffer.alloc(SAMPLE), 0, SAMPLE, 0)
      .catch(() => ({ bytesRead: 0, buffer: Buffer.alloc(0) }));
    if (!looksLikePage(buffer.subarray(0, bytesRead).toString())) return null;
    if ((await opened.stat()).size > LONGEST) return { problem: tooLong(name) };
  } finally {
    await opened.close();
  }
  const read = await readText(path, name);
  return "problem" in read ? read : { text: read.text ?? "" };
}

/** The moment given with --issued; null when none is. */
export function issuedGiven(
  given: Given,
  farm: FarmSettings,
  now: number,
): { readonly issued: Instant | null } | { readonly problem: Problem } {
  const text = given.issued;
  if (typeof text !== "string") return { issued: null };
  const issued = parseMoment(text, { zone: farm.place.zone, walks: farm.walks }, 0);
  if (issued !== null) return { issued };
  const expected = "a moment like 2026-04-20T05:00";
  return { problem: otherMoment("--issued", expected, text, farm, now) };
}

/** A page of a service as a forecast. */
export function foretoldByPage(
  file: string,
  text: string,
  issued: Instant | null,
  { place }: FarmSettings,
): Foretold {
  const { form, ...read } = serviceForecast(file, text, place.zone, issued);
  return { ...read, from: { page: form ?? "" } };
}

/** Does a table say when it was issued, in a line above its header? */
export const saysIssued = ({ opening }: OpenTable): boolean =>
  opening.some((cells) => /\bissued\b/iu.test(cells.join(" ")));

/**
 * Was a table of hours foretold, not logged? It says so, or its hours lie ahead of a moment: --issued alone does not tell,
 * since it may be said of another file of the import.
 */
function isOfHours(table: OpenTable, at: Instant, given: Given, { place }: FarmSettings): boolean {
  if (!looksLikeHours(table.opening)) return false;
  const order = (given.dates as DateOrder | undefined) ?? null;
  return saysIssued(table) || reachesBeyond(table.opening, place.zone, order, at);
}

/** How a forecast is written down. */
export type Form = "days" | "hours" | "typed";

/** How a table is written that looks like a forecast; null: it holds something else. @param at - When it was issued, or now. */
export function formOf(table: OpenTable, at: Instant, given: Given, farm: FarmSettings): Form | null {
  const { opening } = table;
  if (opening.some(looksLikeForecast)) return "days";
  if (isOfHours(table, at, given, farm)) return "hours";
  return looksTyped(opening, table.separator) && !opening.some(namesTemperature) ? "typed" : null;
}

/** A table or typed lines as a forecast. */
export async function foretoldByTable(
  file: string,
  table: OpenTable,
  form: Form,
  issued: Instant | null,
  now: Instant,
  given: Given,
  { place, units }: FarmSettings,
): Promise<Foretold> {
  const { zone } = place;
  const cut: Problem[] = [];
  const rows = await allRows(table, cut);
  const from = form === "typed" ? form : { separator: table.separator, hourly: form === "hours" };
  if (cut.length > 0) return { forecast: null, issuedBy: null, problems: cut, from };
  const written = { dates: (given.dates as DateOrder | undefined) ?? null, units };
  const read = {
    days: () => forecastFile({ file, rows }, zone, issued, written),
    hours: () => forecastHours({ file, rows }, zone, issued, now, written),
    typed: () => typedForecast({ file, rows }, table.separator, zone, issued, now, units),
  }[form]();
  return { ...read, from };
}
