/** Bundles test/proof/NAME.ts, gives the bundle's path to `use`, and takes it away again. */
export function withBundle<Value>(
  name: string,
  use: (outfile: string) => Promise<Value> | Value,
): Promise<Value>;
