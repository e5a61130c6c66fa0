import type { Farm, Part, Product } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { unknownCrop } from "./cropNames.ts";
import { unknownName } from "./faults.ts";
import { identity } from "./identity.ts";
import type { Setting } from "./settingReader.ts";

type Crops = Farm["crops"];

const knownCrop = (setting: Setting, crop: string, crops: Crops, problems: Problem[]): boolean => {
  if (!crops.has(crop)) problems.push(unknownCrop(setting.spot, crop, [...crops.keys()]));
  return crops.has(crop);
};

/** Crops that may stand in for one; null when one of them cannot. */
function swaps(setting: Setting, crop: string, crops: Crops, problems: Problem[]): readonly string[] | null {
  const entries = setting.list();
  const found: string[] = [];
  for (const entry of entries) {
    const name = entry.text("a crop");
    if (name === null || !knownCrop(entry, name, crops, problems)) continue;
    if (name === crop || found.includes(name))
      entry.fault("swap-twice", `another crop than ${[crop, ...found].join(", ")}`, "Take it out.");
    else found.push(name);
  }
  return found.length === entries.length ? found : null;
}

/** A part as its share alone, or as a share with what may stand in for it. */
function part(setting: Setting, crop: string, crops: Crops, problems: Problem[]): Part | null {
  const known = knownCrop(setting, crop, crops, problems);
  const group = setting.form === "group" ? setting.settings(["share", "swaps"]) : null;
  const share =
    setting.form === "group"
      ? (group?.need("share", "its share in the mix, like 25 %")?.quantity("share") ?? null)
      : setting.quantity("share");
  const swapSetting = group?.get("swaps") ?? null;
  const others = swapSetting === null ? [] : swaps(swapSetting, crop, crops, problems);
  return !known || share === null || others === null ? null : { crop, share, swaps: others };
}

function parts(setting: Setting | null, crops: Crops, problems: Problem[]): Product["parts"] | null {
  const group = setting?.settings(null) ?? null;
  if (group === null) return null;
  const found = group.names.flatMap((crop) => part(group.get(crop)!, crop, crops, problems) ?? []);
  if (found.length < group.names.length) return null;
  const sum = found.reduce((total, { share }) => total + share, 0);
  if (Math.abs(sum - 1) <= 0.011) return found.map((each) => ({ ...each, share: each.share / sum }));
  problems.push({
    ...setting!.spot,
    code: "shares-not-whole",
    weight: "stops",
    expected: "shares that come to 100 % together",
    received: `${Math.round(sum * 1000) / 10} %`,
    hint: "Raise or lower a share.",
  });
  return null;
}

function orders(setting: Setting, ids: readonly string[], problems: Problem[]): Product["orders"] {
  return setting.list().flatMap((entry) => {
    const group = entry.settings(["market", "weight", "short"]);
    const marketSetting = group?.need("market", "a market") ?? null;
    const market = marketSetting?.text("a market") ?? null;
    const weight = group?.need("weight", "a weight like 30 lb")?.amount("mass") ?? null;
    const short = group?.get("short")?.amount("price") ?? null;
    if (market !== null && !ids.includes(market))
      problems.push(unknownName(marketSetting!.spot, market, "a market", ids, "market-unknown"));
    return market === null || weight === null ? [] : [{ market, weight, short }];
  });
}

/** What the farm sells: what is in it, at which price, how much at a stall and to whom it is promised. */
export function productsSetting(
  setting: Setting | null,
  crops: Crops,
  marketIds: readonly string[],
  problems: Problem[],
): readonly Product[] {
  const taken = new Set<string>();
  return (setting?.list() ?? []).flatMap((entry) => {
    const group = entry.settings(["id", "name", "parts", "price", "stall", "orders"]);
    if (group === null) return [];
    const id = identity(group, "product", taken);
    const name = group.get("name")?.text("the product's name") ?? id;
    const shares = parts(group.need("parts", "the crops in it with their shares"), crops, problems);
    const price = group.get("price")?.amount("price") ?? null;
    const stall = group.get("stall")?.amount("mass") ?? null;
    const orderSetting = group.get("orders");
    const ordered = orderSetting === null ? [] : orders(orderSetting, marketIds, problems);
    return id === null || name === null || shares === null
      ? []
      : [{ id, name, parts: shares, price, stall, orders: ordered }];
  });
}
