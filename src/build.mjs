// Bundles the command and the library into dist/. Run by npm run build, and by npm install.

import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const at = (...parts) => join(root, ...parts);
const require = createRequire(import.meta.url);

// Installed as a dependency without the tools, the package comes with its dist/ made.
let esbuild;
try {
  esbuild = await import("esbuild");
} catch {
  if (existsSync(at("dist", "main.js"))) process.exit(0);
  throw new Error("dist/ is missing and esbuild is not installed: run npm ci first.");
}

const { version } = JSON.parse(readFileSync(at("package.json"), "utf8"));

rmSync(at("dist"), { recursive: true, force: true });

const shared = {
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20",
  minify: true,
  legalComments: "none",
  logLevel: "warning",
  absWorkingDir: root,
  outdir: at("dist"),
};

// Some dependencies still call require.
const requireBanner =
  'import{createRequire as createRequireOfNode}from"node:module";const require=createRequireOfNode(import.meta.url);';

await esbuild.build({
  ...shared,
  entryPoints: [at("src", "cli", "main.ts")],
  splitting: true,
  chunkNames: "chunks/[name]-[hash]",
  // One dependency names its temporary files after the file it runs from; its address does as well.
  // It reads its own file beside it, so it stays where it was installed.
  external: ["highs"],
  define: { LEAFPACE_VERSION: JSON.stringify(version), __filename: "import.meta.url" },
  banner: { js: requireBanner },
});
chmodSync(at("dist", "main.js"), 0o755);

if (existsSync(at("src", "index.ts"))) {
  await esbuild.build({
    ...shared,
    entryPoints: [at("src", "index.ts")],
    platform: "neutral",
    mainFields: ["module", "main"],
  });
  const tsc = join(dirname(require.resolve("typescript/package.json")), "bin", "tsc");
  const { status } = spawnSync(
    process.execPath,
    [
      tsc,
      "-p",
      at("src"),
      "--noEmit",
      "false",
      "--emitDeclarationOnly",
      "--rewriteRelativeImportExtensions",
      "--rootDir",
      at("src"),
      "--outDir",
      at("dist", "types"),
    ],
    { stdio: "inherit" },
  );
  if (status !== 0) process.exitCode = status ?? 1;
}
