/** What the calendar lacks: with no sowing there is no year to draw, without a place or weather the year is a rough one. */
import type { Calendar } from "#shared/contracts/calendar.ts";
import { Empty } from "../../parts/empty.tsx";

/** Nothing can be drawn yet. */
export function missingFirst(calendar: Calendar): boolean {
  return calendar.rows.length === 0 && calendar.missing.length > 0;
}

export function Missing({ calendar }: { readonly calendar: Calendar }) {
  const lacks = (what: Calendar["missing"][number]): boolean => calendar.missing.includes(what);
  if (missingFirst(calendar)) return <FirstStep place={lacks("place") || lacks("weather")} garden={lacks("beds") || lacks("sowings")} />;
  if (!lacks("place") && !lacks("weather")) return null;
  return (
    <p class="notice">
      {lacks("place") ? "Nobody has said yet where the garden lies" : "No weather is on record yet"}, so these dates are rough.{" "}
      <a class="hitline" href="/household">
        {lacks("place") ? "Say where it lies" : "Enter the months’ warmth"}
      </a>
    </p>
  );
}

/** Place and weather first: without them no sowing has a date. */
function FirstStep({ place, garden }: { readonly place: boolean; readonly garden: boolean }) {
  if (place)
    return (
      <Empty
        sentence="Nobody has said yet where the garden lies and how warm its months are, so nothing can be said about the year."
        then="A place on the map and twelve monthly means, typed in by hand, are enough; then one bed, one crop and one rough date (“mid April”). The year of weeks will stand here."
      >
        <a class="btn main" href="/household">
          Say where the garden lies
        </a>
        {garden && (
          <a class="btn word" href="/beds">
            Record a sowing
          </a>
        )}
      </Empty>
    );
  return (
    <Empty sentence="No sowing is recorded yet, so nothing can be said about the year." then="One bed, one crop and one rough date (“mid April”) are enough. The year of weeks will stand here.">
      <a class="btn main" href="/beds">
        Record a sowing
      </a>
    </Empty>
  );
}
