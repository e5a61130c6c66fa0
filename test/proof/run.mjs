// Bundles test/proof/NAME.ts into the system's folder for temporary files and runs it: node test/proof/run.mjs NAME [arguments].

import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..", "..");
const [name, ...parameters] = process.argv.slice(2);
const entry = join(here, `${name}.ts`);
if (name === undefined || !existsSync(entry)) {
  process.stderr.write(
    `test/proof/run.mjs: expected the name of a file in test/proof, received "${name ?? ""}"\n`,
  );
  process.exit(2);
}

/** A file that reads another beside it must find it from the bundle too. */
const ownAddress = {
  name: "own-address",
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/ }, ({ path }) => ({
      loader: "ts",
      contents: readFileSync(path, "utf8").replaceAll(
        "import.meta.url",
        JSON.stringify(pathToFileURL(path).href),
      ),
    }));
  },
};

const folder = mkdtempSync(join(tmpdir(), "leafpace-proof-"));
try {
  const outfile = join(folder, `${name}.mjs`);
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    format: "esm",
    platform: "node",
    target: "node20",
    legalComments: "none",
    logLevel: "warning",
    absWorkingDir: root,
    plugins: [ownAddress],
    // Some dependencies still call require.
    banner: {
      js: 'import{createRequire as createRequireOfNode}from"node:module";const require=createRequireOfNode(import.meta.url);',
    },
  });
  const { status } = spawnSync(process.execPath, [outfile, ...parameters], { cwd: root, stdio: "inherit" });
  process.exitCode = status ?? 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
