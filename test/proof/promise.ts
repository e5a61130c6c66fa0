// How often the pounds called safe to offer were there, and those that may come, over many weeks as they might go in the
// measured weather of two cities. Fails where the safe pounds are kept less often, or oftener, than four times in five by much.

import { addDays, type LocalDate } from "../../src/index.ts";
import { seeded } from "../decide/randomProblem.ts";
import { CITIES, type City } from "../real/cities.ts";
import { gauss } from "../real/foretold.ts";
import { weekOf } from "./promiseFarms.ts";
import { type Kept, keptIn } from "./trueWeek.ts";

const WEEKS = Number(process.argv[2] ?? 150);
const SEED = Number(process.argv[3] ?? 1);

const weeks: { kind: string; kept: readonly Kept[] }[] = [];
for (const kind of ["example", "random"] as const) {
  for (let i = 0; i < WEEKS; i++) {
    const chance = seeded(SEED * 100_003 + 2 * i + (kind === "example" ? 0 : 1));
    const city = (Object.keys(CITIES) as City[])[i % 2]!;
    const date = addDays(`${2012 + (Math.floor(i / 2) % 4)}-03-15` as LocalDate, Math.floor(chance() * 215));
    const kept = keptIn(weekOf(kind, city, date, chance), city, date, chance, gauss(SEED * 7919 + i));
    if (kept !== null) weeks.push({ kind, kept });
  }
}
type Sel = (k: Kept) => boolean;
function row(name: string, of: (week: { kind: string; kept: readonly Kept[] }) => readonly Kept[]) {
  let [n, k, up, upn, ratio, med] = [0, 0, 0, 0, 0, 0];
  const per: [number, number][] = [];
  for (const w of weeks) {
    const all = of(w);
    const some = all.filter(({ safe }) => safe > 0);
    const may = all.filter(({ mayCome }) => mayCome > 0);
    n += some.length;
    const there = some.filter((e) => e.came >= e.safe - 1e-9).length;
    k += there;
    per.push([some.length, there]);
    upn += may.length;
    up += may.filter((e) => e.came > e.mayCome).length;
    ratio += some.reduce((s, e) => s + e.came, 0);
    med += some.reduce((s, e) => s + e.safe, 0);
  }
  const p = k / n;
  const se = Math.sqrt(per.reduce((s, [a, b]) => s + (b - p * a) ** 2, 0)) / n;
  console.log(
    name.padEnd(22),
    String(n).padStart(5),
    (100 * p).toFixed(1).padStart(6),
    `± ${(196 * Math.sqrt((p * (1 - p)) / n)).toFixed(1)} / ${(196 * se).toFixed(1)}`.padStart(14),
    (med / ratio).toFixed(2),
    `above may come ${((100 * up) / upn).toFixed(1)} of ${upn}`,
  );
}
row("all", (w) => w.kept);
for (const kind of ["example", "random"]) row(kind, (w) => (w.kind === kind ? w.kept : []));
row("mix", (w) => w.kept.filter((k) => k.mix));
row("single", (w) => w.kept.filter((k) => !k.mix));
for (let d = 0; d < 9; d++) row(`day ${d}`, (w) => w.kept.filter((k) => k.ahead === d));
for (const p of [...new Set(weeks.flatMap((w) => w.kept.map((k) => k.product)))])
  row(p, (w) => w.kept.filter((k) => k.product === p));
