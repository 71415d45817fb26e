/** Each place with known litres as a rule: solid is in it, open is free. One scale for all. */
import type { Place } from "#shared/contracts/places.ts";
import { Measured } from "../../parts/measured.tsx";
import { roomOf } from "./room.ts";

const ROW_REM = 4;
const BAR_REM = 1.25;

export function RoomPlate({ places }: { readonly places: readonly Place[] }) {
  const measured = places.filter(({ litres }) => litres !== undefined);
  if (measured.length === 0) return null;
  const most = Math.max(...measured.map(({ litres }) => litres ?? 0));
  const words = measured.map(({ name, usedLitres, litres }) => `${name}: ${usedLitres} litres in it of ${litres}`).join("; ");
  return (
    <figure class="rooms">
      <Measured>
        {({ width, rem }) => (
          <svg width={width} height={measured.length * ROW_REM * rem} viewBox={`0 0 ${width} ${measured.length * ROW_REM * rem}`} role="img" aria-label={words}>
            {measured.map((place, i) => {
              const rule = roomOf(place, most, width);
              if (!rule) return null;
              const y = i * ROW_REM * rem;
              const cold = place.kind === "freezer" || place.kind === "fridge";
              const narrow = rule.all < 24 * rem;
              return (
                <g key={place.id}>
                  <text x={0} y={y + 1.2 * rem} class="t-name">
                    {place.name}
                  </text>
                  <text x={width} y={y + 1.2 * rem} class={`end t-small${rule.over ? " t-over" : ""}`}>
                    {narrow ? rule.words.right : `${rule.words.left}, ${rule.words.right}`}
                  </text>
                  <rect x={1} y={y + 1.7 * rem} width={rule.all} height={BAR_REM * rem} class={cold ? "k-cold" : "k-axis"} />
                  <rect x={1} y={y + 1.7 * rem} width={rule.used} height={BAR_REM * rem} class={rule.over ? "k-over" : cold ? "k-cold-fill" : "k-picked"} />
                </g>
              );
            })}
          </svg>
        )}
      </Measured>
    </figure>
  );
}
