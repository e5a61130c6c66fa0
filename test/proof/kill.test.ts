import { afterAll, beforeAll, expect, test } from "vitest";
import { withBundle } from "./bundle.mjs";
import { begin, end, killedAt, next, SCENARIOS, snapshot, undisturbed } from "./kills.ts";

let child = "";
let close: () => void;
let closed: Promise<void>;

beforeAll(async () => {
  await new Promise<void>((opened) => {
    closed = withBundle("killChild", (outfile) => {
      child = outfile;
      opened();
      return new Promise<void>((done) => {
        close = done;
      });
    });
  });
});

afterAll(async () => {
  close();
  await closed;
});

/** How many steps from the end of a run its last kill lies: from the list of what is written being in place to the release. */
const LATE = [8, 16];

test.each([SCENARIOS[1]!, SCENARIOS[3]!])(
  "$name, killed and run again, leaves the folder of an undisturbed run",
  async ({ before, line }) => {
    const expected = await undisturbed(before, [line]);
    const whole = await begin(before);
    const ended = await killedAt(child, whole, line, null);
    expect(snapshot(whole)).toBe(expected);
    end(whole);
    for (const late of LATE) {
      const dir = await begin(before);
      expect(await killedAt(child, dir, line, ended!.steps - late)).toBeNull();
      expect(await next(dir, line)).toBeLessThan(5000);
      expect(snapshot(dir)).toBe(expected);
      end(dir);
    }
  },
);
