import { probit } from "simple-statistics";

/**
 * Recomputes sizes, worth and the parts of worth from the printed JSON alone, sharing no code with the program:
 * written from the equations in DEVELOPERS.md.
 */

// biome-ignore lint/suspicious/noExplicitAny: the answer is read as any reader of JSON would.
type Answer = any;

export interface Recomputed {
  readonly timing: number;
  readonly stress: number;
  readonly damage: number;
  readonly labour: number;
  readonly sizes: readonly { readonly succession: string; readonly at: string; readonly cm: number }[];
}

const NODES = 15;

/** Worth, parts and sizes of one tunnel under a schedule of settings' keys. */
export function recompute(answer: Answer, tunnel: string, schedule: readonly string[]): Recomputed {
  const plan = answer.tunnels.find((each: Answer) => each.tunnel === tunnel);
  const total = { timing: 0, stress: 0, damage: 0 };
  const sizes: { succession: string; at: string; cm: number }[] = [];
  for (const succession of answer.successions) {
    if (succession.tunnel !== tunnel || succession.basis === null) continue;
    const crop = answer.crops.find((each: Answer) => each.crop === succession.crop);
    const best = { worth: 0, timing: 0, stress: 0, damage: 0 };
    for (const outlet of succession.basis.outlets) {
      const sums = {
        pace: succession.basis.thermalTimeCd,
        light: succession.basis.lightMol,
        heat: 0,
        safe: 0,
      };
      for (let walk = 0; walk < outlet.walk; walk++) {
        const entry = plan.ledger.find(
          (each: Answer) => each.walk === walk && each.setting === schedule[walk],
        );
        const own = entry.successions.find((each: Answer) => each.succession === succession.succession);
        sums.pace += own.paceCd;
        sums.light += own.lightMol;
        sums.heat += own.heatCh;
        sums.safe += own.safe;
      }
      const lying = schedule[Math.min(outlet.walk, schedule.length - 1)];
      const last = outlet.added.find((each: Answer) => each.setting === lying);
      sums.pace += last.paceCd;
      sums.light += last.lightMol;
      sums.heat += last.heatCh;
      sums.safe += last.safe;
      if (outlet.kind === "pick") {
        const cm = lengthOf(succession.basis, sums.pace / Math.exp(succession.basis.shift));
        sizes.push({ succession: succession.succession, at: outlet.at.instant, cm });
      }
      const sold =
        expected(answer.settings, crop, succession.basis, outlet.spread, sums.pace) *
        outlet.share *
        light(answer.settings, crop, sums.light / outlet.daysD);
      const stress = -sold * Math.min(answer.settings.stressMost, answer.settings.heatStress * sums.heat);
      const timing = sold - (succession.basis.cuttingMin * wageOf(answer)) / 60;
      const kept = timing + stress;
      const worth = kept * Math.exp(sums.safe);
      if (worth > best.worth) Object.assign(best, { worth, timing, stress, damage: worth - kept });
    }
    total.timing += best.timing;
    total.stress += best.stress;
    total.damage += best.damage;
  }
  return { ...total, labour: labour(answer, plan, schedule), sizes };
}

function lengthOf({ curve }: Answer, thermalTime: number): number {
  return (
    curve.startCm +
    (curve.endCm - curve.startCm) / (1 + Math.exp(-curve.ratePerCd * (thermalTime - curve.middleCd)))
  );
}

const light = (settings: Answer, crop: Answer, daily: number): number =>
  Math.min(1, daily / settings.fullLight) ** crop.lightOnWeight;

/** Price share times weight, over equally likely ratios of thermal time to requirement. */
function expected(
  settings: Answer,
  crop: Answer,
  basis: Answer,
  spread: number,
  thermalTime: number,
): number {
  const likeliest = lengthOf(basis, thermalTime / Math.exp(basis.shift));
  if (likeliest <= crop.smallestCm * settings.nothingBelow) return 0;
  let sum = 0;
  for (let k = 0; k < NODES; k++) {
    const requirement = Math.exp(basis.shift + spread * probit((k + 0.5) / NODES));
    const length = lengthOf(basis, thermalTime / requirement);
    const middle = (crop.smallestCm + crop.largestCm) / 2;
    const heavy = length > crop.largestCm ? 1 : (length / middle) ** settings.weightExponent;
    sum += price(settings, crop, length) * heavy;
  }
  return (basis.whole * sum) / NODES;
}

function price(settings: Answer, crop: Answer, length: number): number {
  if (length > crop.largestCm * settings.braisingMost) return 0;
  if (length > crop.largestCm) return settings.shareBraising;
  if (length >= crop.smallestCm) return 1;
  const none = crop.smallestCm * settings.nothingBelow;
  return length <= none ? 0 : (settings.shareJustBelow * (length - none)) / (crop.smallestCm - none);
}

/** Wages for every cloth put on, taken off or lifted at every walk, a rhythm's own included. */
function labour(answer: Answer, plan: Answer, schedule: readonly string[]): number {
  const layersOf = (key: string, part: string): Answer[] =>
    plan.settings
      .find((each: Answer) => each.key === key)
      .layers.filter((layer: Answer) => layer.state !== "nights" || part === "evening");
  let minutes = 0;
  for (const walk of answer.walks) {
    const other = walk.part === "morning" ? "evening" : "morning";
    const before = layersOf(walk.walk === 0 ? plan.now : schedule[walk.walk - 1]!, other);
    const after = layersOf(schedule[walk.walk]!, walk.part);
    const cost = (cover: string): Answer =>
      answer.covers.find((each: Answer) => each.cover === cover).minutes;
    for (const layer of after) {
      const had = before.find(({ cover }: Answer) => cover === layer.cover);
      if (had === undefined) minutes += cost(layer.cover).onMin;
      else if ((had.state === "vented") !== (layer.state === "vented")) minutes += cost(layer.cover).ventMin;
    }
    for (const layer of before) {
      if (!after.some(({ cover }: Answer) => cover === layer.cover)) minutes += cost(layer.cover).offMin;
    }
  }
  return (-minutes * (plan.lengthM / 30.48) * answer.farm.labour.pace * wageOf(answer)) / 60;
}

const wageOf = (answer: Answer): number =>
  answer.units.worth === "kg" ? answer.settings.wage / answer.settings.price : answer.farm.labour.wagePerHour;
