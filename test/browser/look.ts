import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { withReader } from "./browser.ts";
import { type Paper, pdfPictures } from "./pdf.ts";

const PAPERS: readonly Paper[] = ["Letter", "A4"];

const SCREENS = {
  "phone-light": { width: 360, scheme: "light" },
  "phone-dark": { width: 360, scheme: "dark" },
  wide: { width: 1280, scheme: "light" },
} as const;

/** Picture points per pt. */
const SCALE = 1.5;

/** Writes pictures of a page on paper and on screens into a folder, and says what it wrote. */
export async function look(file: string, folder: string): Promise<void> {
  const html = readFileSync(file, "utf8");
  mkdirSync(folder, { recursive: true });
  const write = (name: string, picture: Uint8Array): void => {
    writeFileSync(join(folder, name), picture);
    console.log(`  ${name}, ${Math.ceil(picture.length / 1000)} kB`);
  };
  await withReader(async ({ open, print }) => {
    for (const paper of PAPERS) {
      const pictures = await pdfPictures(await print(html, paper), SCALE);
      console.log(`${paper}: ${pictures.length === 1 ? "1 page" : `${pictures.length} pages`}`);
      for (const [i, picture] of pictures.entries()) write(`${paper.toLowerCase()}-${i + 1}.png`, picture);
    }
    console.log("Screens:");
    for (const [name, screen] of Object.entries(SCREENS)) {
      const { page } = await open(html, screen);
      write(`${name}.png`, await page.screenshot({ fullPage: true }));
    }
  });
}
