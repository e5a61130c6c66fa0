import { ALONE } from "../../src/decide/index.ts";
import { bestPriced } from "../decide/everyPriced.ts";
import { everySchedule } from "../decide/everyWay.ts";
import { randomFarm } from "../decide/randomFarm.ts";
const problem = randomFarm(2, { tunnels: [10, 40], walks: [14, 14], lays: [4, 6], successions: [1, 2], outlets: 4, changesPerWeek: [1, 3] });
for (const { problem: p } of problem.tunnels.slice(0, 6)) {
  let n = 0;
  const c0 = process.cpuUsage();
  everySchedule(p, () => { n++; });
  const c1 = process.cpuUsage(c0);
  bestPriced(p, ALONE(p, 100));
  const c2 = process.cpuUsage(c0);
  console.log(p.lays.length, p.changesPerWeek, p.successions.length, "schedules", n, c1.user / 1000, (c2.user - c1.user) / 1000, "ms cpu");
}
