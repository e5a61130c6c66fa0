import { expect, test } from "vitest";
import { refusedBySystem } from "../../src/cli/unreadable.ts";
import { formatProblem } from "../../src/problem/index.ts";

const told = (code: string, file?: string): string | null => {
  const problem = refusedBySystem(Object.assign(new Error(code), { code, path: "/farm/notes.csv" }), file);
  return problem === null ? null : formatProblem(problem);
};

test("what the machine refuses is told in words, under the name people know the file by", () => {
  expect(told("EACCES", "notes.csv")).toBe(
    "notes.csv: expected a file that can be read, received no permission. Look at its permissions.",
  );
  expect(told("EBUSY", "notes.csv")).toBe(
    "notes.csv: expected a file that can be read, received one another program holds open. Close it there and try again.",
  );
  expect(told("ENOSPC")).toBe(
    "/farm/notes.csv: expected a file or folder that can be used, received a full disk. Make room and try again.",
  );
});

test.each(
  "EEXIST ENAMETOOLONG ELOOP EMFILE ENFILE ENOTEMPTY ETXTBSY EINVAL EXDEV EDQUOT EFBIG EIO ENXIO ENODEV ETIMEDOUT ESTALE".split(
    " ",
  ),
)("%s is no fault of ours", (code) => {
  expect(told(code)).toMatch(
    /^\/farm\/notes\.csv: expected a file or folder that can be used, received .+\. .+\.$/u,
  );
});

test("what has no path is the result on its way out", () => {
  const full = Object.assign(new Error("ENOSPC"), { code: "ENOSPC" });
  expect(formatProblem(refusedBySystem(full)!)).toBe(
    "the result: expected a file or folder that can be used, received a full disk. Make room and try again.",
  );
});

test("a fault of ours stays one", () => {
  expect(told("ERR_INVALID_ARG_TYPE")).toBeNull();
});
