// Kills runs of leafpace at random moments, at every single step of their writing, and two at once, and prints what the
// next run made of the folder.

import type { withBundle as WithBundle } from "./bundle.d.mts";
import {
  begin,
  end,
  killedAfter,
  killedAt,
  next,
  PAIRS,
  randomOf,
  SCENARIOS,
  snapshot,
  undisturbed,
} from "./kills.ts";

const MOMENTS = 200;
const TWOS = 20;
/** A next run takes no longer, a dead one's lock or not. [ms] */
const PATIENT = 5000;

const random = randomOf(1);
const pick = <Value>(of: readonly Value[]): Value => of[Math.floor(random() * of.length)]!;
let longest = 0;
let wrong = 0;

const expected = new Map<string, readonly string[]>();
/** What the folder may be: after the runs in either order. */
async function allowed(before: readonly string[], lines: readonly string[]): Promise<readonly string[]> {
  const key = [...before, ...lines].join("\n");
  const known = expected.get(key);
  if (known !== undefined) return known;
  const orders = lines.length === 1 ? [lines] : [lines, [...lines].reverse()];
  const found = await Promise.all(orders.map((order) => undisturbed(before, order)));
  expected.set(key, found);
  return found;
}

/** Runs again what was killed, and looks at the folder. */
async function healed(
  dir: string,
  before: readonly string[],
  lines: readonly string[],
  what: string,
): Promise<void> {
  for (const line of lines) longest = Math.max(longest, await next(dir, line));
  if ((await allowed(before, lines)).includes(snapshot(dir))) return;
  wrong += 1;
  process.stdout.write(`not as undisturbed: ${what}\n`);
}

async function moments(child: string): Promise<string> {
  let killed = 0;
  const spans = new Map<string, number>();
  for (let i = 0; i < MOMENTS; i++) {
    const { name, before, line } = pick(SCENARIOS);
    const dir = await begin(before);
    if (!spans.has(name)) {
      const whole = await begin(before);
      const [ended] = await killedAfter(child, whole, [line], [null]);
      spans.set(name, ended!.ms);
      end(whole);
    }
    const after = random() * spans.get(name)!;
    const [ended] = await killedAfter(child, dir, [line], [after]);
    if (ended === null) killed += 1;
    await healed(dir, before, [line], `${name}, killed after ${after.toFixed(1)} ms`);
    end(dir);
  }
  return `${MOMENTS} runs killed at random moments: ${killed} died at work, ${MOMENTS - killed} had just ended`;
}

async function everyStep(child: string): Promise<string> {
  let killed = 0;
  for (const { name, before, line } of SCENARIOS) {
    for (let at = 0; ; at++) {
      const dir = await begin(before);
      const ended = await killedAt(child, dir, line, at);
      await healed(dir, before, [line], `${name}, killed at step ${at}`);
      end(dir);
      if (ended !== null) break;
      killed += 1;
    }
  }
  return `${killed} runs killed at every step of ${SCENARIOS.length} kinds of writing`;
}

async function twos(child: string): Promise<string> {
  let killed = 0;
  for (let i = 0; i < TWOS; i++) {
    const lines = pick(PAIRS);
    const dir = await begin([]);
    const after = [random() * 150, random() < 0.5 ? null : random() * 150];
    const ended = await killedAfter(child, dir, lines, after);
    killed += ended.filter((each) => each === null).length;
    await healed(dir, [], lines, `${lines.join(" and ")}, killed after ${after.join(" and ")} ms`);
    end(dir);
  }
  return `${TWOS} times two runs at once: ${killed} of ${2 * TWOS} killed at work`;
}

const { withBundle } = (await import(new URL("./bundle.mjs", import.meta.url).href)) as {
  withBundle: typeof WithBundle;
};
await withBundle("killChild", async (child) => {
  for (const proof of [moments, everyStep, twos]) process.stdout.write(`${await proof(child)}\n`);
});
process.stdout.write(
  `${wrong} folders unlike an undisturbed run's; the longest next run took ${(longest / 1000).toFixed(1)} s, at most ${PATIENT / 1000} allowed\n`,
);
if (wrong > 0 || longest > PATIENT) process.exitCode = 1;
