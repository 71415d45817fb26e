/**
 * Question: how long does so much take to come to the boil? minutes = litres × (°C up) × 4.186 ÷ (kW × efficiency × 60).
 * 4.186 kJ a kilogram and kelvin: water, from memory. Efficiency of an electric ring 0.74 (EPRI, Induction Cooking Technology Design and Assessment, abstract).
 */
const KJ_A_KG_AND_KELVIN = 4.186;
const ELECTRIC_RING = { kw: 2, efficiency: 0.74 } as const;
const FROM_THE_TAP_C = 15;
const BOILING_C = 100;

/** A kilogram counts as a litre. Of a ring of 2 kW where none is named; that a usual ring has as much is common practice, no source. */
export function boilMin(litres: number, { kw, efficiency }: { readonly kw: number; readonly efficiency: number } = ELECTRIC_RING): number {
  return (litres * (BOILING_C - FROM_THE_TAP_C) * KJ_A_KG_AND_KELVIN) / (kw * efficiency * 60);
}
