import { it } from "vitest";
import { weekText } from "../../src/sheet/index.ts";
import { kilogram } from "../../src/quantity/index.ts";
import { week } from "../week.ts";
import { A, ARUGULA, B, FROSTY, frostyFarm, LETTUCE, only, product } from "./frostyFarm.ts";
import { piece, at } from "./smallFarm.ts";
import { confirm } from "./recompute.ts";
const { labour } = frostyFarm().farm;
const show = (n: string, i: ReturnType<typeof frostyFarm>) => {
  const o = week(i); console.log(n, o.together!.overrun);
  console.log(weekText(o, { width: 100, unicode: true } as never));
  confirm(o);
};
it("minutes", () => {
  const one = frostyFarm({ labour: { ...labour, walk: 0 }, pieces: [piece("heavy", "row-cover-30", 16)] });
  show("nights, 0 min", { ...one, farm: { ...one.farm, notes: [...one.farm.notes, { at: at(-1, 18), line: 9, remark: "", kind: "cover", tunnel: "A", cover: "row-cover-30", state: "nights" }] } });
});
it("keep", () => { show("keep", { ...frostyFarm(), keep: [{ kind: "cover", tunnel: "A", setting: [], from: null, to: null }] }); });
it("order", () => { show("order", frostyFarm({ products: [product("arugula", only("arugula")), product("spinach", only("spinach"), { orders: [{ market: "friday", weight: kilogram(4), short: 7 }] })] })); });
