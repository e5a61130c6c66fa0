import { create, unitDependencies } from "mathjs";
import type { OtherUnits } from "../quantity/index.ts";

// The typings call the dependencies optional; the import above would fail without them.
const { unit } = create(unitDependencies!);

/** Units outside the trade's table, by a library that knows them all. Never asked about temperatures. */
export const otherUnits: OtherUnits = (value, name, base) => {
  try {
    return unit(value, name).toNumber(base);
  } catch {
    return null;
  }
};
