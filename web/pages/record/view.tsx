/** The season record from its data: the claim, the picture, every finished sowing. */
import type { TrackRecord } from "#shared/contracts/advice.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { shortDay } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { DottedPlate } from "../../parts/waiting.tsx";
import { claimOf, monthBeforeSentence, offWords, rowName, spanCell, type TrackRow } from "./record-words.ts";
import { drawn, MOST_DRAWN } from "./spans-plate.ts";
import { Spans } from "./spans.tsx";

export interface RecordData {
  readonly record: TrackRecord;
  readonly today: LocalDate;
}

export function RecordView({ data: { record, today } }: { readonly data: RecordData }) {
  const { claim, rest } = claimOf(record.text);
  const shown = drawn(record.rows);
  const counted = record.rows.filter((row) => !row.chosen).length;
  return (
    <>
      <Answer>{claim}</Answer>
      <p class="under" id="record-words">
        {[rest, monthBeforeSentence(record), counted > MOST_DRAWN ? `The latest ${MOST_DRAWN} are drawn.` : ""].filter(Boolean).join(" ")}
      </p>
      {shown.length === 0 ? <NothingYet /> : <Spans rows={shown} wordsId="record-words" />}
      {record.rows.length > 0 && <Finished rows={record.rows} today={today} />}
    </>
  );
}

function NothingYet() {
  return (
    <>
      <DottedPlate />
      <p class="under">Write down what you pick: each first pick is then held against what was forecast on the day of sowing, from what was known on that day alone.</p>
      <p class="acts">
        <a class="btn main" href="/today">
          Go to today’s picks
        </a>
      </p>
    </>
  );
}

function Finished({ rows, today }: { readonly rows: readonly TrackRow[]; readonly today: LocalDate }) {
  return (
    <section class="sec" aria-labelledby="finished-h">
      <h2 id="finished-h">Each first pick, the latest first</h2>
      <div class="scroll" tabIndex={0} role="region" aria-labelledby="finished-h">
        <table class="finished">
          <thead>
            <tr>
              <th scope="col">Sowing</th>
              <th scope="col">Came</th>
              <th scope="col">Forecast at sowing</th>
              <th scope="col">Than the likely day</th>
              <th scope="col">A month before</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.sowingId}${row.season ?? ""}`}>
                <th scope="row">
                  <a href={`/beds/${row.sowingId}`}>{rowName(row)}</a>
                </th>
                <td>{shortDay(row.cameOn, today)}</td>
                <td class="quiet">{spanCell(row.atSowing.firstPick, today)}</td>
                <td>{row.chosen ? <span class="quiet">you chose the day; not counted</span> : `${offWords(row.atSowing.daysLater)}${row.atSowing.inside ? "" : ", outside"}`}</td>
                <td class="quiet">{row.monthBefore ? spanCell(row.monthBefore.firstPick, today) : ""}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
