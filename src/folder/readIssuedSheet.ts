import type { Problem } from "../problem/index.ts";
import {
  type Centimetre,
  centimetre,
  type Instant,
  instant,
  type Kilogram,
  kilogram,
  type LocalDate,
} from "../quantity/index.ts";
import type {
  IssuedChange,
  IssuedFate,
  IssuedOutlook,
  IssuedPick,
  IssuedProduct,
  IssuedSheet,
  IssuedSize,
} from "./issuedSheet.ts";
import { type Json, type JsonHints, jsonFile } from "./jsonFile.ts";

/** Newest form of the week's answer that is understood. Fields that were added are passed over. */
const NEWEST = 1;

const HINTS: JsonHints = {
  unreadable: "Take the file away or bring it back from a copy; leafpace only passes it over.",
  otherForm: "It was changed by hand or cut off: take it away or bring it back from a copy.",
};

/* What is not as it must be is a problem, and then nothing of the file counts: what stands in for it is never seen. */
const numberAt = (at: Json, what: string, most: number): number => at.number(what, 0, most) ?? 0;
const textAt = (at: Json, what: string): string => at.text(what) ?? "";
const instantAt = (at: Json): Instant => at.at("instant").time("a moment") ?? instant(0);
const sizeAt = (at: Json): Centimetre => centimetre(numberAt(at, "centimetres", 500));
const weightAt = (at: Json): Kilogram => kilogram(numberAt(at, "kilograms", 1_000_000));

function dateAt(at: Json): LocalDate {
  const text = textAt(at, "a date");
  const real = /^\d{4}-\d\d-\d\d$/u.test(text) && !Number.isNaN(Date.parse(text));
  if (!real && text !== "") at.fault("json-date", "a date like 2026-04-20", HINTS.otherForm);
  return text as LocalDate;
}

const dateOrNull = (at: Json): LocalDate | null => (at.given ? dateAt(at) : null);

const pickAt = (at: Json): IssuedPick => ({
  market: textAt(at.at("market"), "a market"),
  marketDate: dateAt(at.at("marketDate")),
  at: instantAt(at.at("at")),
  planned: at.at("planned").is(true),
});

const USES = ["salad", "braising", "small"] as const;

function fateAt(succession: Json): IssuedFate | null {
  const fate = succession.at("fate");
  const kind = textAt(fate.at("kind"), "a fate");
  if (kind === "none") return null;
  const as = textAt(fate.at("as"), "a use");
  const use = USES.find((each) => each === as);
  if (use === undefined) fate.at("as").fault("json-choice", `one of ${USES.join(", ")}`, HINTS.otherForm);
  if (kind !== "pick" && kind !== "hold")
    fate.at("kind").fault("json-choice", "one of pick, hold, none", HINTS.otherForm);
  const pick = pickAt(fate.at("pick"));
  return {
    as: use ?? "salad",
    cut: kind === "hold" ? instantAt(fate.at("cut")) : pick.at,
    pick,
    weight: weightAt(succession.at("atFate").at("weightKg")),
  };
}

const sizesAt = (at: Json): IssuedSize => ({
  low: sizeAt(at.at("lowCm")),
  middle: sizeAt(at.at("middleCm")),
  high: sizeAt(at.at("highCm")),
});

type Windows = ReadonlyMap<string, Pick<IssuedOutlook, "cropName" | "smallest" | "largest">>;

const windowsIn = (root: Json): Windows =>
  new Map(
    root
      .at("crops")
      .list("a list of crops")
      .map((crop) => [
        textAt(crop.at("crop"), "a crop"),
        {
          cropName: textAt(crop.at("name"), "a name"),
          smallest: sizeAt(crop.at("smallestCm")),
          largest: sizeAt(crop.at("largestCm")),
        },
      ]),
  );

function outlookAt(at: Json, windows: Windows): IssuedOutlook {
  const crop = textAt(at.at("crop"), "a crop");
  const window = windows.get(crop);
  if (window === undefined && crop !== "")
    at.at("crop").fault("json-choice", "a crop of the sheet's own list", HINTS.otherForm);
  const [reach, emergence] = [at.at("reach"), at.at("emergence")];
  const spread = reach.at("spread").at("planned");
  return {
    succession: textAt(at.at("succession"), "a succession"),
    crop,
    ...(window ?? { cropName: crop, smallest: centimetre(0), largest: centimetre(0) }),
    sown: dateAt(at.at("sown")),
    emergence: emergence.given
      ? { at: instantAt(emergence.at("at")), seen: emergence.at("seen").is(true) }
      : null,
    reach: dateOrNull(reach.at("planned")),
    early: dateOrNull(spread.at("early")),
    late: dateOrNull(spread.at("late")),
    atPicks: at
      .at("atPicks")
      .list("a list of picks")
      .map((each) => ({
        pick: pickAt(each.at("pick")),
        size: sizesAt(each.at("planned")),
        odds: numberAt(each.at("odds"), "odds", 1),
        weight: weightAt(each.at("weightKg")),
      })),
    fate: fateAt(at),
  };
}

function changesIn(root: Json): readonly IssuedChange[] {
  const walks = new Map(
    root
      .at("walks")
      .list("a list of walks")
      .map((walk) => [numberAt(walk.at("walk"), "a walk's number", 1000), instantAt(walk.at("at"))]),
  );
  return root
    .at("tunnels")
    .list("a list of tunnels")
    .flatMap((tunnel) =>
      tunnel
        .at("changes")
        .list("a list of changes")
        .map((change): IssuedChange => {
          const at = walks.get(numberAt(change.at("walk"), "a walk's number", 1000));
          if (at === undefined)
            change.at("walk").fault("json-choice", "the number of one of its walks", HINTS.otherForm);
          return {
            tunnel: textAt(tunnel.at("tunnel"), "a tunnel"),
            at: at ?? instant(0),
            from: textAt(change.at("from"), "what lay there"),
            to: textAt(change.at("to"), "what was to lie there"),
          };
        }),
    );
}

const productAt = (at: Json): IssuedProduct => ({
  product: textAt(at.at("product"), "a product"),
  pick: pickAt(at.at("pick")),
  expected: weightAt(at.at("expectedKg")),
  ordered: weightAt(at.at("orderedKg")),
  successions: at
    .at("successions")
    .list("a list of successions")
    .map((each) => textAt(each, "a succession")),
});

/** An answer of another kind, or newer than this program. */
function otherForm(root: Json): void {
  const [kind, version] = [root.at("leafpace"), root.at("version")];
  if (kind.text('"week"') !== null && kind.text("") !== "week")
    kind.fault(
      "sheet-form",
      '"week"',
      "This folder is written by leafpace week --issue; keep other files elsewhere.",
    );
  else if (version.number("a version", 1, Number.MAX_SAFE_INTEGER)! > NEWEST)
    version.fault(
      "sheet-version",
      `version ${NEWEST}, the newest this leafpace knows`,
      "Bring leafpace up to date; the one that wrote it is newer.",
    );
}

/** Reads an issued sheet back; null, with every problem found, when it is not as it was written. */
export function readIssuedSheet(
  file: string,
  text: string,
): { readonly sheet: IssuedSheet | null; readonly problems: readonly Problem[] } {
  const { root, problems } = jsonFile(file, text, HINTS);
  // It is only passed over: the others and all other commands do without it.
  const told = (): readonly Problem[] =>
    problems().map((problem): Problem => ({ ...problem, weight: "needsYou" }));
  if (problems().length === 0) otherForm(root);
  if (problems().length > 0) return { sheet: null, problems: told() };
  const windows = windowsIn(root);
  const sheet: IssuedSheet = {
    version: numberAt(root.at("version"), "a version", NEWEST),
    on: instantAt(root.at("on")),
    days: numberAt(root.at("daysD"), "a number of days", 21),
    changes: changesIn(root),
    successions: root
      .at("successions")
      .list("a list of successions")
      .map((each) => outlookAt(each, windows)),
    products: root.at("products").list("a list of products").map(productAt),
  };
  return problems().length > 0 ? { sheet: null, problems: told() } : { sheet, problems: [] };
}
