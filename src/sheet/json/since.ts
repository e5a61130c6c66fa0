import type { SinceIssued } from "../../decide/index.ts";
import { type Farm, settingKey } from "../../farm/index.ts";
import { type Json, time } from "./written.ts";

export const sinceJson = (farm: Farm, since: SinceIssued): Json => ({
  issued: time(farm, since.on),
  priceOfChange: since.price,
  changed: since.changed.map(({ walk, tunnel, was, is, decidedBy }) => ({
    walk: walk.index,
    tunnel: tunnel.id,
    was: { from: settingKey(was.from), to: settingKey(was.to) },
    is: { from: settingKey(is.from), to: settingKey(is.to) },
    decidedBy,
  })),
  notNoted: since.unnoted.map(({ walk, tunnel, cover, state }) => ({
    at: time(farm, walk.at),
    tunnel: tunnel.id,
    cover,
    state,
  })),
});
