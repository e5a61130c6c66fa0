import {
  type Cover,
  type Farm,
  type Layer,
  type Setting,
  settingKey,
  settingOf,
  type Tunnel,
} from "../farm/index.ts";

/** Every way one cover may lie. Shade costs nothing by night, so it has no rhythm. */
function statesOf(cover: Cover): readonly Layer[] {
  const states =
    cover.kind === "rowCover" || cover.kind === "film"
      ? (["on", "vented", "nights"] as const)
      : (["on"] as const);
  return states.map((state) => ({ cover: cover.id, state }));
}

/** Two sheets over each other lie and are taken off together. */
function pairsOf(covers: readonly Cover[]): readonly (readonly Layer[])[] {
  const warm = covers.filter(({ kind }) => kind === "rowCover" || kind === "film");
  return warm.flatMap((one, i) =>
    warm.slice(i + 1).flatMap((other) =>
      (["on", "nights"] as const).map((state) => [
        { cover: one.id, state },
        { cover: other.id, state },
      ]),
    ),
  );
}

/**
 * Settings a tunnel can have: what lies now, bare, and each cover at hand alone or, where the farm lays two, two warm ones
 * over each other; over a net where one is required. A net that nothing requires is never put on to warm a bed. The first is
 * what lies now.
 *
 * @param owned - Ids of covers a piece is owned for.
 */
export function optionsOf(
  farm: Farm,
  tunnel: Tunnel,
  now: Setting,
  owned: readonly string[],
): readonly Setting[] {
  const netRequired = farm.successions.some(
    (succession) => succession.tunnel === tunnel.id && succession.net,
  );
  const covers = owned.map((id) => farm.covers.get(id)!);
  const isNet = ({ kind }: Cover): boolean => kind === "net";
  const net =
    now.find(({ cover }) => isNet(farm.covers.get(cover)!)) ??
    covers.filter(isNet).map(({ id }): Layer => ({ cover: id, state: "on" }))[0];
  const base = netRequired && net !== undefined ? [net] : [];
  const others = tunnel.hoops === null ? [] : covers.filter((cover) => !isNet(cover));
  const settings = [
    now,
    settingOf(base),
    ...others.flatMap(statesOf).map((layer) => settingOf([...base, layer])),
    ...(farm.limits.layers > 1 ? pairsOf(others).map((pair) => settingOf([...base, ...pair])) : []),
  ];
  return [...new Map(settings.map((setting) => [settingKey(setting), setting])).values()];
}
