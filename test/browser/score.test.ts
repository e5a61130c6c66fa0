import axe from "axe-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { scoreHtml } from "../../src/sheet/index.ts";
import { scored, scoreInput } from "../sheet/scoreSample.ts";
import { type Reader, reader } from "./browser.ts";
import { noBrowser } from "./chromium.ts";
import { beyondRightEdge, brokenWords, live } from "./inPage.ts";

const why = noBrowser === null ? "" : `, left out: ${noBrowser}`;
const page = scoreHtml(scored());

/** The page with names that are long, odd or would run. */
function oddNames(): string {
  const { farm, sheets } = scoreInput();
  const name = `<script>alert(1)</script> ${"W".repeat(60)}`;
  const successions = sheets[0]!.successions.map((each) => ({ ...each, cropName: name }));
  return scoreHtml(scored({ farm: { ...farm, name }, sheets: [{ ...sheets[0]!, successions }] }));
}

describe.skipIf(noBrowser !== null)(`the page of score${why}`, () => {
  let chromium: Reader;
  beforeAll(async () => {
    chromium = await reader(inject("chromiumFolder")!);
  });
  afterAll(() => chromium.end());

  it.each([360, 768, 1280])("fits into %i pixels across, its words whole", async (width) => {
    const opened = await chromium.open(page, { width });
    expect(await opened.page.evaluate(beyondRightEdge)).toEqual([]);
    expect(await opened.page.evaluate(brokenWords)).toEqual([]);
    await opened.page.context().close();
  });

  it.each(["light", "dark"] as const)("axe-core finds nothing serious, %s", async (scheme) => {
    const opened = await chromium.open(page, { width: 360, scheme });
    await opened.page.evaluate(axe.source);
    const violations = await opened.page.evaluate(
      async () => (await (window as unknown as { axe: typeof axe }).axe.run()).violations,
    );
    const grave = violations.filter(({ impact }) => impact === "serious" || impact === "critical");
    expect(grave.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)])).toEqual([]);
    await opened.page.context().close();
  });

  it("runs nothing and asks for nothing, whatever the names are, even without its own ban on scripts", async () => {
    const opened = await chromium.open(oddNames(), { width: 360 }, { bypassCSP: true });
    expect([opened.requests, opened.said, await opened.page.evaluate(live)]).toEqual([[], [], []]);
    expect(await opened.page.evaluate(beyondRightEdge)).toEqual([]);
    expect(await opened.page.evaluate(() => document.body.textContent)).toContain(
      "<script>alert(1)</script>",
    );
    await opened.page.context().close();
  });
});
