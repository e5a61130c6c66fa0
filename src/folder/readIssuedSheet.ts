import type { Problem } from "../problem/index.ts";
import { centimetre, type LocalDate } from "../quantity/index.ts";
import { changesAt, walksIn } from "./issuedPlan.ts";
import type {
  IssuedFate,
  IssuedOutlook,
  IssuedPick,
  IssuedProduct,
  IssuedPromise,
  IssuedSheet,
  IssuedSize,
} from "./issuedSheet.ts";
import { dateAt, HINTS, instantAt, numberAt, oneOf, sizeAt, textAt, weightAt } from "./issuedValues.ts";
import { type Json, jsonFile } from "./jsonFile.ts";

/** Newest form of the week's answer that is understood. Fields that were added are passed over. */
const NEWEST = 1;

const dateOrNull = (at: Json): LocalDate | null => (at.given ? dateAt(at) : null);

const pickAt = (at: Json): IssuedPick => ({
  market: textAt(at.at("market"), "a market"),
  marketDate: dateAt(at.at("marketDate")),
  at: instantAt(at.at("at")),
  planned: at.at("planned").is(true),
});

function fateAt(succession: Json): IssuedFate | null {
  const fate = succession.at("fate");
  const kind = textAt(fate.at("kind"), "a fate");
  if (kind === "none") return null;
  const as = oneOf(fate.at("as"), "a use", ["salad", "braising", "small"]);
  if (kind !== "pick" && kind !== "hold")
    fate.at("kind").fault("json-choice", "one of pick, hold, none", HINTS.otherForm);
  const pick = pickAt(fate.at("pick"));
  return {
    as,
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

const promiseAt = (at: Json): IssuedPromise => ({
  product: textAt(at.at("product"), "a product"),
  market: textAt(at.at("market"), "a market"),
  marketDate: dateAt(at.at("marketDate")),
  safe: weightAt(at.at("safeKg")),
});

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
  const walks = walksIn(root);
  const tunnels = root.at("tunnels").list("a list of tunnels");
  const sheet: IssuedSheet = {
    version: numberAt(root.at("version"), "a version", NEWEST),
    on: instantAt(root.at("on")),
    days: numberAt(root.at("daysD"), "a number of days", 21),
    walks: [...walks.values()],
    tunnels: tunnels.map((each) => textAt(each.at("tunnel"), "a tunnel")),
    changes: tunnels.flatMap((each) => changesAt(each, walks)),
    successions: root
      .at("successions")
      .list("a list of successions")
      .map((each) => outlookAt(each, windows)),
    products: root.at("products").list("a list of products").map(productAt),
    // The first sheets had none.
    promises: root.at("promises").given ? root.at("promises").list("a list of promises").map(promiseAt) : [],
  };
  return problems().length > 0 ? { sheet: null, problems: told() } : { sheet, problems: [] };
}
