/** Where the figures of a sowing come from: weather, own record, and the publications behind each row of the crop's book. */
import type { Crop } from "#shared/contracts/crops.ts";
import type { Forecast } from "#shared/contracts/sowings.ts";

export function Sources({ basis, crop }: { readonly basis: Forecast["basis"]; readonly crop: Crop | undefined }) {
  const published = new Map(crop?.sources.map(({ id, text }) => [id, text]));
  const heads = [...new Set(basis.map(({ text }) => text))];
  if (heads.length === 0) return null;
  return (
    <details class="basis">
      <summary class="word">The sources</summary>
      <ul class="rows">
        {heads.map((head) => {
          const behind = basis.filter(({ text }) => text === head).flatMap(({ id }) => published.get(id) ?? []);
          return (
            <li key={head}>
              {head}
              {behind.length > 0 && (
                <ul class="behind">
                  {[...new Set(behind)].map((text) => (
                    <li key={text} class="quiet">
                      {text}
                    </li>
                  ))}
                </ul>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
