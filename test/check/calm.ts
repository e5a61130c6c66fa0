import type { Answer } from "./answer.ts";
import { near } from "./near.ts";

/**
 * What a plan pays for differing from the sheet given out: nothing without one, else the price of each instruction told as
 * changed. That sheet is not in the answer: of changing nothing, and of a plan without one of its changes, only whole prices can
 * be asked for.
 */
export function calmFaults(answer: Answer): readonly string[] {
  const { together, tunnels, changedSince: since } = answer;
  const price: number = since?.priceOfChange ?? 0;
  const paid = (what: string, told: number, changed: number): readonly string[] =>
    near(-price * changed, told) ? [] : [`${what} calm: ${told} told, ${-price * changed} recomputed`];
  const whole = (what: string, told: number): readonly string[] =>
    paid(what, told, price === 0 ? 0 : Math.max(0, Math.round(-told / price)));
  const changedOn = (id: string): number =>
    since === null ? 0 : since.changed.filter(({ tunnel }: Answer) => tunnel === id).length;
  const unchanged: number = tunnels.reduce(
    (all: number, { partsUnchanged }: Answer) => all + partsUnchanged.calm,
    0,
  );
  return [
    ...paid("planned", together.parts.calm, since === null ? 0 : since.changed.length),
    ...(near(unchanged, together.partsUnchanged.calm) ? [] : ["unchanged calm: not the tunnels' sum"]),
    ...tunnels.flatMap((tunnel: Answer) => [
      ...paid(`planned ${tunnel.tunnel}`, tunnel.parts.calm, changedOn(tunnel.tunnel)),
      ...whole(`unchanged ${tunnel.tunnel}`, tunnel.partsUnchanged.calm),
      ...tunnel.changes.flatMap(({ walk, gain }: Answer) =>
        whole(`${tunnel.tunnel} without its change at walk ${walk}`, tunnel.parts.calm - gain.calm),
      ),
    ]),
  ];
}
