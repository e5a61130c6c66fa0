import type { Alternative, AtPick, Basis, Fate, Pick, SuccessionOutlook } from "../../decide/index.ts";
import { type Farm, settingKey } from "../../farm/index.ts";
import { cropJson } from "./farm.ts";
import { type Json, time, timeOrNull } from "./written.ts";

export const rangeCm = ({ low, middle, high }: AtPick["planned"]): Json => ({
  lowCm: low,
  middleCm: middle,
  highCm: high,
});

export const pickJson = (farm: Farm, pick: Pick): Json => ({
  market: pick.market.id,
  marketDate: pick.marketDate,
  at: time(farm, pick.at),
  date: pick.date,
  planned: pick.planned,
});

export function fateJson(farm: Farm, fate: Fate): Json {
  switch (fate.kind) {
    case "none":
      return { kind: "none" };
    case "pick":
      return { kind: "pick", as: fate.as, pick: pickJson(farm, fate.pick) };
    case "hold":
      return {
        kind: "hold",
        as: fate.as,
        cut: time(farm, fate.cut),
        daysD: fate.days,
        pick: pickJson(farm, fate.pick),
      };
  }
}

const atPickJson = (farm: Farm, at: AtPick): Json => ({
  pick: pickJson(farm, at.pick),
  right: at.right,
  unchanged: rangeCm(at.unchanged),
  planned: rangeCm(at.planned),
  medianUnchangedCm: at.medianUnchanged,
  medianCm: at.median,
  oddsUnchanged: at.oddsUnchanged,
  odds: at.odds,
  weightKg: at.weight,
});

const basisJson = (farm: Farm, basis: Basis): Json => ({
  shift: basis.shift,
  thermalTimeCd: basis.thermalTime,
  lightMol: basis.light,
  unfitC: basis.unfit,
  massKg: basis.mass,
  price: basis.price,
  cuttingMin: basis.cutting,
  regrown: basis.regrown,
  curve: {
    startCm: basis.curve.start,
    endCm: basis.curve.end,
    ratePerCd: basis.curve.rate,
    middleCd: basis.curve.middle,
  },
  outlets: basis.outlets.map((outlet) => ({
    kind: outlet.kind,
    at: time(farm, outlet.at),
    market: outlet.pick.market.id,
    marketDate: outlet.pick.marketDate,
    walk: outlet.interval,
    kept: outlet.kept,
    share: outlet.share,
    daysD: outlet.days,
    spread: outlet.spread,
    moved: outlet.moved,
    rainMm: outlet.rain,
    wetBy: outlet.night,
    added: outlet.added.map(({ setting, pace, light, heat, safe, keeps }) => ({
      setting,
      paceCd: pace,
      lightMol: light,
      heatCh: heat,
      safe,
      keeps,
    })),
  })),
  cut: basis.cut,
  cutUnchanged: basis.cutUnchanged,
});

/** `forced`: planned anew with `cut` as `--keep` has it, null: not cut; `worth` is then against the plan, else the bed's own. */
function alternativeJson(farm: Farm, way: Alternative): Json {
  const { forced, worth } = way;
  const fate = fateJson(farm, way.fate);
  if (!forced) return { forced, fate, worth };
  const { kept, planned, off } = way;
  return {
    forced,
    fate,
    cut: kept.kind === "uncut" ? null : { date: kept.date, part: kept.part },
    planned,
    worth,
    off,
  };
}

export const successionJson = (farm: Farm, outlook: SuccessionOutlook): Json => {
  const { succession, miss } = outlook;
  return {
    succession: succession.id,
    crop: succession.crop,
    tunnel: succession.tunnel,
    fromM: succession.from,
    toM: succession.to,
    sown: succession.sown,
    market: succession.market,
    cuts: succession.cuts,
    net: succession.net,
    stage: outlook.stage,
    emergence:
      outlook.emergence === null
        ? null
        : { at: time(farm, outlook.emergence.at), seen: outlook.emergence.seen },
    sizeNow: outlook.sizeNow === null ? null : rangeCm(outlook.sizeNow),
    thermalTimeCd: outlook.thermalTime,
    requirementCd: outlook.requirement,
    spread: outlook.spread,
    measured: outlook.measured,
    guessed: outlook.guessed,
    paceNowCdPerDay: outlook.paceNow,
    windowD: outlook.windowDays,
    atPicks: outlook.atPicks.map((at) => atPickJson(farm, at)),
    reach: {
      ...outlook.reach,
      spread: {
        unchanged: { ...outlook.reach.spread.unchanged },
        planned: { ...outlook.reach.spread.planned },
      },
    },
    fate: fateJson(farm, outlook.fate),
    atFate:
      outlook.atFate === null
        ? null
        : {
            size: rangeCm(outlook.atFate.size),
            odds: outlook.atFate.odds,
            weightKg: outlook.atFate.weight,
            inSizeKg: outlook.atFate.inSize,
            cuttingMin: outlook.atFate.minutes,
            frozen: outlook.atFate.frozen,
            thaw: timeOrNull(farm, outlook.atFate.thaw),
            wet: outlook.atFate.wet,
          },
    fateUnchanged: fateJson(farm, outlook.fateUnchanged),
    worth: outlook.worth,
    worthUnchanged: outlook.worthUnchanged,
    miss:
      miss === null
        ? null
        : {
            pick: pickJson(farm, miss.pick),
            why: miss.why,
            coversCanHelp: miss.coversCanHelp,
            helps: miss.helps === null ? null : settingKey(miss.helps),
            alternatives: miss.alternatives.map((way) => alternativeJson(farm, way)),
            again: miss.again,
            freed: miss.freed === null ? null : { daysD: miss.freed.days, worth: miss.freed.worth },
          },
    basis: outlook.basis === null ? null : basisJson(farm, outlook.basis),
  };
};

/** Every crop that is sown, not hardened by any cover: how a bed stands is said with it. */
export const cropsOf = ({ crops }: Farm, outlooks: readonly SuccessionOutlook[]): Json =>
  [...new Map(outlooks.map(({ crop }) => [crop.id, crop])).values()].map((crop) =>
    cropJson({ ...crop, unfit: crops.get(crop.id)!.unfit }),
  );
