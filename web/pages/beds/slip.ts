/** The sowing slip: what is typed, how it is read, and the sowing that comes of it. Pure. */
import type { Bed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import { NewSowing, type Sowing } from "#shared/contracts/sowings.ts";
import type { Method } from "#shared/kernel/crop-facts.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { area, count, day, metres, typedArea, typedMetres } from "../../format.ts";
import { inPounds } from "../../units.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { got, wrong, type Typed } from "../../parts/typed.ts";
import { readSowingAmount, type AmountKind, type SowingAmount } from "../../parts/typed-amount.ts";
import { readDay, type TypedDay } from "../../parts/typed-day.ts";
import { findCrop } from "./find-crop.ts";
import { packetWords, readPacketDays, type PacketDays } from "./packet-days.ts";

/** As typed; nothing is lost when it cannot be read. */
export interface SlipText {
  readonly crop: string;
  readonly when: string;
  readonly much: string;
  readonly bedId: string | null;
  /** Null: the usual way of the crop. */
  readonly method: Method | null;
  readonly variety: string;
  /** Days to maturity as the packet has them. */
  readonly varietyDays: string;
  readonly note: string;
  /** For a transplant: the day it was sown, if known. */
  readonly raised: string;
  /** For what stands for years: the year it was set, if known. */
  readonly since: string;
}

export const EMPTY_SLIP: SlipText = { crop: "", when: "today", much: "", bedId: null, method: null, variety: "", varietyDays: "", note: "", raised: "", since: "" };

export interface SlipReading {
  readonly crop: Typed<Crop>;
  readonly method: Method;
  readonly when: Typed<TypedDay>;
  readonly much: Typed<SowingAmount>;
  readonly raised: Typed<LocalDate | null>;
  readonly since: Typed<number | null>;
  readonly varietyDays: Typed<PacketDays | null>;
  /** Null until everything can be read. */
  readonly body: NewSowing | null;
  readonly faults: readonly FieldProblem[];
}

/** Ids of the controls, by the prefix of the form. */
export const fieldId = (form: string, field: keyof SlipText): string => `${form}-${field}`;

export function readSlip(text: SlipText, crops: readonly Crop[], today: LocalDate, form = "slip"): SlipReading {
  const crop = findCrop(text.crop, crops);
  const method = methodOf(text, crop.ok ? crop.value : null);
  const when: Typed<TypedDay> = method === "established" ? got({ date: today, about: false }) : readDay(text.when, today);
  const much = readSowingAmount(text.much, (crop.ok && crop.value.amounts[0]) || "rowM");
  const raised: Typed<LocalDate | null> = method !== "transplant" || text.raised.trim() === "" ? got(null) : dateOnly(readDay(text.raised, today));
  const since = method === "established" ? readYear(text.since, today) : got(null);
  const bed: Typed<string> = text.bedId === null ? wrong("No bed is chosen.", "Choose where it stands.") : got(text.bedId);
  const varietyDays = method === "established" ? got(null) : readPacketDays(text.varietyDays);
  const parts = { crop, when, much, raised, since, varietyDays, bedId: bed };
  const faults = Object.entries(parts).flatMap(([field, read]) => (read.ok ? [] : [{ field: fieldId(form, field as keyof SlipText), text: read.wrong }]));
  const readings = { crop, method, when, much, raised, since, varietyDays };
  if (!crop.ok || !when.ok || !much.ok || !raised.ok || !since.ok || !varietyDays.ok || !bed.ok) return { ...readings, body: null, faults };
  const candidate = bodyOf(text, { crop: crop.value, method, when: when.value, much: much.value, raised: raised.value, since: since.value, varietyDays: varietyDays.value, bedId: bed.value });
  const checked = NewSowing.safeParse(candidate);
  if (checked.success) return { ...readings, body: checked.data, faults };
  return { ...readings, body: null, faults: checked.error.issues.map((issue) => ({ field: controlFor(issue.path.join("."), form), text: `${issue.message}.` })) };
}

/** The control that a field of the contract is typed into. */
export function controlFor(path: string, form: string): string {
  if (path === "rowM" || path === "plants" || path === "areaM2") return fieldId(form, "much");
  if (path === "sownOn" || path === "plantedOutOn") return fieldId(form, "when");
  if (path.startsWith("varietyDays")) return fieldId(form, "varietyDays");
  if (path === "standsSince") return fieldId(form, "since");
  return `${form}-${path}`;
}

function methodOf(text: SlipText, crop: Crop | null): Method {
  if (crop?.perennial) return "established";
  return text.method ?? (crop === null || crop.usualMethod === "established" ? "direct" : crop.usualMethod);
}

interface ReadParts {
  readonly crop: Crop;
  readonly method: Method;
  readonly when: TypedDay;
  readonly much: SowingAmount;
  readonly raised: LocalDate | null;
  readonly since: number | null;
  readonly varietyDays: PacketDays | null;
  readonly bedId: string;
}

function bodyOf(text: SlipText, { crop, method, when, much, raised, since, varietyDays, bedId }: ReadParts): NewSowing {
  const about = when.about ? `About the day: “${text.when.trim()}” as written, give or take five days.` : "";
  const note = [text.note.trim(), text.note.includes(about) ? "" : about].filter(Boolean).join(" ");
  return {
    bedId,
    crop: crop.crop,
    method,
    ...much,
    ...(method === "direct" ? { sownOn: when.date } : {}),
    ...(method === "transplant" ? { plantedOutOn: when.date, ...(raised === null ? {} : { sownOn: raised }) } : {}),
    ...(since === null ? {} : { standsSince: since }),
    ...(varietyDays === null ? {} : { varietyDays }),
    ...(text.variety.trim() === "" ? {} : { variety: text.variety.trim() }),
    ...(note === "" ? {} : { note }),
  };
}

const dateOnly = (read: Typed<TypedDay>): Typed<LocalDate> => (read.ok ? got(read.value.date, read.say) : read);

function readYear(text: string, today: LocalDate): Typed<number | null> {
  const typed = text.trim();
  if (typed === "") return got(null);
  const year = Number(typed);
  if (/^\d{4}$/.test(typed) && year >= 1900 && year <= Number(today.slice(0, 4))) return got(year);
  return wrong("That is not a year we can read.", `Write a year such as ${Number(today.slice(0, 4)) - 3}, or leave it empty.`);
}

type HowMuch = { readonly rowM?: number | undefined; readonly plants?: number | undefined; readonly areaM2?: number | undefined };

/** As the field begins with it. */
function typedAmount(of: HowMuch): string {
  if (of.rowM !== undefined) return typedMetres(of.rowM);
  return of.plants === undefined ? typedArea(of.areaM2 ?? 0) : `${of.plants} ${of.plants === 1 ? "plant" : "plants"}`;
}

/** 3 m, 12 plants, 2 m². */
export function amountWords(of: HowMuch): string {
  if (of.rowM !== undefined) return metres(of.rowM);
  if (of.plants !== undefined) return count(of.plants, "plant", "plants");
  return area(of.areaM2 ?? 0);
}

/** What the amount field begins with: as last time for this crop, or a usual figure in the unit that the book counts in. */
export function suggestedAmount(crop: Crop, sowings: readonly Sowing[]): string {
  const last = sowings.filter((sowing) => sowing.crop === crop.crop).sort((a, b) => startOf(b).localeCompare(startOf(a)))[0];
  if (last) return typedAmount(last);
  const usual: Record<AmountKind, string> = inPounds() ? { rowM: "10 ft", plants: "6 plants", areaM2: "20 sq ft" } : { rowM: "3 m", plants: "6 plants", areaM2: "2 m²" };
  return usual[crop.amounts[0] ?? "rowM"];
}

const startOf = (sowing: Sowing): string => sowing.plantedOutOn ?? sowing.sownOn ?? "";

/** A stored sowing as it would be typed. */
export function slipOf(sowing: Sowing, crops: readonly Crop[], today: LocalDate): SlipText {
  const typedDay = (date: LocalDate | undefined): string => (date === undefined ? "" : day(date, today).replace("\u00a0", " "));
  return {
    crop: crops.find(({ crop }) => crop === sowing.crop)?.name ?? sowing.crop,
    when: typedDay(sowing.method === "transplant" ? (sowing.plantedOutOn ?? sowing.sownOn) : sowing.sownOn),
    much: typedAmount(sowing),
    bedId: sowing.bedId,
    method: sowing.method,
    variety: sowing.variety ?? "",
    varietyDays: sowing.varietyDays ? packetWords(sowing.varietyDays) : "",
    note: sowing.note ?? "",
    raised: sowing.method === "transplant" && sowing.plantedOutOn !== undefined ? typedDay(sowing.sownOn) : "",
    since: sowing.standsSince === undefined ? "" : String(sowing.standsSince),
  };
}

/** The bed the slip begins with: the one used last, else the one with most room. */
export function firstBed(beds: readonly Bed[], lastUsed: string | null): string | null {
  if (lastUsed !== null && beds.some(({ id }) => id === lastUsed)) return lastUsed;
  return [...beds].sort((a, b) => b.freeM2 - a.freeM2)[0]?.id ?? null;
}
