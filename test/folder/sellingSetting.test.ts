import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { farmOf, MINIMAL, problemsOf } from "./fixtures.ts";

const ALL = `${MINIMAL}selling: { other market: 55 %, beyond the stall: 45 %, left of a mix: 30 %, short order: 150 %,
  braising: 40 %, just below size: 0.25, lost a day kept cold: 6 %, lost when cut wet: 4 % }
`;

describe("what a farm sells for", () => {
  test("takes the place of the starting values, and nothing else does", () => {
    expect(farmOf({ farm: ALL }).settings).toEqual({
      otherMarketShare: 0.55,
      stallBeyond: 0.45,
      looseShare: 0.3,
      orderShort: 1.5,
      shareBraising: 0.4,
      shareJustBelow: 0.25,
      holdLoss: 0.06,
      wetCutLoss: 0.04,
    });
    expect(Object.keys(catalogue().settings)).toEqual(
      expect.arrayContaining(Object.keys(farmOf({ farm: ALL }).settings!)),
    );
    expect(farmOf({}).settings).toBeUndefined();
    expect(farmOf({ farm: `${MINIMAL}selling: { braising: 0 % }\n` }).settings).toEqual({ shareBraising: 0 });
  });

  test("is a share of a price", () => {
    const farm = `${MINIMAL}selling: { braising: 150 %, short order: -5 %, left of a mix: 50, brasing: 50 % }\n`;
    expect(problemsOf({ farm })).toEqual([
      'farm.yaml:8 "selling.brasing": expected a known setting, received "brasing". Did you mean "braising"?',
      'farm.yaml:8 "selling.left of a mix": expected a share like 60 % or 0.6, received "50". Write the % sign behind it, or a number from 0 to 1.',
      'farm.yaml:8 "selling.short order": expected a share from 0 to 1000 %, received "-5 %". Raise or lower it.',
      'farm.yaml:8 "selling.braising": expected a share from 0 to 100 %, received "150 %". Raise or lower it.',
    ]);
  });
});
