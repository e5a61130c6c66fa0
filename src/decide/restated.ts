import type { Begun } from "./bound.ts";
import type { Column } from "./columns.ts";
import type { Outlet } from "./outlet.ts";
import type { SuccessionTable } from "./successionTable.ts";
import type { FarmProblem } from "./together.ts";

/** The selling day an outlet is for, and when it is cut early. */
const keyOf = ({ fate, at }: Outlet): string => {
  const { market, marketDate } = fate.pick;
  return `${market.id} ${marketDate} ${fate.kind === "hold" ? at : ""}`;
};

/** The same outlet among those of another table: of several of a day the one in the same place. */
function sameOutlet(from: SuccessionTable, to: SuccessionTable, cut: number): number {
  const none = to.mustCut ? 0 : to.outlets.length;
  const outlet = from.outlets[cut];
  if (outlet === undefined) return none;
  const key = keyOf(outlet);
  const place = from.outlets.slice(0, cut).filter((other) => keyOf(other) === key).length;
  const same = to.outlets.flatMap((other, index) => (keyOf(other) === key ? [index] : []));
  return same[place] ?? none;
}

/**
 * Schedules weighed for one problem as another has them that offers the same lays: each cut for the same selling day where that
 * is open, else left uncut, or where a cut is settled taken there.
 */
export const restated = (weighed: readonly Column[], from: FarmProblem, to: FarmProblem): readonly Begun[] =>
  weighed.map(({ tunnel, chosen: { schedule, cuts } }) => {
    const [before, after] = [from.tunnels[tunnel]!.problem, to.tunnels[tunnel]!.problem];
    return {
      tunnel,
      schedule,
      cuts: cuts.map((cut, j) => sameOutlet(before.successions[j]!, after.successions[j]!, cut)),
    };
  });
