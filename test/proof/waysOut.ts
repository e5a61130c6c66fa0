import { loadSolver } from "../../src/cli/solver.ts";
import { moreThan, sceneOf } from "../../src/decide/index.ts";
import { planAll, week } from "../../src/week.ts";
import { exampleInput } from "../sheet/exampleWeek.ts";

/** Every way out of the example farm's misses beside what keeping it comes to: `node test/proof/run.mjs waysOut [days]`. */
const solver = await loadSolver();
const asked = await exampleInput(process.argv[2] ?? "3");
const plain = planAll(sceneOf(asked).scene!, solver).joint;
for (const { succession, miss } of week({ ...asked, whatIf: true }, solver).successions)
  for (const way of miss?.alternatives ?? []) {
    if (!way.forced) continue;
    const settled = planAll(sceneOf({ ...asked, keep: [way.kept] }).scene!, solver).joint;
    const { worth: asKept, off } = moreThan(settled, plain);
    const within = Math.max(1e-6 * Math.max(1, Math.abs(asKept)), off + way.off);
    const right = Math.abs(way.worth - asKept) <= within;
    if (!right) process.exitCode = 1;
    const cut = way.kept.kind === "cut" ? `${way.kept.date} ${way.kept.part}` : "uncut";
    const figures = [way.worth, asKept, within].map((value) => value.toFixed(6)).join(" ");
    process.stdout.write(`${succession.id} ${cut}: ${figures}${right ? "" : " OFF"}\n`);
  }
