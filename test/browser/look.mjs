// Pictures of a page on paper and on screens: node test/browser/look.mjs FILE.html [FOLDER]

import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const [file, folder = "."] = process.argv.slice(2);
if (file === undefined) {
  process.stderr.write("test/browser/look.mjs: expected an HTML file, and a folder for the pictures\n");
  process.exit(2);
}
const { module } = await runnerImport(fileURLToPath(new URL("look.ts", import.meta.url)));
await module.look(file, folder);
