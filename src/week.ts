import {
  bestStrip,
  changesOf,
  cropAirOf,
  demandedBy,
  leafSurprises,
  ledgerOf,
  nightsOf,
  type Outcome,
  outlookOf,
  type Planned,
  productCases,
  productsAt,
  promisedOf,
  type Scene,
  sceneOf,
  shareCovers,
  standing,
  stripPlaces,
  type TunnelPlan,
  tunnelNow,
  type WeekInput,
  warningsOf,
} from "./decide/index.ts";

export type { WeekInput } from "./decide/index.ts";

/** The main job: log, forecast and farm in; the cover schedule of the days ahead out. */
export function week(input: WeekInput): Outcome {
  const { scene, madeFrom, problems } = sceneOf(input);
  const { farm, settings, on, days } = input;
  const empty = {
    walks: [],
    weather: [],
    warnings: [],
    tunnels: [],
    air: null,
    strip: null,
    successions: [],
    picks: [],
    products: [],
    promises: [],
  };
  if (scene === null) return { farm, settings, on, days, ...empty, madeFrom, problems };

  const plans = planAll(scene);
  const successions = plans.flatMap((plan) => plan.standings.map((each) => outlookOf(scene, plan, each)));
  const order = new Map(farm.successions.map(({ id }, i) => [id, i]));
  successions.sort((a, b) => order.get(a.succession.id)! - order.get(b.succession.id)!);
  const picks = scene.picks.filter(({ planned }) => planned);
  return {
    farm,
    settings,
    on,
    days,
    walks: scene.horizon.walks,
    weather: scene.weather.days.filter(({ lead }) => lead >= -1 && lead < days),
    warnings: warningsOf(scene, plans),
    tunnels: plans.map((plan) => tunnelPlan(scene, plan)),
    air: cropAirOf(scene, plans),
    strip: bestStrip(stripPlaces(scene, plans)),
    successions,
    picks,
    products: productsAt(farm, picks, successions),
    promises: productCases(scene, plans, successions).map(promisedOf),
    madeFrom,
    problems: [...problems, ...leafSurprises(plans.flatMap(({ standings }) => standings))],
  };
}

/** Where everything stands, and the best covers for all of it. */
export function planAll(scene: Scene): readonly Planned[] {
  const { farm } = scene;
  const tunnels = farm.tunnels.map((tunnel) => {
    const at = tunnelNow(scene, tunnel);
    const sown = farm.successions.filter((succession) => succession.tunnel === tunnel.id);
    return {
      at,
      standings: sown.map((succession) => standing(scene, succession, at)),
    };
  });
  return shareCovers(scene, tunnels);
}

function tunnelPlan(scene: Scene, plan: Planned): TunnelPlan {
  const { at, problem, choice, chosen, unchanged, proved } = plan;
  return {
    tunnel: at.tunnel,
    now: at.now,
    settings: problem.settings,
    choice,
    changes: changesOf(plan, scene.horizon),
    worth: chosen.worth,
    worthUnchanged: unchanged.worth,
    parts: chosen.parts,
    partsUnchanged: unchanged.parts,
    gaveWay: [...new Set(chosen.breaches)],
    unchangedBreaks: [...new Set(unchanged.breaches)],
    demandedBy: demandedBy(plan),
    proved,
    ledger: ledgerOf(plan),
    nights: nightsOf(scene, plan),
  };
}
