import { mkdtempSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { launchChromium, noBrowser, unpackChromium } from "./chromium.ts";
import type { Paper } from "./pdf.ts";

/** How a page is looked at. Sizes in CSS pixels. */
export interface Look {
  readonly width: number;
  readonly height?: number;
  readonly scheme?: "light" | "dark";
}

/** An opened page, with all it asked for and said since it was opened. */
export interface Opened {
  readonly page: Page;
  /** Addresses asked for besides the page itself. */
  readonly requests: readonly string[];
  /** Messages on the console, errors and dialogs. */
  readonly said: readonly string[];
}

/** Opens and prints pages from files, as a grower does. */
export interface Reader {
  open(html: string, look: Look, more?: BrowserContextOptions): Promise<Opened>;
  print(html: string, paper: Paper): Promise<Uint8Array>;
  end(): Promise<void>;
}

export async function reader(chromiumFolder: string): Promise<Reader> {
  const browser: Browser = await launchChromium(chromiumFolder);
  const folder = mkdtempSync(join(chromiumFolder, "pages-"));
  let count = 0;

  const open: Reader["open"] = async (html, { width, height = 640, scheme = "light" }, more = {}) => {
    const context = await browser.newContext({
      viewport: { width, height },
      colorScheme: scheme,
      ...more,
    });
    const page = await context.newPage();
    const file = join(folder, `${++count}.html`);
    writeFileSync(file, html);
    const address = pathToFileURL(file).href;
    const requests: string[] = [];
    const said: string[] = [];
    page.on("request", (request) => {
      if (request.url() !== address) requests.push(request.url());
    });
    page.on("console", (message) => said.push(message.text()));
    page.on("pageerror", (error) => said.push(String(error)));
    page.on("dialog", (dialog) => {
      said.push(dialog.message());
      void dialog.dismiss();
    });
    await page.goto(address);
    return { page, requests, said };
  };

  return {
    open,
    print: async (html, paper) => {
      const { page } = await open(html, { width: 1280 });
      const pdf = await page.pdf({ format: paper });
      await page.context().close();
      return pdf;
    },
    end: () => browser.close(),
  };
}

/** Unpacks a browser and uses it. */
export async function withReader<Answer>(use: (reader: Reader) => Promise<Answer>): Promise<Answer> {
  if (noBrowser !== null) throw new Error(noBrowser);
  const own = await reader(unpackChromium());
  try {
    return await use(own);
  } finally {
    await own.end();
  }
}
