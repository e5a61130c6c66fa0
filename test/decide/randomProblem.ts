import type { TunnelProblem } from "../../src/decide/index.ts";
import { randomFarm, SMALL } from "./randomFarm.ts";

/** A tunnel's problem with random growth, light, heat, danger, limits and costs; small enough to try every schedule. */
export const randomProblem = (seed: number): TunnelProblem =>
  randomFarm(seed, { ...SMALL, tunnels: [1, 1], walks: [3, 6], lays: [2, 4], successions: [1, 3] })
    .tunnels[0]!.problem;
