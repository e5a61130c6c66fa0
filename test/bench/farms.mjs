// How long the whole week takes on farms of forty and four hundred tunnels, as a ratio to a bare `node -e 0` in the same run, and
// what memory. Fourteen walks, six covers with their states, 64 members; the tunnels are the example's, again and again, each
// copy with leaves and sowings of its own. After a build: node test/bench/farms.mjs [tunnels …].

import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import { stringify } from "csv-stringify/sync";
import { parse as parseYaml, stringify as stringifyYaml } from "yaml";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const main = join(root, "dist", "main.js");
const example = join(root, "examples", "hollow-creek");
const folder = mkdtempSync(join(tmpdir(), "leafpace-bench-"));
const TARGETS = { 40: "at most 60 times node -e 0", 400: "at most 12 times 40 tunnels" };

const table = (name) => parse(readFileSync(join(example, name), "utf8"), { columns: true });

/** The example's folder with its tunnels and beds so many times; cloth, hands and orders grow with them. */
function makeFarm(tunnels) {
  const path = join(folder, String(tunnels));
  cpSync(example, path, { recursive: true });
  const yaml = parseYaml(readFileSync(join(example, "farm.yaml"), "utf8"));
  const copies = Array.from({ length: tunnels / yaml.tunnels.length }, (_, c) => c);
  const ids = new Set([...yaml.tunnels, ...table("successions.csv")].map(({ id }) => id));
  const named = (id, c) => (ids.has(id) ? `${id}x${c}` : id);
  const times = (amount) => amount.replace(/^[\d.]+/u, (value) => String(Number(value) * copies.length));
  yaml.tunnels = copies.flatMap((c) =>
    yaml.tunnels.map((each) => ({ ...each, id: named(each.id, c), name: `${each.name} ${c}` })),
  );
  for (const product of yaml.products) for (const order of product.orders) order.weight = times(order.weight);
  const write = (name, rows) => writeFileSync(join(path, name), stringify(rows, { header: true }));
  writeFileSync(join(path, "farm.yaml"), stringifyYaml(yaml));
  write(
    "successions.csv",
    copies.flatMap((c) =>
      table("successions.csv").map((row) => ({ ...row, id: named(row.id, c), tunnel: named(row.tunnel, c) })),
    ),
  );
  write(
    "notes.csv",
    copies.flatMap((c) =>
      table("notes.csv").map((row) => ({
        ...row,
        about: named(row.about, c),
        // Leaves a little longer or shorter from copy to copy, so that no two tunnels are the same.
        value:
          row.kind === "leaf"
            ? row.value.replaceAll(/[\d.]+/gu, (leaf) => (leaf * (0.9 + 0.02 * (c % 11))).toFixed(2))
            : row.value,
      })),
    ),
  );
  write("pieces.csv", [
    ...table("pieces.csv").map((row) => ({
      ...row,
      count: row.count * copies.length,
      "lies on": copies
        .flatMap((c) =>
          row["lies on"]
            .split(" ")
            .filter(Boolean)
            .map((id) => named(id, c)),
        )
        .join(" "),
    })),
    { id: "film-60", cover: "film", "length (ft)": 60, count: copies.length, "lies on": "" },
  ]);
  return path;
}

const REPORT = `data:text/javascript,${encodeURIComponent(
  'process.on("exit",()=>process.stderr.write("\\npeak "+process.resourceUsage().maxRSS))',
)}`;

function measured(parameters) {
  const begun = process.hrtime.bigint();
  const { status, stdout, stderr } = spawnSync(process.execPath, ["--import", REPORT, ...parameters], {
    encoding: "utf8",
    maxBuffer: 2 ** 28,
  });
  const seconds = Number(process.hrtime.bigint() - begun) / 1e9;
  if (status !== 0) throw new Error(`${parameters.join(" ")} ended with ${status}: ${stdout}${stderr}`);
  return { seconds, megabytes: Number(/peak (\d+)/u.exec(stderr)[1]) / 1024, stdout };
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

try {
  const bare = median(Array.from({ length: 20 }, () => measured(["-e", "0"]).seconds));
  console.log(`node -e 0: ${(1000 * bare).toFixed(0)} ms`);
  let before = null;
  for (const tunnels of process.argv.length > 2 ? process.argv.slice(2).map(Number) : [40, 400]) {
    const farm = makeFarm(tunnels);
    const { seconds, megabytes, stdout } = measured([
      main,
      "--farm",
      farm,
      "week",
      "--on",
      "2026-04-20",
      "--json",
    ]);
    const { together, walks, tunnels: plans } = JSON.parse(stdout);
    const ratio = before === null ? seconds / bare : seconds / before;
    console.log(
      `${plans.length} tunnels, ${walks.length} walks: ${seconds.toFixed(1)} s, ${ratio.toFixed(1)} times ${before === null ? "node -e 0" : "the one before"} (${TARGETS[tunnels] ?? "no aim"}), ${megabytes.toFixed(0)} MB; worth ${together.worth.toFixed(0)}, at most ${together.bound.toFixed(0)}`,
    );
    before = seconds;
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
