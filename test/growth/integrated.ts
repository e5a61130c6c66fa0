import type { CutOff } from "../../src/farm/index.ts";
import type { DayShape, Thresholds } from "../../src/growth/index.ts";
import type { LowHigh } from "../../src/weather/index.ts";

/** Temperature on the way from one extreme to the other, 0 to 1 of it. [°C] */
const along = ({ low, high }: LowHigh, shape: DayShape, time: number): number =>
  low + (high - low) * (shape === "sine" ? (1 - Math.cos(Math.PI * time)) / 2 : time);

/** What one instant earns. [°C·d/d] */
function rateAt(temperature: number, { lower, upper }: Thresholds, cutOff: CutOff): number {
  const earned = Math.max(0, temperature - lower);
  if (temperature <= upper || cutOff === "none") return earned;
  return { horizontal: upper - lower, intermediate: 2 * upper - lower - temperature, vertical: 0 }[cutOff];
}

/** Where the way crosses a temperature, by bisection; 0 or 1 when it does not. */
function crossing(day: LowHigh, shape: DayShape, temperature: number): number {
  const rises = day.high >= day.low;
  let [before, after] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (before + after) / 2;
    if (along(day, shape, middle) < temperature === rises) before = middle;
    else after = middle;
  }
  return (before + after) / 2;
}

/** Nodes and weights of Gauss and Legendre on 0 to 1, the nodes by Newton's method. */
function gauss(count: number): readonly (readonly [node: number, weight: number])[] {
  return Array.from({ length: count }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    for (let step = 0; ; step++) {
      let [before, here] = [0, 1];
      for (let n = 1; n <= count; n++)
        [before, here] = [here, ((2 * n - 1) * x * here - (n - 1) * before) / n];
      const slope = (count * (x * here - before)) / (x * x - 1);
      x -= here / slope;
      if (step === 8) return [(1 + x) / 2, 1 / ((1 - x * x) * slope * slope)] as const;
    }
  });
}

const NODES = gauss(24);

/**
 * Degree-days from one extreme to the other by Gauss and Legendre between the crossings of the thresholds. Shares nothing
 * with the closed form. [°C·d]
 */
export function integrated(day: LowHigh, thresholds: Thresholds, shape: DayShape, cutOff: CutOff): number {
  const crossings = [thresholds.lower, thresholds.upper].map((threshold) => crossing(day, shape, threshold));
  const edges = [0, ...crossings.sort((a, b) => a - b), 1];
  return edges.slice(0, -1).reduce((total, from, i) => {
    const width = edges[i + 1]! - from;
    return NODES.reduce(
      (sum, [node, weight]) =>
        sum + weight * width * rateAt(along(day, shape, from + width * node), thresholds, cutOff),
      total,
    );
  }, 0);
}
