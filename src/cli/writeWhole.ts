import { resolve } from "node:path";

/**
 * Writes a result whole or not at all.
 *
 * @param name - As it was typed; what the machine refuses is told of it, not of the file written on the way.
 */
export async function writeWhole(cwd: string, name: string, text: string): Promise<void> {
  const { default: writeFileAtomic } = await import("write-file-atomic");
  try {
    await writeFileAtomic(resolve(cwd, name), text);
  } catch (error) {
    throw Object.assign(error as NodeJS.ErrnoException, { path: name });
  }
}
