// Runs the suite once in universal time, then what depends on clocks again in two zones far apart,
// and ends with one line of counts: N passed, N failed.

import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
const reports = mkdtempSync(join(tmpdir(), "leafpace-test-"));

const CLOCKS = ["test/quantity", "test/weather", "test/folder"].filter((folder) =>
  existsSync(join(root, folder)),
);
const asked = process.argv.slice(2);

const runs =
  asked.length > 0
    ? [{ zone: "UTC", only: asked }]
    : [
        { zone: "UTC", only: [] },
        { zone: "America/Los_Angeles", only: CLOCKS },
        { zone: "Pacific/Auckland", only: CLOCKS },
      ];

let passed = 0;
let failed = 0;
for (const [index, { zone, only }] of runs.entries()) {
  process.stdout.write(`\nTests with the machine's clock in ${zone}\n`);
  const report = join(reports, `${index}.json`);
  const { status } = spawnSync(
    process.execPath,
    [vitest, "run", ...only, "--reporter=default", "--reporter=json", `--outputFile.json=${report}`],
    { cwd: root, stdio: "inherit", env: { ...process.env, TZ: zone } },
  );
  const counts = existsSync(report) ? JSON.parse(readFileSync(report, "utf8")) : null;
  const broken =
    counts === null
      ? 1
      : counts.testResults.filter((file) => file.status === "failed" && file.assertionResults.length === 0)
          .length;
  passed += counts?.numPassedTests ?? 0;
  const failures = (counts?.numFailedTests ?? 0) + broken;
  // A run that ends badly without a failed test, as on an error between tests, is a failure too.
  failed += failures === 0 && status !== 0 ? 1 : failures;
}
rmSync(reports, { recursive: true, force: true });
process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
