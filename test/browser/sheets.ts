import { afterAll, beforeAll, describe, inject } from "vitest";
import { weekHtml } from "../../src/sheet/index.ts";
import { type Reader, reader } from "./browser.ts";
import { noBrowser } from "./chromium.ts";
import { hollowCreek, madeFarm, madeWeek } from "./farms.ts";
import { hostileFarm } from "./hostile.ts";

export type Sheet = "the example farm" | "12 tunnels" | "40 tunnels" | "odd names";

export const PLAIN: readonly Sheet[] = ["the example farm", "12 tunnels", "40 tunnels"];
export const SHEETS: readonly Sheet[] = [...PLAIN, "odd names"];

/** Each of one list with each of another, as rows of a table of tests. */
export const across = <A, B>(as: readonly A[], bs: readonly B[]): (readonly [A, B])[] =>
  as.flatMap((a) => bs.map((b) => [a, b] as const));

/** A browser, and the weeks as pages. */
export interface Stage {
  readonly chromium: Reader;
  readonly html: Readonly<Record<Sheet, string>>;
}

/** Four weeks are planned before the first test. [ms] */
const LONG = 240_000;

let planned: Promise<Stage["html"]> | null = null;

/** The weeks as pages, planned once for all that look at them. */
const pages = async (): Promise<Stage["html"]> => ({
  "the example farm": weekHtml(await hollowCreek()),
  "12 tunnels": weekHtml(madeWeek(madeFarm(12, 24))),
  "40 tunnels": weekHtml(madeWeek(madeFarm(40, 80))),
  "odd names": weekHtml(madeWeek(hostileFarm())),
});

/** Tests with the sheets in a browser; left out by name where no browser can be had. */
export function describeSheets(title: string, tests: (stage: () => Stage) => void): void {
  const why = noBrowser === null ? "" : `, left out: ${noBrowser}`;
  describe.skipIf(noBrowser !== null)(`${title}${why}`, () => {
    let stage: Stage;
    beforeAll(async () => {
      planned ??= pages();
      stage = { chromium: await reader(inject("chromiumFolder")!), html: await planned };
    }, LONG);
    afterAll(() => stage.chromium.end());
    tests(() => stage);
  });
}
