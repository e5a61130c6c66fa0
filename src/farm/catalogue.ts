import coverData from "../../data/covers.json" with { type: "json" };
import cropData from "../../data/crops.json" with { type: "json" };
import settingData from "../../data/settings.json" with { type: "json" };
import type { Counted } from "./counted.ts";
import type { Cover } from "./cover.ts";
import type { Crop, HowKnown } from "./crop.ts";
import type { Settings } from "./settings.ts";

/** What data/ says where a farm says nothing. */
export interface Catalogue {
  readonly crops: ReadonlyMap<string, Crop>;
  readonly covers: ReadonlyMap<string, Cover>;
  readonly settings: Settings;
}

interface Value {
  readonly value: number | null;
  readonly standing: string;
  readonly from?: Readonly<Record<string, unknown>>;
}

type Nested = { [key: string]: number | null | Nested };

/** Dotted keys to nested fields: "growth.base" becomes growth: { base }. */
function nested(values: Readonly<Record<string, Value>>): Nested {
  const root: Nested = {};
  for (const [path, { value }] of Object.entries(values)) {
    const keys = path.split(".");
    const last = keys.pop()!;
    let at = root;
    for (const key of keys) {
      const inner = (at[key] ?? {}) as Nested;
      at[key] = inner;
      at = inner;
    }
    at[last] = value;
  }
  return root;
}

/** How data/ says a requirement was counted before it was brought to the model's clock. */
function countedOf({ from }: Value): Pick<Crop, "counted"> {
  if (from?.method === undefined) return {};
  const { sumFromSowing: sum, method, base, leaf: to, reference: at } = from;
  return { counted: { sum, method, base, upper: null, cutOff: "none", from: "sowing", to, at } as Counted };
}

function cropOf(id: string, name: string, values: Readonly<Record<string, Value>>): Crop {
  const requirement = values.requirement!;
  const requirementStanding = requirement.standing as HowKnown;
  return {
    id,
    name,
    requirementStanding,
    ...countedOf(requirement),
    ...nested(values),
  } as unknown as Crop;
}

function coverOf(id: string, name: string, kind: string, values: Readonly<Record<string, Value>>): Cover {
  return { id, name, kind, ...nested(values) } as unknown as Cover;
}

/** The catalogue of crops, covers and settings. A test proves that data/ holds every field of the types. */
export function catalogue(): Catalogue {
  const crops = Object.entries(cropData.crops).map(
    ([id, { name, values }]) => [id, cropOf(id, name, values)] as const,
  );
  const covers = Object.entries(coverData.covers).map(
    ([id, { name, kind, values }]) => [id, coverOf(id, name, kind, values)] as const,
  );
  return {
    crops: new Map(crops),
    covers: new Map(covers),
    // Copied, because an object filled key by key is slow to read, and every hour of a climate reads it.
    settings: { ...nested(settingData.settings) } as unknown as Settings,
  };
}
