// Writes the pictures of the example's week for the documentation: node test/browser/pictures.mjs

import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const { module } = await runnerImport(fileURLToPath(new URL("pictures.ts", import.meta.url)));
await module.pictures();
