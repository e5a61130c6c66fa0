import { describe, expect, it } from "vitest";
import { made } from "../proof/accuracy/check.ts";
import { requirementUpdates } from "../proof/accuracy/requirement.ts";

// Standard conjugate results, worked out by hand and by the batch formula; not a publication.
describe("the normal answer to all notes at once holds the one by one answers", () => {
  it.each(requirementUpdates.checks)("$what", (check) => {
    expect(made(check)).toMatchObject({ passed: true });
  });
});
