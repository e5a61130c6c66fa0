import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

export const here = dirname(fileURLToPath(import.meta.url));
export const root = join(here, "..", "..");

/** A file that reads another beside it must find it from the bundle too. */
const ownAddress = {
  name: "own-address",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /^highs$/ }, () => ({ path: import.meta.resolve("highs"), external: true }));
    onLoad({ filter: /\.ts$/ }, ({ path }) => ({
      loader: "ts",
      contents: readFileSync(path, "utf8").replaceAll(
        "import.meta.url",
        JSON.stringify(pathToFileURL(path).href),
      ),
    }));
  },
};

/** Bundles test/proof/NAME.ts into the system's folder for temporary files, uses it, and takes it away again. */
export async function withBundle(name, use) {
  const folder = mkdtempSync(join(tmpdir(), "leafpace-proof-"));
  try {
    const outfile = join(folder, `${name}.mjs`);
    await build({
      entryPoints: [join(here, `${name}.ts`)],
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
    return await use(outfile);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
