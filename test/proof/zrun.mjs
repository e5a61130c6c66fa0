// Bundles test/proof/NAME.ts and runs it: node test/proof/run.mjs NAME [arguments].

import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { here, root, withBundle } from "./bundle.mjs";

const [name, ...parameters] = process.argv.slice(2);
if (name === undefined || !existsSync(join(here, `${name}.ts`))) {
  process.stderr.write(
    `test/proof/run.mjs: expected the name of a file in test/proof, received "${name ?? ""}"\n`,
  );
  process.exit(2);
}

await withBundle(name, (outfile) => {
  const { status } = spawnSync(process.execPath, ["--cpu-prof", "--cpu-prof-dir=/tmp/jprof/p", outfile, ...parameters], { cwd: root, stdio: "inherit" });
  process.exitCode = status ?? 1;
});
