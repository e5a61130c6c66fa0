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

/**
 * Settings a tunnel can have: what lies now, bare, and each cover at hand alone; over a net where one is required.
 * A net that nothing requires is never put on to warm a bed. The first is what lies now.
 *
 * @param covers - Ids of covers a piece is at hand for.
 */
export function optionsOf(
  farm: Farm,
  tunnel: Tunnel,
  now: Setting,
  covers: readonly string[],
): readonly Setting[] {
  const netRequired = farm.successions.some(
    (succession) => succession.tunnel === tunnel.id && succession.net,
  );
  const isNet = (id: string): boolean => farm.covers.get(id)?.kind === "net";
  const net =
    now.find(({ cover }) => isNet(cover)) ??
    covers.filter(isNet).map((cover): Layer => ({ cover, state: "on" }))[0];
  const base = netRequired && net !== undefined ? [net] : [];
  const single = tunnel.hoops === null ? [] : covers.flatMap((id) => statesOf(farm.covers.get(id)!));
  const settings = [
    now,
    settingOf(base),
    ...single.filter(({ cover }) => !isNet(cover)).map((layer) => settingOf([...base, layer])),
  ];
  return [...new Map(settings.map((setting) => [settingKey(setting), setting])).values()];
}
