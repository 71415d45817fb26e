/** Who we are, where the garden lies, its weather, what we eat and what we cook with. */
import { crops, household, weather } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { Answer } from "../../parts/answer.tsx";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { Afresh } from "./afresh.tsx";
import { EatsForm } from "./eats-form.tsx";
import { PlaceForm } from "./place-form.tsx";
import { WeatherForm } from "./weather-form.tsx";
import { householdSentence } from "./words.ts";
import "./household.css";

export default function HouseholdPage() {
  const { load, again } = useLoad("household", async (signal) => {
    const [home, held, book] = await Promise.all([household(signal), weather(signal), crops(signal)]);
    return { home, held, book };
  });
  if (load.state === "waiting") return <Waiting name="Household" doing="Fetching what you said about the household." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const { home, held, book } = load.value;
  return (
    <>
      <Answer>{householdSentence(home, held)}</Answer>
      <div class="two-up">
        <PlaceForm home={home} again={again} />
        <div>
          <WeatherForm held={held} again={again} />
        </div>
      </div>
      <EatsForm home={home} book={book} again={again} />
      <Afresh name={home.name} />
    </>
  );
}
