/** The days to maturity that a packet prints, as typed: “57”, “60–65 days”, “80 days from sowing”. */
import { VARIETY_DAYS, type VarietyDays } from "#shared/kernel/crop-facts.ts";
import { got, wrong, type Typed } from "../../parts/typed.ts";

const WRITTEN = /^(\d{1,3})(?:\s*(?:-|–|to)\s*(\d{1,3}))?\s*(?:d|days?)?(?:\s*from\s+(sowing|planting(?: out)?|transplanting))?$/i;

export type PacketDays = Pick<VarietyDays, "low" | "high"> & { readonly from?: "sowing" | "transplanting" };

export function readPacketDays(text: string): Typed<PacketDays | null> {
  const typed = text.trim();
  if (typed === "") return got(null);
  const found = WRITTEN.exec(typed);
  const [low, high] = [Number(found?.[1]), Number(found?.[2] ?? found?.[1])];
  if (!found || low < VARIETY_DAYS.fewest || high > VARIETY_DAYS.most || low > high) return wrong("Those are not days to maturity we can read.", "Write 57, 60–65 days or 80 days from sowing, or leave it empty.");
  const from = found[3]?.toLowerCase();
  return got({ low, high, ...(from === undefined ? {} : { from: from === "sowing" ? ("sowing" as const) : ("transplanting" as const) }) });
}

/** As it would be typed; also beside the variety's name. */
export function packetWords({ low, high, from }: VarietyDays): string {
  const days = low === high ? `${low} days` : `${low}–${high} days`;
  return from === undefined ? days : `${days} from ${from === "sowing" ? "sowing" : "planting out"}`;
}
