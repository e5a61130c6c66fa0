import type { Context } from "./context.ts";
import { writeWhole } from "./writeWhole.ts";

/** Writes a result into the file named for it and says so; "-" is standard output. */
export async function printOrWrite(text: string, file: string, { io, say }: Context): Promise<void> {
  if (file === "-") return io.stdout.write(text);
  await writeWhole(io.cwd, file, text);
  say(`Wrote ${file}.\n`);
}
