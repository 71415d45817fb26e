/** What of the week's produce, room and jars is reserved by what is agreed, and what is left. */
import type { AgreedWeek } from "#shared/contracts/season-plan.ts";
import { capital, measured, whole } from "../../format.ts";

type Limit = AgreedWeek["limits"][number];

const figure = (value: number, unit: Limit["unit"]): string => (unit === "g" ? measured(value) : unit === "l" ? `${String(Math.round(value * 10) / 10)}\u00a0l` : whole(value));

export function Reserved({ agreed }: { readonly agreed: AgreedWeek }) {
  const limits = agreed.limits.filter(({ reserved }) => reserved > 0);
  if (limits.length === 0) return null;
  return (
    <section class="sec" aria-labelledby="reserved-h">
      <h2 id="reserved-h">Reserved for the week</h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="The table; it scrolls sideways on a phone">
        <table class="reserved">
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col" class="num">
                There
              </th>
              <th scope="col" class="num">
                Reserved
              </th>
              <th scope="col" class="num">
                Left
              </th>
            </tr>
          </thead>
          <tbody>
            {limits.map((limit) => (
              <tr key={`${limit.kind}${limit.id}`}>
                <th scope="row">{capital(limit.name)}</th>
                <td class="num">{figure(limit.there, limit.unit)}</td>
                <td class="num">{figure(limit.reserved, limit.unit)}</td>
                <td class={`num${limit.left < 0 ? " over" : ""}`}>{limit.left < 0 ? `${figure(-limit.left, limit.unit)} short` : figure(limit.left, limit.unit)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
