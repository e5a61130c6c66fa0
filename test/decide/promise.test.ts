import { describe, expect, test } from "vitest";
import {
  outlookOf,
  type ProductCases,
  productCases,
  promisedOf,
  type SuccessionOutlook,
  sceneOf,
} from "../../src/decide/index.ts";
import { catalogue, type Farm, type Product, type Settings } from "../../src/farm/index.ts";
import { quantile } from "../../src/learn/index.ts";
import { kilogram, metre } from "../../src/quantity/index.ts";
import { planAll, week } from "../week.ts";
import { at, bed, clear, input, leaf, tunnel } from "./smallFarm.ts";

const [creek, alder] = [tunnel("Creek", 20), tunnel("Alder", 20)];
const [half, other] = [
  bed("arugula", creek, { id: "half", to: metre(10) }),
  bed("arugula", creek, { id: "other", from: metre(10) }),
];
const far = bed("arugula", alder, { id: "far", to: metre(10) });
const mustard = bed("mustard", alder, { id: "mustard", from: metre(10) });

const product = (id: string, parts: Product["parts"]): Product => ({
  id,
  name: id,
  parts,
  price: null,
  stall: null,
  orders: [{ market: "friday", weight: kilogram(2), short: null }],
});
const arugula = product("arugula", [{ crop: "arugula", share: 1, swaps: [] }]);
const mix = product("mix", [
  { crop: "arugula", share: 0.5, swaps: [] },
  { crop: "mustard", share: 0.5, swaps: [] },
]);

const MILD = clear([4, 12], [4, 12], [4, 12], [4, 12], [4, 12], [4, 12], [4, 12]);

/** So mild that no night can take anything. */
const FROSTLESS = clear([10, 12], [10, 12], [10, 12], [10, 12], [10, 12], [10, 12], [10, 12]);

/** Nothing uncertain at all. */
const CERTAIN: Partial<Settings> = {
  forecastSpread: 0,
  forecastSpreadPerDay: 0,
  forecastSpreadMost: 0,
  carriedLevel: 0,
  warmthSpread: 0,
  shadeSpread: 0,
  yieldSpread: 0,
  bedSpread: 0,
  usualSpread: 0,
  carriedSpread: 0,
  spreadFloor: 0,
  thermalError: 1e-6,
  leafError: 1e-6,
  seenStart: 0,
  computedStart: 0,
  surprise: 1e6,
};

/** Nothing is cut early and kept cold. */
const nothingKept: Farm["crops"] = new Map(
  [...catalogue().crops].map(([id, crop]) => [id, { ...crop, storage: 0 }]),
);

/** What comes on Friday of beds with a leaf measured on the evening before the first day. @param length - [cm] */
function friday(
  beds: readonly (typeof half)[],
  products: readonly Product[],
  changed: Partial<Settings> = {},
  days: typeof MILD = MILD,
  length = 9,
): { readonly cases: readonly ProductCases[]; readonly outlooks: readonly SuccessionOutlook[] } {
  const parts: Pick<Farm, "tunnels" | "successions" | "pieces" | "notes"> = {
    tunnels: [creek, alder],
    successions: beds,
    pieces: [],
    notes: beds.map((each) => leaf(each, length)),
  };
  const plain = input(parts, days);
  const given = {
    ...plain,
    farm: {
      ...plain.farm,
      crops: nothingKept,
      products,
      markets: plain.farm.markets.filter(({ id }) => id === "friday"),
    },
    // Bed-days so dear that all is cut at the first market.
    settings: { ...plain.settings, bedDay: 0.1, ...changed },
  };
  const scene = sceneOf(given).scene!;
  const plans = planAll(scene).plans;
  const outlooks = plans.flatMap((plan) => plan.standings.map((each) => outlookOf(scene, plan, each)));
  return { cases: productCases(scene, plans, outlooks), outlooks };
}

const sum = (values: ArrayLike<number>): number => Array.from(values).reduce((a, b) => a + b, 0);
/** Standard deviation of the logarithms of what is more than nothing. */
function spread(values: Float64Array): number {
  const logs = [...values].filter((value) => value > 0).map(Math.log);
  const mean = sum(logs) / logs.length;
  return Math.sqrt(sum(logs.map((log) => (log - mean) ** 2)) / logs.length);
}

describe("what is safe to offer", () => {
  test("is what is expected, and may come, where nothing is uncertain", () => {
    const { cases, outlooks } = friday([half, far], [arugula], CERTAIN);
    const expected = sum(outlooks.map(({ atFate }) => atFate?.inSize ?? 0));
    const { safe, mayCome } = promisedOf(cases[0]!);
    expect(expected).toBeGreaterThan(1);
    expect(safe).toBeCloseTo(expected, 2);
    expect(mayCome).toBeCloseTo(expected, 2);
  });

  test("lies below the middle case and never above what may come", () => {
    for (const each of friday([half, other, far, mustard], [mix, arugula]).cases) {
      const { safe, mayCome } = promisedOf(each);
      const middle = quantile(each.cases.slice().sort(), 0.5);
      expect(safe).toBeLessThanOrEqual(middle);
      expect(middle).toBeLessThanOrEqual(mayCome);
    }
  });

  test("is on the mean of all cases what is expected: yields move it to both sides", () => {
    const { cases, outlooks } = friday([half], [arugula], {}, FROSTLESS);
    const expected = sum(outlooks.map(({ atFate }) => atFate?.inSize ?? 0));
    const mean = sum(cases[0]!.cases) / cases[0]!.cases.length;
    expect(Math.abs(mean / expected - 1)).toBeLessThan(0.03);
  });

  test("is short of orders or beyond them, never both", () => {
    const [{ ordered, short, over, safe }] = friday([half, far], [arugula]).cases.map(promisedOf) as [
      ReturnType<typeof promisedOf>,
    ];
    expect(ordered).toBe(2);
    expect(short * over).toBe(0);
    expect(safe + short - over).toBeCloseTo(ordered, 9);
  });

  test("is the same for the same seed, and stands in the week's answer", () => {
    const [a, b] = [1, 2].map(() => friday([half, far], [arugula]).cases.map(promisedOf));
    expect(a).toEqual(b);
    const parts = { tunnels: [creek], successions: [half], pieces: [], notes: [leaf(half, 9)] };
    const outcome = week(input(parts, MILD));
    expect(outcome.promises.map(({ product: id, market }) => `${id} ${market}`)).toEqual(
      ["tuesday", "friday"].flatMap((market) => outcome.farm.products.map(({ id }) => `${id} ${market}`)),
    );
    expect(outcome.on).toBe(at(0, 6.5));
  });
});

describe("beds of one case", () => {
  const only = (changed: Partial<Settings>): Partial<Settings> => ({ ...CERTAIN, ...changed });

  test("share what a crop yields on the farm: a second bed does not make it surer", () => {
    const [one, two] = [[half], [half, far]].map((beds) =>
      spread(friday(beds, [arugula], only({ yieldSpread: 0.2 })).cases[0]!.cases),
    );
    expect(one!).toBeCloseTo(0.2, 2);
    expect(two!).toBeCloseTo(0.2, 2);
  });

  test("have yields of their own besides: those even out", () => {
    const [one, two] = [[half], [half, far]].map((beds) =>
      spread(friday(beds, [arugula], only({ bedSpread: 0.2 })).cases[0]!.cases),
    );
    expect(one!).toBeCloseTo(0.2, 2);
    expect(two! / one!).toBeGreaterThan(0.62);
    expect(two! / one!).toBeLessThan(0.8);
  });

  test("give a mix what its scarcest part allows in each case", () => {
    const { cases } = friday([half, mustard], [mix], only({ bedSpread: 0.2 }));
    const [a, b] = ["arugula", "mustard"].map((crop) => {
      const alone = product(crop, [{ crop, share: 1, swaps: [] }]);
      return friday([half, mustard], [alone], only({ bedSpread: 0.2 })).cases[0]!.cases;
    });
    cases[0]!.cases.forEach((weight, i) => {
      expect(weight).toBeCloseTo(2 * Math.min(a![i]!, b![i]!), 9);
    });
  });

  test("are lost to the same cold night, though each for itself", () => {
    // Just too small to be cut before the first night.
    const frost = clear([4, 14], [-1.2, 14], [4, 14], [4, 14], [4, 14], [4, 14], [4, 14]);
    const { forecastSpread, forecastSpreadMost } = input(
      { tunnels: [], successions: [], pieces: [] },
      MILD,
    ).settings;
    const lostIn = (beds: readonly (typeof half)[], days: typeof MILD): number => {
      const { cases } = friday(beds, [arugula], only({ forecastSpread, forecastSpreadMost }), days, 7.8);
      return [...cases[0]!.cases].filter((weight) => weight === 0).length / cases[0]!.cases.length;
    };
    expect(lostIn([half], MILD)).toBe(0);
    const [one, two] = [lostIn([half], frost), lostIn([half, far], frost)];
    expect(one).toBeGreaterThan(0.2);
    expect(one).toBeLessThan(0.8);
    expect(two).toBeGreaterThan(one ** 2 * 1.2);
    expect(two).toBeLessThan(one);
  });
});
