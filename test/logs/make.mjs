// Writes the corpus: a folder for each log, with the file as found and what an import must find in it.
//
//   node test/logs/make.mjs            into test/logs/corpus
//   node test/logs/make.mjs FOLDER     into FOLDER
//
// The same bytes every time. Expectations are plain arithmetic on the invented series, or written by hand.

import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { clocks } from "./make/clocks.mjs";
import { daily } from "./make/daily.mjs";
import { NEW_YORK } from "./make/kit.mjs";
import { rows } from "./make/rows.mjs";
import { shape } from "./make/shape.mjs";
import { strangers } from "./make/strangers.mjs";
import { values } from "./make/values.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const folder = process.argv[2] ?? join(here, "corpus");

/** One line for each hour or day; the rest indented as usual. */
const json = (expected) =>
  `${JSON.stringify(expected, (_, value) => (Array.isArray(value) && Array.isArray(value[0]) ? value.map((row) => JSON.stringify(row)) : value), 2).replace(/"(\[.*\])"(,?)$/gmu, (_, row, sign) => `${row.replaceAll('\\"', '"')}${sign}`)}\n`;

rmSync(folder, { recursive: true, force: true });
const names = new Set();
for (const {
  name,
  about,
  file = "log.csv",
  content,
  args = [],
  zone = NEW_YORK,
  units = "US",
  sensors = ["outside"],
  ...expected
} of [...shape, ...clocks, ...values, ...rows, ...daily, ...strangers]) {
  if (names.has(name)) throw new Error(`two logs are called ${name}`);
  names.add(name);
  mkdirSync(join(folder, name), { recursive: true });
  writeFileSync(join(folder, name, file), content);
  writeFileSync(
    join(folder, name, "expected.json"),
    json({ about, file, args, farm: { zone, units, sensors }, ...expected }),
  );
}
