import { LEARNED_NAME, learnedFile, writeLearned } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { instant } from "../quantity/index.ts";
import { type Beds, learnedRows } from "../sheet/index.ts";
import { openBatch } from "./batch.ts";
import type { Context } from "./context.ts";
import { commit } from "./durable.ts";
import { locked } from "./lock.ts";
import { allRows, heldTable } from "./table.ts";
import { writtenLines } from "./writtenLines.ts";

/**
 * Writes learned.csv anew from the notes, whole or not at all; what the grower wrote into its columns keep and remark stays.
 *
 * @returns What keeps it from being written; null when it stands.
 */
export async function saveLearned(
  dir: string,
  { farm, madeFrom: { learned } }: Beds,
  context: Context,
): Promise<Problem | null> {
  if (learned === undefined) {
    context.say("Without any weather nothing can be learned: learned.csv is as it was.\n");
    return null;
  }
  const done = await locked(dir, async (): Promise<Problem | null> => {
    const batch = openBatch(dir, instant(context.io.now()));
    const found = await batch.text(LEARNED_NAME);
    if ("problem" in found) return found.problem;
    const { table } = heldTable(Buffer.from(found.text ?? ""), LEARNED_NAME);
    const rows = table === null ? [] : await allRows(table, []);
    const { cells, problems } = learnedFile({ file: LEARNED_NAME, rows }, farm);
    // What cannot be read would be lost: it was told before anything was computed, or was written since.
    const [unread] = problems;
    if (unread !== undefined) return unread;
    const written = await batch.put(LEARNED_NAME, writeLearned(learnedRows(farm, learned, cells)));
    await commit(
      dir,
      batch.replaced().map(({ file, after }) => ({ file, bytes: after })),
    );
    context.say(`${writtenLines([written]).join("\n")}\n`);
    return null;
  });
  return "value" in done ? done.value : done.problem;
}
