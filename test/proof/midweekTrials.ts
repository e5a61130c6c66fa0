import {
  addDays,
  type Change,
  calmPrice,
  celsius,
  differs,
  type FarmPlan,
  type LocalDate,
  NOW,
  type Note,
  readIssuedSheet,
  sceneOf,
  weekJson,
} from "../../src/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { seeded } from "../decide/seeded.ts";
import { type City, mondayInput } from "../real/cities.ts";
import { gauss } from "../real/foretold.ts";
import { planAll, week } from "../week.ts";
import { weekOf } from "./promiseFarms.ts";

/** A plan made on Wednesday from scratch, and one that keeps to Monday's sheet where it can. */
export interface Midweek {
  /** Instructions that differ from the sheet, out of so many walks that a tunnel has left on it. */
  readonly scratch: number;
  readonly calm: number;
  readonly walks: number;
  /** Worth the calm plan gives up, and the price of one changed instruction. */
  readonly lost: number;
  readonly price: number;
  /** How much the calm plan may fall short of the best; 0 where it was proved best. */
  readonly open: number;
  /** Limits give way in one of the plans otherwise than in the other. */
  readonly otherLimits: boolean;
}

/** How far the forecast of Monday is off for each day ahead; standard deviation. [°C/d] judgement */
const TURNS = 1.2;
/** Share of the first days' changes that were made, and noted. judgement */
const DONE = 0.8;
const TUNNELS = 2;
const MEMBERS = 8;

/** Fewer tunnels and weathers: what is shown holds for any number, and one plan takes less time. */
function small(input: WeekInput): WeekInput {
  const { farm, settings } = input;
  const tunnels = farm.tunnels.slice(0, TUNNELS);
  const successions = farm.successions.filter(({ tunnel }) => tunnels.some(({ id }) => id === tunnel));
  return {
    ...input,
    farm: { ...farm, tunnels, successions, currency: "$" },
    settings: { ...settings, members: MEMBERS },
  };
}

/** What becomes of the forecast by Wednesday: Monday's is off by more the further ahead it looks. */
function foretoldOtherwise(input: WeekInput, normal: Iterator<number>): WeekInput {
  const off = TURNS * (normal.next().value as number);
  const days = input.forecast!.days.map((day, lead) => ({
    ...day,
    low: celsius(day.low! + off * lead),
    high: celsius(day.high! + off * lead),
  }));
  return { ...input, forecast: { ...input.forecast!, days } };
}

/** A change as it is noted when it has been made. */
const noted = ({ walk, tunnel, from, to }: Change): readonly Note[] =>
  [...new Set([...from, ...to].map(({ cover }) => cover))].map((cover) => ({
    at: walk.at,
    line: 0,
    remark: "",
    kind: "cover",
    tunnel: tunnel.id,
    cover,
    state: to.find((layer) => layer.cover === cover)?.state ?? "off",
  }));

const changedIn = (plan: FarmPlan, sheet: FarmPlan): number =>
  plan.plans.reduce((sum, { schedule }, t) => {
    const { problem } = sheet.plans[t]!;
    return sum + schedule.filter((to, i) => differs(problem, i, i === 0 ? NOW : schedule[i - 1]!, to)).length;
  }, 0);

const gravity = ({ plans, joint }: FarmPlan): string =>
  `${plans.reduce((sum, { chosen }) => sum + chosen.gravity, 0)} ${joint.overrun.join()}`;

/** Issues a sheet on a Monday of measured weather, and plans anew on the Wednesday after it. */
export function midweek(seed: number): Midweek {
  const chance = seeded(seed);
  const city: City = chance() < 0.5 ? "Seattle" : "New York";
  const year = 2012 + Math.floor(4 * chance());
  const monday = addDays(`${year}-03-05` as LocalDate, 7 * Math.floor(36 * chance()));
  const input = small(foretoldOtherwise(weekOf("random", city, monday, chance), gauss(seed)));
  const issued = week(input);
  const { sheet } = readIssuedSheet("sheets/monday.json", weekJson(issued));
  const wednesday = small(mondayInput(input.farm, city, addDays(monday, 2)));
  const made = issued.tunnels
    .flatMap(({ changes }) => changes)
    .filter(({ walk }) => walk.at < wednesday.on)
    .filter(() => chance() < DONE);
  const farm = { ...input.farm, notes: [...input.farm.notes, ...made.flatMap(noted)] };
  const { scene } = sceneOf({ ...wednesday, farm, issued: sheet! });
  const scratch = planAll({ ...scene!, issued: null });
  const calm = planAll(scene!);
  return {
    scratch: changedIn(scratch, calm),
    calm: changedIn(calm, calm),
    walks: calm.plans.reduce(
      (sum, { problem }) => sum + (problem.calm?.entered.filter((asked) => asked >= -1).length ?? 0),
      0,
    ),
    lost: scratch.joint.worth - calm.joint.worth,
    price: calmPrice(scene!),
    open: calm.joint.proved ? 0 : calm.joint.bound - calm.joint.worth,
    otherLimits: gravity(scratch) !== gravity(calm),
  };
}

/** Worth is compared after the solver's own tolerance. */
const NOTHING = 1e-5;

/** What keeps a plan from being as calm as its price asks: more was lost than the instructions saved were priced at. */
export const tooCalm = ({ lost, price, scratch, calm, open, otherLimits }: Midweek): boolean =>
  !otherLimits && lost > price * (scratch - calm) + open + NOTHING;
