import type { PlannedCut, SinceIssued } from "../../decide/index.ts";
import { type Farm, settingKey } from "../../farm/index.ts";
import { type Json, time } from "./written.ts";

const cutJson = (farm: Farm, cut: PlannedCut | null): Json =>
  cut === null ? null : { at: time(farm, cut.at), as: cut.as };

export const sinceJson = (farm: Farm, since: SinceIssued): Json => ({
  issued: time(farm, since.on),
  priceOfChange: since.price,
  changed: since.changed.map(({ walk, tunnel, was, is, decidedBy, limit }) => ({
    walk: walk.index,
    tunnel: tunnel.id,
    was: { from: settingKey(was.from), to: settingKey(was.to) },
    is: { from: settingKey(is.from), to: settingKey(is.to) },
    decidedBy,
    limit,
  })),
  cuts: since.cuts.map(({ succession, was, is }) => ({
    succession,
    was: cutJson(farm, was),
    is: cutJson(farm, is),
  })),
  notNoted: since.unnoted.map(({ walk, tunnel, cover, state }) => ({
    at: time(farm, walk.at),
    tunnel: tunnel.id,
    cover,
    state,
  })),
});
