/** Air on a farm; anything else is a fault of the logger, the unit or the typing. [°C] */
export const ON_A_FARM = { coldest: -60, warmest: 60 } as const;
