/** What else the day asks: sow and plant, look at in the beds, use up, cook. Each row leads to where it is done. */
import type { ComponentChildren } from "preact";
import type { Today } from "#shared/contracts/today.ts";
import { day, inOurUnits } from "../../format.ts";

export function OtherWork({ it }: { readonly it: Today }) {
  return (
    <>
      <Work
        id="sow"
        title="Sow and plant"
        rows={it.sow.map(({ sowingId, name, text }) => ({
          key: sowingId,
          words: (
            <>
              <b class="what">{name}</b>
              <span class="quiet">{inOurUnits(text)}</span>
            </>
          ),
          href: `/beds/${sowingId}`,
          of: name,
        }))}
      />
      <Work
        id="jobs"
        title="To look at in the beds"
        rows={it.jobs.map(({ sowingId, text, on }) => ({
          key: `${sowingId ?? ""}${text}`,
          words: (
            <>
              <span>{inOurUnits(text)}</span>
              {on !== null && !text.includes(day(on, it.today)) && <span class="quiet">{day(on, it.today)}</span>}
            </>
          ),
          href: sowingId === null ? null : `/beds/${sowingId}`,
          of: text,
        }))}
      />
      <Work
        id="first"
        title="Use first"
        rows={it.useFirst.map(({ lotId, title, text }) => ({
          key: lotId,
          words: (
            <>
              <b class="what">{title}</b>
              <span class="quiet">{inOurUnits(text)}</span>
            </>
          ),
          href: "/larder",
          of: title,
        }))}
      />
      <Work id="cook" title="Cook" rows={it.cook.map(({ on, text, href }) => ({ key: `${on}${text}`, words: <span>{inOurUnits(text)}</span>, href, of: text }))} />
    </>
  );
}

interface Row {
  readonly key: string;
  readonly words: ComponentChildren;
  readonly href: string | null;
  /** What a screen reader hears after “Open”. */
  readonly of: string;
}

function Work({ id, title, rows }: { readonly id: string; readonly title: string; readonly rows: readonly Row[] }) {
  if (rows.length === 0) return null;
  return (
    <section class="sec" aria-labelledby={`${id}-h`}>
      <h2 id={`${id}-h`}>{title}</h2>
      <ul class="rows jobs">
        {rows.map(({ key, words, href, of }) => (
          <li key={key}>
            <p>{words}</p>
            {href !== null && (
              <a class="btn word" href={href}>
                Open<span class="vh">: {of}</span>
              </a>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
