import type { Tunnel } from "./farm.ts";

/** The tunnels a name stands for: the one with this id, or all sections of the long one with it. */
export const tunnelsCalled = <Any extends Pick<Tunnel, "id" | "section">>(
  tunnels: readonly Any[],
  id: string,
): readonly Any[] => tunnels.filter((tunnel) => tunnel.id === id || tunnel.section?.of === id);

/** Every id a tunnel may be named by, those of long ones before those of their sections. */
export const tunnelIds = (tunnels: readonly Pick<Tunnel, "id" | "section">[]): readonly string[] => [
  ...new Set(tunnels.flatMap(({ id, section }) => (section === undefined ? [id] : [section.of, id]))),
];
