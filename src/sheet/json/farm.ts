import { type Counted, type Cover, type Crop, CURVES, type Farm, type Piece } from "../../farm/index.ts";
import type { Json } from "./written.ts";

const pieceJson = (piece: Piece): Json => ({
  piece: piece.id,
  cover: piece.cover,
  lengthM: piece.length,
  count: piece.count,
  spans: piece.spans,
  liesOn: piece.liesOn,
});

export const countedJson = (counted: Counted): Json => ({
  sumCd: counted.sum,
  method: counted.method,
  baseC: counted.base,
  upperC: counted.upper,
  cutOff: counted.cutOff,
  from: counted.from,
  toCm: counted.to,
  steadyC: counted.at === "here" ? null : counted.at,
});

export const cropJson = (crop: Crop): Json => ({
  crop: crop.id,
  name: crop.name,
  emergence: {
    baseC: crop.emergence.base,
    sumCd: crop.emergence.sum,
    tooWarmC: crop.emergence.tooWarm,
  },
  growth: {
    baseC: crop.growth.base,
    optimumLowC: crop.growth.optimumLow,
    optimumHighC: crop.growth.optimumHigh,
    ceilingC: crop.growth.ceiling,
    form: crop.growth.form ?? "trapezoid",
  },
  requirementCd: crop.requirement,
  counted: crop.counted === undefined ? null : countedJson(crop.counted),
  requirementSpread: crop.requirementSpread,
  requirementStanding: crop.requirementStanding,
  lightOnPaceMJPerM2PerCd: crop.lightOnPace,
  lightOnWeight: crop.lightOnWeight,
  smallestCm: crop.smallest,
  largestCm: crop.largest,
  yieldKgPerM: crop.yield,
  unfitC: crop.unfit,
  killC: crop.kill,
  killSoftC: crop.killSoft,
  qualityLimitC: crop.qualityLimit,
  lightFloorMol: crop.lightFloor,
  regrowth: crop.regrowth,
  cuts: crop.cuts,
  storageD: crop.storage,
  boltingDayH: crop.boltingDay,
});

export const coverJson = (cover: Cover): Json => ({
  cover: cover.id,
  name: cover.name,
  kind: cover.kind,
  light: cover.light,
  day: { sun: cover.day.sun, still: cover.day.still, windy: cover.day.windy },
  night: { clearC: cover.night.clear, cloudyC: cover.night.cloudy },
  frostCreditC: cover.frostCredit,
  minutes: { onMin: cover.minutes.on, offMin: cover.minutes.off, ventMin: cover.minutes.vent },
});

export const farmJson = (farm: Farm): Json => ({
  name: farm.name,
  currency: farm.currency,
  unitsShown: farm.units,
  place: {
    latitude: farm.place.latitude,
    longitude: farm.place.longitude,
    elevationM: farm.place.elevation,
    zone: farm.place.zone,
    setting: farm.place.setting,
    curve: farm.place.curve ?? CURVES[0],
  },
  walks: { morningH: farm.walks.morning, eveningH: farm.walks.evening },
  markets: farm.markets.map(({ id, name, weekday, picks }) => ({
    market: id,
    name,
    weekday,
    picks: picks.map(({ daysBefore, hour }) => ({ daysBefore, hourH: hour })),
  })),
  products: farm.products.map(({ id, name, parts, price, stall, orders }) => ({
    product: id,
    name,
    parts: parts.map(({ crop, share, swaps }) => ({ crop, share, swaps })),
    pricePerKg: price,
    stallKg: stall,
    orders: orders.map(({ market, weight, short }) => ({ market, weightKg: weight, shortPerKg: short })),
  })),
  pieces: farm.pieces.map(pieceJson),
  sideBySide: farm.sideBySide,
  labour: {
    wagePerHour: farm.labour.wage,
    pace: farm.labour.pace,
    cuttingMinPerM: farm.labour.cutting,
    walkMin: farm.labour.walk,
    pickingMin: farm.labour.picking,
  },
  handling: { washingKg: farm.handling.washing, coolerKg: farm.handling.cooler },
  limits: {
    changesPerWeek: farm.limits.changesPerWeek,
    layers: farm.limits.layers,
    windMps: farm.limits.wind,
    dimD: farm.limits.dimDays,
    caution: farm.limits.caution,
  },
});
