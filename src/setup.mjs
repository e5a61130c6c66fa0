// Makes a fresh clone ready: installs when node_modules is missing or older than the lock file, builds when
// dist is missing or older than what it is made from. Says nothing when there is nothing to do.

import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const at = (...parts) => join(root, ...parts);
const changed = (path) => (existsSync(path) ? statSync(path).mtimeMs : Number.NEGATIVE_INFINITY);

/** Newest change of any file below a folder. */
function newest(path) {
  if (!statSync(path).isDirectory()) return changed(path);
  return Math.max(changed(path), ...readdirSync(path).map((name) => newest(join(path, name))));
}

function run(command, parameters, shell) {
  // npm keeps a cache in the home folder; a machine without one still has a place for temporary files.
  const home = process.env.HOME || process.env.USERPROFILE;
  const env = home ? process.env : { ...process.env, npm_config_cache: join(tmpdir(), "npm-cache") };
  const { status, stdout, stderr, error } = spawnSync(command, parameters, {
    cwd: root,
    encoding: "utf8",
    env,
    shell,
  });
  if (status === 0) return;
  process.stderr.write(`${stdout ?? ""}${stderr ?? ""}${error ?? ""}\n`);
  process.exit(status ?? 1);
}

const installed = changed(at("node_modules", ".package-lock.json"));
if (installed < changed(at("package-lock.json"))) {
  process.stderr.write("Installing the dependencies (once) ...\n");
  const npm = process.env.npm_execpath;
  const parameters = ["ci", "--ignore-scripts", "--no-fund", "--no-audit", "--loglevel=error"];
  if (npm?.endsWith(".js")) run(process.execPath, [npm, ...parameters], false);
  else run("npm", parameters, process.platform === "win32");
}

const made = changed(at("dist", "main.js"));
const sources = ["src", "data", "package.json", "package-lock.json"].map((name) => newest(at(name)));
if (made < Math.max(...sources)) run(process.execPath, [at("src", "build.mjs")], false);
