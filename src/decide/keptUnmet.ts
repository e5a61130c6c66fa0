import type { Problem } from "../problem/index.ts";
import { keptOutlets } from "./kept.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";

/** Cuts the grower has settled on a day on which there is nothing to cut for any market: they are told, and the plan decides. */
export function keptUnmet(scene: Scene, plans: readonly Planned[]): readonly Problem[] {
  const tables = plans.flatMap(({ problem }) => problem.successions);
  return scene.keep.flatMap((kept): readonly Problem[] => {
    if (kept.kind !== "cut") return [];
    const table = tables.find(({ standing }) => standing.succession.id === kept.succession);
    if (table !== undefined && keptOutlets(scene, table.standing, table.offered).mustCut) return [];
    const cold =
      table === undefined ? "" : ` that lies within ${table.standing.crop.storage} days in the cold`;
    return [
      {
        code: "kept-cut-impossible",
        weight: "needsYou",
        file: "--keep",
        line: null,
        column: null,
        expected: `a cut of ${kept.succession} that some market can take`,
        received: `a cut on ${kept.date}${kept.part === null ? "" : `, ${kept.part}`}`,
        hint: `No market${cold} takes it, its pick is past, or the bed is not up then: the plan decides about it.`,
      },
    ];
  });
}
