import { type Farm, type Tunnel, tunnelIds, tunnelsCalled } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { unknownName } from "./faults.ts";
import type { Setting } from "./settingReader.ts";

/** One row as it is written: the tunnels each name stands for. */
function namesIn(
  setting: Setting,
  tunnels: readonly Tunnel[],
  known: readonly string[],
  taken: Set<string>,
  problems: Problem[],
): readonly (readonly string[])[] {
  return setting.list().flatMap((entry) => {
    const name = entry.text("a tunnel");
    if (name === null) return [];
    if (!known.includes(name)) {
      problems.push(unknownName(entry.spot, name, "a tunnel", known, "tunnel-unknown"));
      return [];
    }
    const ids = tunnelsCalled(tunnels, name).map(({ id }) => id);
    if (ids.some((id) => taken.has(id))) {
      entry.fault("tunnel-twice", "each tunnel in one place of one row", "Take one of the two out.");
      return [];
    }
    for (const id of ids) taken.add(id);
    return [ids];
  });
}

/**
 * Rows of tunnels that stand side by side. Long ones that are covered in parts make a row of each part.
 *
 * @param known - Every name a tunnel has, also of one that is not sound otherwise.
 */
export function sideBySideSetting(
  setting: Setting | null,
  tunnels: readonly Tunnel[],
  known: readonly string[],
  problems: Problem[],
): Farm["sideBySide"] {
  const taken = new Set<string>();
  const names = [...new Set([...tunnelIds(tunnels), ...known])];
  return (setting?.list() ?? []).flatMap((entry): Farm["sideBySide"] => {
    const before = problems.length;
    const row = namesIn(entry, tunnels, names, taken, problems);
    // Of a tunnel that cannot be read enough is told.
    if (problems.length > before || row.some((ids) => ids.length === 0)) return [];
    if (row.length < 2) {
      entry.fault("row-too-short", "two or more tunnels side by side", "Write them like [T1, T2].");
      return [];
    }
    const wholes = row.map(([id]) => tunnels.find((tunnel) => tunnel.id === id)?.section?.of);
    if (wholes.some((whole, i) => whole !== undefined && wholes.indexOf(whole) !== i)) {
      const hint = "Write one part in each row.";
      entry.fault("parts-in-a-row", "tunnels side by side; parts of one lie end to end", hint);
      return [];
    }
    const [first] = row;
    if (row.some((ids) => ids.length !== first!.length)) {
      const hint = "Name the parts, like T9-1, and write a row for each of them.";
      entry.fault("parts-unlike", "tunnels of as many sections each", hint);
      return [];
    }
    return first!.map((_, part) => row.map((ids) => ids[part]!));
  });
}
