import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import type { Io } from "../../src/cli/io.ts";
import { run } from "../../src/cli/run.ts";
import type { Web } from "../../src/cli/web.ts";

const folders = join(dirname(fileURLToPath(import.meta.url)), "folders");

export interface Answer {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
  /** Both streams as they came. */
  readonly all: string;
}

export interface Shell {
  readonly dir: string;
  /** `cwd`: where it is run; the shell's folder when not said. */
  run(
    line: string | readonly string[],
    more?: { readonly input?: string; readonly cwd?: string },
  ): Promise<Answer>;
  end(): void;
}

/** The moment every shell takes for now. */
const NOW = Date.parse("2026-04-20T15:00:00Z");

/** A folder of its own in which commands run one after the other, without a process each. `web`: services they may ask. */
export function shell(folder: string | null, web?: Web): Shell {
  const dir = mkdtempSync(join(tmpdir(), "leafpace-"));
  if (folder !== null) cpSync(join(folders, folder), dir, { recursive: true });
  return {
    dir,
    end: () => rmSync(dir, { recursive: true, force: true }),
    run: async (line, { input = "", cwd = dir } = {}) => {
      const argv = typeof line === "string" ? words(line) : line;
      const written: { readonly to: "stdout" | "stderr"; readonly text: string }[] = [];
      const sink = (to: "stdout" | "stderr"): Io["stdout"] => ({
        terminal: false,
        columns: undefined,
        write: (text) => void written.push({ to, text }),
      });
      const io: Io = {
        stdout: sink("stdout"),
        stderr: sink("stderr"),
        env: {},
        cwd: resolve(cwd),
        zone: "America/New_York",
        now: () => NOW,
        input: async () => Buffer.from(input),
        ...(web === undefined ? {} : { web }),
      };
      const code = await run(argv, io);
      const clean = (which: string | null): string =>
        written
          .filter(({ to }) => which === null || to === which)
          .map(({ text }) => text)
          .join("")
          .replaceAll(resolve(dir), "<here>");
      return { code, stdout: clean("stdout"), stderr: clean("stderr"), all: clean(null) };
    },
  };
}

/** Words of a command line; double quotes keep blanks together. */
export const words = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain]) => quoted ?? plain ?? "");
