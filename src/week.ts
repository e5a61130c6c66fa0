import {
  bestStrip,
  type Courses,
  changesOf,
  coursesOf,
  cropAirOf,
  eachPart,
  type FarmPlan,
  gaveWay,
  type Joint,
  keptUnmet,
  leafSurprises,
  ledgerOf,
  nightsOf,
  type Outcome,
  outlookOf,
  type Parts,
  type Planned,
  planFarm,
  productCases,
  productsAt,
  promisedOf,
  type Scene,
  type Solver,
  sceneOf,
  sinceIssued,
  standing,
  stripPlaces,
  type TogetherPlan,
  type TunnelPlan,
  takenIn,
  tunnelNow,
  type WeekInput,
  warningsOf,
  whatIfs,
  withWaysOut,
} from "./decide/index.ts";

export type { WeekInput } from "./decide/index.ts";

/**
 * The main job: log, forecast and farm in; the cover schedule of the days ahead out.
 *
 * @param solver - Chooses where tunnels share cloth, hands and markets.
 */
export function week(input: WeekInput, solver: Solver): Outcome {
  const { scene, madeFrom, problems } = sceneOf(input);
  const { farm, settings, on, days } = input;
  const empty = {
    walks: [],
    weathers: [],
    weather: [],
    warnings: [],
    tunnels: [],
    together: null,
    air: null,
    successions: [],
    picks: [],
    products: [],
    keptCold: [],
    promises: [],
    strip: null,
    since: null,
    whatIf: null,
  };
  if (scene === null) return { farm, settings, on, days, ...empty, madeFrom, problems };

  const plan = planAll(scene, solver);
  const { plans } = plan;
  const courses = coursesOf(scene);
  const outlooks = plans.flatMap((each) => each.standings.map((bed) => outlookOf(scene, each, bed, courses)));
  const tunnels = plans.map((each, t) => tunnelPlan(scene, each, t, plan.joint, courses));
  const order = new Map(farm.successions.map(({ id }, i) => [id, i]));
  outlooks.sort((a, b) => order.get(a.succession.id)! - order.get(b.succession.id)!);
  const asked = input.whatIf === true;
  const successions = asked ? withWaysOut(scene, plan, outlooks, solver) : outlooks;
  const picks = scene.picks.filter(({ planned }) => planned);
  return {
    farm,
    settings,
    on,
    days,
    walks: scene.horizon.walks,
    weathers: scene.weathers.shares,
    weather: scene.weather.days.filter(({ lead }) => lead >= -1 && lead < days),
    warnings: warningsOf(scene, plans),
    tunnels,
    together: togetherPlan(plan, tunnels),
    air: cropAirOf(scene, plans),
    successions,
    picks,
    products: productsAt(farm, picks, successions, scene.keptCold),
    keptCold: scene.keptCold,
    promises: productCases(scene, plans, successions).map(promisedOf),
    strip: bestStrip(stripPlaces(scene, plans)),
    whatIf: asked ? whatIfs(scene, plan, solver) : null,
    madeFrom,
    since: sinceIssued(scene, plan, successions),
    problems: [
      ...problems,
      ...keptUnmet(scene, plans),
      ...leafSurprises(plans.flatMap(({ standings }) => standings)),
    ],
  };
}

/** Where everything stands, and the best covers for all of it. */
export function planAll(scene: Scene, solver: Solver): FarmPlan {
  const { farm } = scene;
  const tunnels = farm.tunnels.map((tunnel) => {
    const at = tunnelNow(scene, tunnel);
    const sown = farm.successions.filter((succession) => succession.tunnel === tunnel.id);
    return {
      at,
      standings: sown.map((succession) => standing(scene, succession, at)),
    };
  });
  return planFarm(scene, tunnels, solver);
}

function tunnelPlan(scene: Scene, plan: Planned, tunnel: number, joint: Joint, courses: Courses): TunnelPlan {
  const { at, problem, choice, chosen, unchanged } = plan;
  return {
    tunnel: at.tunnel,
    now: at.now,
    settings: problem.settings,
    choice,
    taken: at.taken,
    takenIn: choice.map((_, i) => takenIn(plan, i)),
    undated: problem.undated.map(({ standing: { succession, crop }, worth }) => ({
      id: succession.id,
      worth,
      unfit: crop.unfit,
    })),
    changes: changesOf(plan, tunnel, joint, scene, courses),
    worth: chosen.worth,
    worthUnchanged: unchanged.worth,
    parts: chosen.parts,
    partsUnchanged: unchanged.parts,
    gaveWay: gaveWay(plan, scene.farm.limits.changesPerWeek),
    unchangedBreaks: [...new Set(unchanged.breaches)],
    ledger: ledgerOf(plan),
    nights: nightsOf(scene, plan),
  };
}

function togetherPlan({ plans, joint, unchanged }: FarmPlan, tunnels: readonly TunnelPlan[]): TogetherPlan {
  const partsOf = (of: "chosen" | "unchanged", { orders }: Joint): Parts =>
    eachPart((part) =>
      part === "orders" ? orders : plans.reduce((total, plan) => total + plan[of].parts[part], 0),
    );
  const changes = tunnels.flatMap((tunnel) => tunnel.changes);
  const share = (by: keyof Parts | "limit"): number =>
    changes.length === 0 ? 0 : changes.filter(({ decidedBy }) => decidedBy === by).length / changes.length;
  return {
    worth: joint.worth,
    worthUnchanged: unchanged.worth,
    parts: partsOf("chosen", joint),
    partsUnchanged: partsOf("unchanged", unchanged),
    bound: joint.bound,
    proved: joint.proved,
    weighed: joint.weighed.length,
    overrun: joint.overrun,
    overrunUnchanged: unchanged.overrun,
    decidedBy: { ...eachPart(share), limit: share("limit") },
  };
}
