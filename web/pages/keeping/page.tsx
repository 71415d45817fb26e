/** /keeping: can I keep this? For a food, a way, a jar and an altitude the tested figures with their source, or the refusal and what to do instead. */
import type { KeepingAnswer, KeepingFoods } from "#shared/contracts/keeping.ts";
import { household, keeping, keepingFoods } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { Answer } from "../../parts/answer.tsx";
import { useFootNote } from "../../parts/foot-note.ts";
import { LoadFailed, ProblemNote } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import type { PageProps } from "../../pages.ts";
import { AnswerView } from "./answer-view.tsx";
import { KeepingForm } from "./keeping-form.tsx";
import { askedOf, keepingFields, sentenceOf } from "./keeping-form.ts";
import "./keeping.css";

export default function KeepingPage({ query }: PageProps) {
  const { load, again } = useLoad("foods", async (signal) => {
    const [foods, home] = await Promise.all([keepingFoods(signal), household(signal)]);
    return { foods, altitudeM: home.altitudeM };
  });
  useFootNote("Figures are looked up, never reckoned: no row, no figure. Your local food-safety authority and extension advice come first.");
  if (load.state === "waiting") return <Waiting name="Can I keep this?" doing="Fetching the foods of the tested tables." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <Asked foods={load.value.foods} altitudeM={load.value.altitudeM} query={query} />;
}

interface AskedProps {
  readonly foods: KeepingFoods;
  readonly altitudeM: number;
  readonly query: URLSearchParams;
}

function Asked({ foods, altitudeM, query }: AskedProps) {
  const fields = keepingFields(query);
  const asked = askedOf(fields, foods);
  const key = asked.kind === "ask" ? JSON.stringify(asked.query) : "nothing";
  const { load } = useLoad<KeepingAnswer | null>(key, async (signal) => (asked.kind === "ask" ? keeping(asked.query, signal) : null));
  const answer = asked.kind === "ask" && load.state === "ready" ? load.value : null;
  const problem = load.state === "failed" ? load.problem : null;
  const faults = asked.kind === "wrong" ? asked.faults : (problem?.fields.map(({ path, message }) => ({ field: path === "altitudeM" ? "altitude" : path, text: message })) ?? []);
  return (
    <>
      <Answer live>{answer ? sentenceOf(answer) : "Can I keep this? Say what it is and how you mean to keep it."}</Answer>
      {problem && <ProblemNote key={key} lead={problem.message} faults={faults} />}
      <KeepingForm key={key} foods={foods} fields={fields} faults={faults} altitudeM={altitudeM} asked={answer !== null} />
      {answer && <AnswerView answer={answer} />}
    </>
  );
}
