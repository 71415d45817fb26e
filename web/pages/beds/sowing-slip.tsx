/** Record a sowing: the sentence and the twenty seasons change while it is being written. */
import { useEffect, useState } from "preact/hooks";
import type { Bed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { inOurUnits } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { DateDots } from "../../parts/date-dots.tsx";
import { useFocusLater } from "../../parts/focus-later.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { UndoLine } from "../../parts/undo-line.tsx";
import { lastBed, rememberBed } from "./last-bed.ts";
import { amountWords, EMPTY_SLIP, fieldId, firstBed, readSlip, suggestedAmount, type SlipReading, type SlipText } from "./slip.ts";
import { failureOf, type Failure } from "./failure.ts";
import { SowingFields } from "./sowing-fields.tsx";
import { dotsWords, restsOnNothing, slipSentence, sowingName } from "./sowing-words.ts";
import { usePreview, type Preview } from "./use-preview.ts";

interface SowingSlipProps {
  readonly crops: readonly Crop[];
  readonly beds: readonly Bed[];
  readonly sowings: readonly Sowing[];
  readonly today: LocalDate;
  readonly again: () => Promise<void>;
  /** Tells the strip what is being written. */
  readonly onPreview: (preview: Preview | null) => void;
}

export function SowingSlip(props: SowingSlipProps) {
  const { crops, beds, today } = props;
  const slip = useSlip(props);
  const { text, read, failure, done } = slip;
  const { preview, failed } = usePreview(read);
  const { onPreview } = props;
  useEffect(() => onPreview(preview), [preview, onPreview]);
  const forecast = preview?.answer.forecast ?? null;
  const when = preview?.read.when;
  return (
    <div class="slip">
      <Answer live>{failed ?? slipSentence(preview?.read ?? read, text.crop, forecast, today)}</Answer>
      <div class="sow">
        <figure class="sow-pic">
          <h2 class="head laptop">When the first pick falls</h2>
          <DateDots
            dates={forecast?.dots ?? []}
            start={preview && preview.read.method !== "established" && when?.ok ? when.value.date : null}
            startWord={preview?.read.method === "transplant" ? "planted out" : "sown"}
            frost={forecast?.frost.firstAutumn ?? null}
            wordsId="dots-words"
          />
          <figcaption class="say" id="dots-words">
            {forecast ? dotsWords(forecast, today) : ""}
            {forecast && restsOnNothing(forecast) && (
              <a class="hitline" href="/household">
                Enter the months’ warmth
              </a>
            )}
          </figcaption>
          {preview?.answer.fits.map((line) => (
            <p class="notice" key={line}>
              <b class="over">Short of room:</b> {inOurUnits(line)}
            </p>
          ))}
        </figure>
        <form class="sow-form" aria-labelledby="sow-h" onSubmit={slip.submit} noValidate>
          <h2 class="head" id="sow-h">
            Record a sowing
          </h2>
          {failure && <ProblemNote key={failure.attempt} lead={failure.lead} faults={failure.faults} />}
          <SowingFields form="slip" text={text} read={read} crops={crops} beds={beds} onChange={slip.change} strict={failure !== null} />
          <p class="acts">
            <button type="submit" class="btn main garden">
              Save sowing
            </button>
            {read.crop.ok && !read.crop.value.perennial && (
              <button type="button" class="btn word" onClick={slip.otherMethod}>
                {read.method === "transplant" ? "Sow in place instead" : "Plant out instead"}
              </button>
            )}
          </p>
          {done && <UndoLine done={done.words} undo={done.undo} of={done.of} />}
        </form>
      </div>
    </div>
  );
}

interface Done {
  readonly words: string;
  readonly of: string;
  readonly undo?: () => void;
}

function useSlip({ crops, beds, sowings, today, again }: SowingSlipProps) {
  const [text, setText] = useState<SlipText>(() => ({ ...EMPTY_SLIP, bedId: firstBed(beds, lastBed()) }));
  const [muchTouched, setMuchTouched] = useState(false);
  const [failure, setFailure] = useState<Failure | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const [busy, setBusy] = useState(false);
  const focusLater = useFocusLater();
  const read = readSlip(text, crops, today);

  const change = (changes: Partial<SlipText>): void => {
    if (changes.much !== undefined) setMuchTouched(changes.much.trim() !== "");
    const next = { ...text, ...changes, ...(changes.crop === undefined ? {} : { method: null }) };
    const crop = readSlip(next, crops, today).crop;
    const suggest = changes.crop !== undefined && !muchTouched && crop.ok;
    setText(suggest ? { ...next, much: suggestedAmount(crop.value, sowings) } : next);
  };
  const undo = (sowing: Sowing, words: string) => async (): Promise<void> => {
    try {
      await calls.removeSowing(sowing.id);
      setDone({ words: `${words}: taken back.`, of: "" });
      await again();
    } catch (thrown) {
      setFailure(failureOf(thrown, "slip", "this sowing"));
    }
  };
  const save = async ({ body }: SlipReading): Promise<void> => {
    if (body === null) return setFailure(failureOf(read.faults, "slip", "this sowing"));
    setBusy(true);
    try {
      const sowing = await calls.putSowing(newId(), body);
      const words = wordsFor(sowing, crops, beds);
      rememberBed(sowing.bedId);
      setFailure(null);
      setDone({ words: `${words}: saved.`, of: words, undo: () => void undo(sowing, words)() });
      setText({ ...EMPTY_SLIP, when: text.when, bedId: text.bedId });
      setMuchTouched(false);
      focusLater(fieldId("slip", "crop"));
      // the next sowing need not wait for the page to be drawn anew
      setBusy(false);
      await again();
    } catch (thrown) {
      setFailure(failureOf(thrown, "slip", "this sowing"));
    } finally {
      setBusy(false);
    }
  };
  return {
    text,
    read,
    failure,
    done,
    change,
    submit: (event: Event) => {
      event.preventDefault();
      if (!busy) void save(read);
    },
    otherMethod: () => change({ method: read.method === "transplant" ? "direct" : "transplant" }),
  };
}

function wordsFor(sowing: Sowing, crops: readonly Crop[], beds: readonly Bed[]): string {
  const name = sowingName(sowing, new Map(crops.map((crop) => [crop.crop, crop])));
  return `${name}, ${amountWords(sowing)}, ${beds.find(({ id }) => id === sowing.bedId)?.name ?? ""}`;
}
