/**
 * Share of a day's thermal time that light lets a crop use: E/D with 1/E = 1/D + f/R.
 *
 * @param thermalTime - D. [°C·d]
 * @param radiation - R under the cover. [MJ/m²]
 * @param lightOnPace - f of the crop; 0 leaves pace to temperature alone. [MJ/m² per °C·d]
 * @returns 0 to 1. A day without thermal time has nothing to share and gives 1; one without light gives 0 unless f is 0.
 * @source scaifeCoxMorris1987, form from memory
 * @example 15 * lightShare(15, 5, 0.5) // => 6
 */
export function lightShare(thermalTime: number, radiation: number, lightOnPace: number): number {
  if (lightOnPace === 0 || thermalTime <= 0) return 1;
  if (radiation <= 0) return 0;
  return radiation / (radiation + lightOnPace * thermalTime);
}
