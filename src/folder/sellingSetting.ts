import type { Settings } from "../farm/index.ts";
import type { Setting } from "./settingReader.ts";

/** What a farm may say of how it sells, by the starting value it takes the place of, and the most each may be. [1] */
const SHARES = {
  "other market": ["otherMarketShare", 1],
  "beyond the stall": ["stallBeyond", 1],
  "left of a mix": ["looseShare", 1],
  // A restaurant that goes without may cost more than the sale.
  "short order": ["orderShort", 10],
  braising: ["shareBraising", 1],
  "just below size": ["shareJustBelow", 1],
  "lost a day kept cold": ["holdLoss", 1],
  "lost when cut wet": ["wetCutLoss", 1],
} as const satisfies Readonly<Record<string, readonly [keyof Settings, number]>>;

const NAMES = Object.keys(SHARES) as (keyof typeof SHARES)[];

/** Reads the shares of a price that a farm sets for itself. */
export function sellingSetting(setting: Setting | null): Partial<Settings> {
  const group = setting?.settings(NAMES) ?? null;
  const found = NAMES.flatMap((name) => {
    const [key, most] = SHARES[name];
    const share = group?.get(name)?.share(most) ?? null;
    return share === null ? [] : [[key, share] as const];
  });
  return Object.fromEntries(found);
}
