/** Each property is worked out when it is first read, and kept. @example whenAsked({ sum: () => 1 + 1 }).sum // => 2 */
export function whenAsked<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): T {
  const kept = {} as T;
  const keep = <K extends keyof T>(key: K): T[K] => {
    const value = makers[key]();
    Object.defineProperty(kept, key, { value, enumerable: true });
    return value;
  };
  for (const key of Object.keys(makers) as (keyof T)[])
    Object.defineProperty(kept, key, { get: () => keep(key), enumerable: true, configurable: true });
  return kept;
}
