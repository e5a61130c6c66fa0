import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "playwright-core";

/** Why no browser can be had on this machine; null where one can. */
export const noBrowser: string | null =
  process.platform === "linux" && process.arch === "x64"
    ? null
    : `the browser that npm brings runs on Linux x64 only, not on ${process.platform} ${process.arch}`;

/** Without network, profile, graphics and sandbox: nothing of the machine shows in a page. */
const ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--font-render-hinting=none",
];

const fontsFile = (folder: string): string => join(folder, "fonts.conf");

/** The package's own list of font folders names none but those of the place it was made for. */
const fontsOnlyIn = (folder: string): string => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(folder, "fonts", "fonts")}</dir>
  <cachedir>${join(folder, "fonts-cache")}</cachedir>
</fontconfig>
`;

/**
 * A new folder with the browser, its libraries and its fonts; it goes when this process ends, broken off or not.
 * Unpacked in a process of its own, since the package changes its process.
 */
export function unpackChromium(): string {
  const folder = mkdtempSync(join(tmpdir(), "leafpace-browser-"));
  process.once("exit", () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  process.once("SIGTERM", () => process.exit(143));
  const unpack = 'await (await import("@sparticuz/chromium")).default.executablePath()';
  execFileSync(process.execPath, ["--input-type=module", "--eval", unpack], {
    cwd: dirname(fileURLToPath(import.meta.url)),
    env: { TMPDIR: folder, AWS_EXECUTION_ENV: "AWS_Lambda_nodejs20.x" },
  });
  writeFileSync(fontsFile(folder), fontsOnlyIn(folder));
  return folder;
}

/** Starts the browser of a folder that unpackChromium made. */
export const launchChromium = (folder: string): Promise<Browser> =>
  chromium.launch({
    executablePath: join(folder, "chromium"),
    args: ARGUMENTS,
    env: {
      HOME: folder,
      TMPDIR: folder,
      TZ: "UTC",
      LD_LIBRARY_PATH: join(folder, "al2023", "lib"),
      FONTCONFIG_FILE: fontsFile(folder),
    },
  });
