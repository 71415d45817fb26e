/** Today: what to pick, what is urgent, what to sow, what to cook. A pick is logged here in a few seconds. */
import { useState } from "preact/hooks";
import type { Today } from "#shared/contracts/today.ts";
import { removePick, today } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { day, measured } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { PickSheet, type LoggedPick } from "./pick-sheet.tsx";
import { PickRows } from "./pick-rows.tsx";
import "./today.css";

export default function TodayPage() {
  const { load, again } = useLoad("today", today);
  const [open, setOpen] = useState<string | null>(null);
  const [logged, setLogged] = useState<LoggedPick | null>(null);
  if (load.state === "waiting") return <Waiting name="Today" doing="Looking through the beds for what is ready." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const it = load.value;
  const close = async (pick: LoggedPick | null): Promise<void> => {
    setOpen(null);
    if (!pick) return;
    setLogged(pick);
    await again();
  };
  const undo = async (pick: LoggedPick): Promise<void> => {
    await removePick(pick.id);
    setLogged(null);
    await again();
  };
  return (
    <div class="p-today">
      <Answer>{it.headline}</Answer>
      {it.urgent.map(({ kind, text, href }) => (
        <p class={`notice${kind === "frost" ? " frost" : ""}`} key={text}>
          {text} <a href={href}>{kind === "setup" ? "Put it in" : kind === "frost" ? "See the beds" : "See what to do with it"}</a>
        </p>
      ))}
      {logged && <UndoLine key={logged.id} done={`${logged.name}, ${measured(logged.grams)} picked today. Saved.`} undo={() => void undo(logged)} of={logged.name} />}
      <div class="today-cols">
        <PickRows picks={it.pick} onOpen={setOpen} />
        <div>
          <OtherWork it={it} />
        </div>
      </div>
      {it.pick.length > 0 && (
        <div class="dock">
          <button type="button" class="btn main garden" onClick={() => setOpen(it.pick[0]?.sowingId ?? null)}>
            Log a pick
          </button>
        </div>
      )}
      {open !== null && <PickSheet picks={it.pick} first={open} today={it.today} onClose={(pick) => void close(pick)} />}
    </div>
  );
}

function OtherWork({ it }: { readonly it: Today }) {
  return (
    <>
      {it.sow.length > 0 && (
        <section class="sec" aria-labelledby="sow-h">
          <h2 id="sow-h">Sow and plant</h2>
          <ul class="rows jobs">
            {it.sow.map((one) => (
              <li key={one.sowingId}>
                <p>
                  <b class="what">{one.name}</b>
                  <span class="quiet">{one.text}</span>
                </p>
                <a class="btn" href="/beds">
                  To the beds<span class="vh">, {one.name}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
      {it.jobs.length > 0 && (
        <section class="sec" aria-labelledby="jobs-h">
          <h2 id="jobs-h">To do in the beds</h2>
          <ul class="rows jobs">
            {it.jobs.map((one) => (
              <li key={`${one.sowingId ?? ""}${one.text}`}>
                <p>
                  {one.text}
                  {one.on !== null && <span class="quiet">{day(one.on, it.today)}</span>}
                </p>
              </li>
            ))}
          </ul>
        </section>
      )}
      {it.cook.length > 0 && (
        <section class="sec" aria-labelledby="cook-h">
          <h2 id="cook-h">Cook</h2>
          <ul class="rows jobs">
            {it.cook.map((one) => (
              <li key={`${one.on}${one.text}`}>
                <p>{one.text}</p>
                <a class="btn" href={one.href}>
                  Open<span class="vh">: {one.text}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
