import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { weekHtml } from "../../src/sheet/index.ts";
import { withReader } from "./browser.ts";
import { hollowCreek } from "./farms.ts";
import { pdfPictures } from "./pdf.ts";

const FOLDER = fileURLToPath(new URL("../../examples/hollow-creek/pictures", import.meta.url));

/** Picture points per pt: a Letter page 734 wide, the letters legible and the file small. */
const SCALE = 1.2;

/** Writes front and back of the example's sheet, and what a phone shows of it first. */
export async function pictures(): Promise<void> {
  const html = weekHtml(await hollowCreek());
  const made = await withReader(async ({ open, print }) => {
    const [front, back] = await pdfPictures(await print(html, "Letter"), SCALE);
    const { page } = await open(html, { width: 360, height: 780 }, { deviceScaleFactor: 1.5 });
    return { "paper-front": front!, "paper-back": back!, phone: await page.screenshot() };
  });
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, picture] of Object.entries(made)) {
    writeFileSync(join(FOLDER, `${name}.png`), picture);
    console.log(`  ${name}.png, ${Math.ceil(picture.length / 1000)} kB`);
  }
}
