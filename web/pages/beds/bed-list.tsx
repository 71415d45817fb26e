/** The beds with what stands in them; each sowing leads to its own page. */
import { useState } from "preact/hooks";
import type { BedAdvice } from "#shared/contracts/advice.ts";
import type { Bed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Sowing } from "#shared/contracts/sowings.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { area, lower } from "../../format.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { BedEdit } from "./bed-edit.tsx";
import { coverWords } from "./bed-form.tsx";
import { amountWords } from "./slip.ts";
import { StillSensible } from "./still-sensible.tsx";
import { useEditing } from "./use-editing.ts";
import { pickingWords, sowingName, startWords } from "./sowing-words.ts";

export interface BedListProps {
  readonly beds: readonly Bed[];
  readonly sowings: readonly Sowing[];
  readonly crops: readonly Crop[];
  readonly today: LocalDate;
  readonly again: () => Promise<void>;
  readonly onRemoveBed: (bed: Bed) => Promise<void>;
}

export function BedList(props: BedListProps) {
  return (
    <ul class="rows bedlist">
      {props.beds.map((bed) => (
        <BedRow key={bed.id} bed={bed} {...props} />
      ))}
    </ul>
  );
}

function BedRow({ bed, ...props }: BedListProps & { readonly bed: Bed }) {
  const { editing, problem, attempt, toggle, done } = useEditing<Bed>(props.again);
  const [advice, setAdvice] = useState<BedAdvice | null>(null);
  return (
    <li>
      <div>
        <h3 class="what">{bed.name}</h3>
        <p class="quiet">
          {bed.freeM2 > 0 ? (
            <>
              <b>{area(bed.freeM2)} free now</b> of {area(bed.areaM2)}
            </>
          ) : (
            `full, ${area(bed.areaM2)}`
          )}
          {bed.cover !== "open" && `, ${lower(coverWords(bed.cover))}`}
        </p>
      </div>
      <Standing bed={bed} {...props} />
      <p class="bed-acts">
        <button type="button" class="btn word" aria-expanded={advice ? "true" : "false"} onClick={() => void attempt(async () => setAdvice(advice ? null : await calls.bedAdvice(bed.id)))}>
          What to sow<span class="vh"> in {bed.name} now</span>
        </button>
        <button type="button" class="btn word" aria-expanded={editing ? "true" : "false"} onClick={() => void toggle(() => calls.bed(bed.id))}>
          Change<span class="vh"> the bed {bed.name}</span>
        </button>
      </p>
      {(problem !== null || editing || advice) && (
        <div class="in-full">
          {advice && <StillSensible advice={advice} today={props.today} />}
          {problem !== null && <ProblemNote key={problem} lead={problem} />}
          {editing && <BedEdit bed={editing} onDone={done} onRemove={() => void attempt(() => props.onRemoveBed(bed))} />}
        </div>
      )}
    </li>
  );
}

function Standing({ bed, sowings, crops, today }: BedListProps & { readonly bed: Bed }) {
  const byName = new Map(crops.map((crop) => [crop.crop, crop]));
  const begun = (sowing: Sowing): string => sowing.plantedOutOn ?? sowing.sownOn ?? "";
  const standing = sowings.filter(({ bedId }) => bedId === bed.id).sort((a, b) => begun(a).localeCompare(begun(b)));
  if (standing.length === 0) return <p class="quiet">Nothing stands in it.</p>;
  return (
    <ul class="stands">
      {standing.map((sowing) => (
        <li key={sowing.id}>
          <a href={`/beds/${sowing.id}`}>{sowingName(sowing, byName)}</a>
          <span>
            {amountWords(sowing)}, {startWords(sowing, today)}, {pickingWords(sowing.forecast, today)}
          </span>
        </li>
      ))}
    </ul>
  );
}
