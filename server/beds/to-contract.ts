import type { Bed } from "#shared/contracts/beds.ts";
import type { BedRow } from "./store.ts";

export function toContract(row: BedRow, freeM2: number): Bed {
  const { id, name, lengthM, widthM, cover } = row;
  return { id, name, lengthM, widthM, cover: cover as Bed["cover"], areaM2: hundredths(lengthM * widthM), freeM2: hundredths(freeM2) };
}

const hundredths = (squareMetres: number): number => Math.round(squareMetres * 100) / 100;
