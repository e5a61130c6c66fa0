import fc from "fast-check";
import { expect, test } from "vitest";
import { digest, spliced, spliceOf } from "../../src/cli/splice.ts";

const file = fc.option(fc.string({ maxLength: 60, unit: fc.constantFrom("a", "b", "é", "\n", ",") }), {
  freq: 6,
});
const bytes = (text: string | null): Buffer | null => (text === null ? null : Buffer.from(text));

test("a file becomes again what it was, byte for byte, and only from what it was left as", () => {
  fc.assert(
    fc.property(file, file, fc.string(), (before, after, more) => {
      const splice = spliceOf("x.csv", bytes(before), bytes(after));
      expect(spliced(bytes(after), splice)).toEqual(bytes(before));
      const changed = Buffer.from(`${after ?? ""}${more}!`);
      expect(digest(changed)).not.toBe(splice.after);
    }),
    { seed: 1, numRuns: 500 },
  );
});

test("only what differed is remembered", () => {
  const before = Buffer.from("hour,sum\n1,10\n2,20\n3,30\n");
  const after = Buffer.from("hour,sum\n1,10\n2,25\n3,30\n4,40\n");
  const { stood, from, length } = spliceOf("x.csv", before, after);
  expect([Buffer.from(stood, "base64").toString(), from, length]).toEqual(["0\n3,3", 17, 10]);
});
