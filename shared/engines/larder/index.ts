/** The only door: balances, room, the oldest first, and the account of every gram. */
export { balanceOf, leftFor, mostOwed, standsBefore } from "./balance.ts";
export { closes, differencesOf, gramAccount, seasonOfDay } from "./gram-account.ts";
export type { CropLot, CropSeason, PickedGrams } from "./gram-account.ts";
export { oldestFirst } from "./oldest-first.ts";
export type { Draw, LotInStore } from "./oldest-first.ts";
export { freezingLoad, litresOf, overDays, roomState } from "./room.ts";
export type { LotSize } from "./room.ts";
export type { CountedIn, LotBalance, LotEntry, LotHistory, MovementKind, Stand, TakenFor } from "./types.ts";
