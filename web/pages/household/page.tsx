/** Who we are, where the garden lies, its weather, what we eat and what we cook with. */
import { crops, health, household, recipeBriefs, tastes, weather } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { Answer } from "../../parts/answer.tsx";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { Afresh } from "./afresh.tsx";
import { EatsForm } from "./eats-form.tsx";
import { PlaceForm } from "./place-form.tsx";
import { Tastes } from "./tastes.tsx";
import { WeatherForm } from "./weather-form.tsx";
import { householdSentence } from "./words.ts";
import { YearForm } from "./year-form.tsx";
import "./household.css";

export default function HouseholdPage() {
  const { load, again } = useLoad("household", async (signal) => {
    const [home, held, book, liked, all, state] = await Promise.all([household(signal), weather(signal), crops(signal), tastes(signal), recipeBriefs(signal), health(signal)]);
    return { home, held, book, liked, all, today: state.today };
  });
  if (load.state === "waiting") return <Waiting name="Household" doing="Fetching what you said about the household." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const { home, held, book, liked, all, today } = load.value;
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
      <div class="two-up">
        <YearForm home={home} book={book} today={today} again={again} />
        <Tastes tastes={liked} recipes={all} again={again} />
      </div>
      <Afresh name={home.name} />
    </>
  );
}
