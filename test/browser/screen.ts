import axe from "axe-core";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import type { Look } from "./browser.ts";
import { beyondRightEdge, brokenWords, live, stops } from "./inPage.ts";
import { across, describeSheets, PLAIN, type Sheet } from "./sheets.ts";

const SCREENS = [360, 768, 1280] as const;

describeSheets("the week on a screen", (stage) => {
  async function onScreen<Answer>(
    sheet: Sheet,
    look: Look,
    ask: (page: Page) => Promise<Answer>,
  ): Promise<Answer> {
    const { chromium, html } = stage();
    const { page } = await chromium.open(html[sheet], look);
    const answer = await ask(page);
    await page.context().close();
    return answer;
  }

  it.each(across(PLAIN, SCREENS))(
    "the week of %s fits into %i pixels across, its words whole",
    async (sheet, width) => {
      const faults = await onScreen(sheet, { width }, async (page) => [
        ...(await page.evaluate(beyondRightEdge)),
        ...(await page.evaluate(brokenWords)),
      ]);
      expect(faults).toEqual([]);
    },
  );

  it.each(SCREENS)("the longest names fit into %i pixels across", async (width) => {
    expect(await onScreen("odd names", { width }, (page) => page.evaluate(beyondRightEdge))).toEqual([]);
  });

  it.each(PLAIN)("today's walk of %s is what a phone shows first", async (sheet) => {
    const first = await onScreen(sheet, { width: 360, height: 640 }, (page) =>
      page.evaluate(() => {
        const [title, first] = document.querySelectorAll("h1, h2, h3");
        const { top, bottom } = first!.getBoundingClientRect();
        return {
          title: title!.localName,
          text: first!.textContent,
          shown: top >= 0 && bottom <= innerHeight,
        };
      }),
    );
    expect(first).toEqual({ title: "h1", text: expect.stringMatching(/^Today\b/u), shown: true });
  });

  it.each(across([360, 1280], ["light", "dark"] as const))(
    "axe-core finds nothing serious at %i pixels, %s",
    async (width, scheme) => {
      const violations = await onScreen("the example farm", { width, scheme }, async (page) => {
        await page.evaluate(axe.source);
        return page.evaluate(
          async () => (await (window as unknown as { axe: typeof axe }).axe.run()).violations,
        );
      });
      const grave = violations.filter(({ impact }) => impact === "serious" || impact === "critical");
      expect(grave.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)])).toEqual([]);
    },
  );

  it("the keyboard reaches every link and box in order, shows where it is, and ticks", async () => {
    await onScreen("the example farm", { width: 1280 }, async (page) => {
      const all = (await page.evaluate(stops)).map(({ name }) => name);
      expect(all.length).toBeGreaterThan(10);
      const met: string[] = [];
      const unseen: string[] = [];
      for (const _ of all) {
        await page.keyboard.press("Tab");
        const here = (await page.evaluate(stops)).find(({ focused }) => focused);
        met.push(here?.name ?? "nothing");
        if (here?.ring !== true) unseen.push(here?.name ?? "nothing");
      }
      expect(met).toEqual(all);
      expect(unseen).toEqual([]);
      const box = page.locator("input[type=checkbox]").first();
      await box.focus();
      expect(await box.isChecked()).toBe(false);
      await page.keyboard.press("Space");
      expect(await box.isChecked()).toBe(true);
    });
  });

  it("asks for nothing, says nothing and lets nothing run", async () => {
    const { chromium, html } = stage();
    const { page, requests, said } = await chromium.open(html["the example farm"], { width: 1280 });
    expect([requests, said, await page.evaluate(live)]).toEqual([[], [], []]);
    const ran = await page.evaluate(() => {
      const script = document.createElement("script");
      script.textContent = "window.ran = true";
      document.body.append(script);
      return "ran" in window;
    });
    expect(ran).toBe(false);
    await page.context().close();
  });

  it("odd names run nothing and are shown as they were typed, even without the page's own ban on scripts", async () => {
    const { chromium, html } = stage();
    const { page, requests, said } = await chromium.open(
      html["odd names"],
      { width: 360 },
      { bypassCSP: true },
    );
    await page.evaluate(() => {
      for (const element of document.querySelectorAll("*"))
        for (const kind of ["mouseover", "focus", "click"]) element.dispatchEvent(new Event(kind));
    });
    expect([requests, said, await page.evaluate(live)]).toEqual([[], [], []]);
    const text = await page.evaluate(() => document.body.textContent);
    expect(text).toContain("<script>alert(1)</script>");
    expect(text).toContain('Tom & Jerry\'s &lt;b&gt; &amp; "Co"');
    await page.context().close();
  });
});
