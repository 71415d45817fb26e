/** One sowing from its data: the sentence, its season as a picture, what was seen and picked, what the dates rest on. */
import type { Bed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Pick } from "#shared/contracts/picks.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { inOurUnits, lower, shortDay } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { DottedPlate } from "../../parts/waiting.tsx";
import { narrow } from "../../screen.ts";
import { Lifting } from "./lifting.tsx";
import { PicksOf } from "./picks.tsx";
import { SeasonKey } from "./season-key.tsx";
import { SeasonPlate } from "./season-plate.tsx";
import type { DayMark, SeasonFacts } from "./season-plate.ts";
import { Sightings, STAGE_WORDS } from "./sightings.tsx";
import { Sources } from "./sources.tsx";
import { SowingEdit } from "./sowing-edit.tsx";
import { beganWords, restsOnNothing, seasonWords, sowingAnswer } from "./sowing-words.ts";
import { useEditing } from "./use-editing.ts";
import { WarmthSoFar } from "./warmth.tsx";
import { ownRecordSentence } from "./warmth-words.ts";
import { WeeksTable } from "./weeks-table.tsx";

export interface SowingData {
  readonly sowing: Sowing;
  readonly picks: readonly Pick[];
  readonly beds: readonly Bed[];
  readonly crops: readonly Crop[];
  readonly today: LocalDate;
}

interface SowingSheetProps {
  readonly data: SowingData;
  readonly again: () => Promise<void>;
  readonly onRemove: (sowing: Sowing) => Promise<void>;
}

export function SowingSheet({ data, again, onRemove }: SowingSheetProps) {
  const { sowing, picks, beds, crops, today } = data;
  const crop = crops.find(({ crop: slug }) => slug === sowing.crop);
  const bed = beds.find(({ id }) => id === sowing.bedId);
  const { forecast } = sowing;
  const own = ownRecordSentence(forecast.own);
  return (
    <>
      <Answer>{sowingAnswer(sowing, crop, today)}</Answer>
      <p class="under">
        {bed?.name ?? "No bed"}, {beganWords(sowing, today)}.{" "}
        <a class="hitline" href="/beds">
          All beds
        </a>
      </p>
      {sowing.fits.map((line) => (
        <p class="notice" key={line}>
          <b class="over">Short of room:</b> {inOurUnits(line)}
        </p>
      ))}
      <Season data={data} crop={crop} />
      {forecast.lift && <Lifting lift={forecast.lift} today={today} />}
      {forecast.warmth && <WarmthSoFar warmth={forecast.warmth} today={today} />}
      <div class="panel-parts">
        <PicksOf sowing={sowing} picks={picks} today={today} again={again} />
        <Sightings sowing={sowing} today={today} again={again} />
      </div>
      <section class="sec" aria-labelledby="rests-h">
        <h2 id="rests-h">What the dates rest on</h2>
        <p class="note">{own ?? "Nothing of your own record counts here yet. A finished sowing of this crop, with its picks written down, moves what comes after it."}</p>
        {forecast.notes.map((note) => (
          <p class="note" key={note}>
            {inOurUnits(note)}
          </p>
        ))}
        <Sources basis={forecast.basis} crop={crop} />
      </section>
      <Changes data={data} again={again} onRemove={onRemove} />
    </>
  );
}

function Season({ data, crop }: { readonly data: SowingData; readonly crop: Crop | undefined }) {
  const { sowing, picks, today } = data;
  const { forecast } = sowing;
  if (restsOnNothing(forecast)) {
    return (
      <>
        <DottedPlate />
        <p class="under">
          Twelve monthly means are enough for a first answer.{" "}
          <a class="hitline" href="/household">
            Enter the months’ warmth
          </a>
        </p>
      </>
    );
  }
  const facts: SeasonFacts = { marks: marksOf(data, narrow.value), picks, forecast, today, weekly: crop?.habit !== "one-cut" || picks.length > 0 };
  return (
    <figure class="season" aria-label="Its season">
      <SeasonPlate facts={facts} wordsId="season-words" />
      <SeasonKey facts={facts} />
      <figcaption class="say" id="season-words">
        {seasonWords(sowing, today)}
      </figcaption>
      <WeeksTable forecast={forecast} picks={picks} today={today} />
    </figure>
  );
}

/** What was done and what was seen, each on its day. */
function marksOf({ sowing, today }: SowingData, short: boolean): DayMark[] {
  const { sownOn, plantedOutOn, sightings } = sowing;
  const words = (what: string, on: LocalDate): string => (short ? what : `${what} ${shortDay(on, today)}`);
  const begun = ([["sown", sownOn], ["planted out", plantedOutOn]] as const).flatMap(([what, on]) => (on === undefined ? [] : [{ on, words: words(what, on), begins: true }]));
  const seen = sightings.filter(({ stage }) => stage !== "planted-out" || plantedOutOn === undefined).map(({ stage, seenOn }) => ({ on: seenOn, words: words(lower(STAGE_WORDS[stage]), seenOn), begins: false }));
  return [...begun, ...seen];
}

function Changes({ data, again, onRemove }: SowingSheetProps) {
  const { sowing, beds, crops, today } = data;
  const { editing, problem, attempt, toggle, done } = useEditing<Sowing>(again);
  return (
    <section class="sec" aria-labelledby="entry-h">
      <h2 id="entry-h">The entry</h2>
      {sowing.note && <p class="note">Note: {sowing.note}</p>}
      {problem !== null && <ProblemNote key={problem} lead={problem} />}
      {editing ? (
        <SowingEdit sowing={editing} crops={crops} beds={beds} today={today} onDone={done} />
      ) : (
        <p class="acts">
          <button type="button" class="btn" onClick={() => void toggle(() => calls.sowing(sowing.id))}>
            Change this sowing
          </button>
          <button type="button" class="btn word" onClick={() => void attempt(() => onRemove(sowing))}>
            Remove it
          </button>
        </p>
      )}
    </section>
  );
}
