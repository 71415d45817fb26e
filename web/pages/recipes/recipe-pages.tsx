/** One recipe, its form, and a new one: with the contracts that forms are read by, which the list does without. */
import { crops, recipe, recipes } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { useTitle } from "../../parts/title.ts";
import { Waiting } from "../../parts/waiting.tsx";
import type { PageProps } from "../../pages.ts";
import { Paste } from "./paste.tsx";
import { RecipeEditor } from "./recipe-editor.tsx";
import { RecipeSheet } from "./recipe-sheet.tsx";
import { scaleFields } from "./scale-form.ts";

export function RecipePages({ id = "new", query }: Pick<PageProps, "id" | "query">) {
  return id === "new" ? <NewOne pasted={query.has("paste")} /> : <One id={id} query={query} />;
}

function One({ id, query }: { readonly id: string; readonly query: URLSearchParams }) {
  const { load, again } = useLoad(id, async (signal) => {
    const [one, book, all] = await Promise.all([recipe(id, signal), crops(signal), recipes({}, signal)]);
    return { one, book, all };
  });
  useTitle(load.state === "ready" ? load.value.one.title : null);
  if (load.state === "waiting") return <Waiting name="Recipe" doing="Fetching the recipe." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const { one, book, all } = load.value;
  return query.has("change") ? <RecipeEditor stored={one} book={book} all={all} again={again} /> : <RecipeSheet recipe={one} all={all} book={book} amount={scaleFields(query)} again={again} />;
}

function NewOne({ pasted }: { readonly pasted: boolean }) {
  const { load, again } = useLoad("new", async (signal) => {
    const [book, all] = await Promise.all([crops(signal), recipes({}, signal)]);
    return { book, all };
  });
  if (load.state === "waiting") return <Waiting name="A recipe of our own" doing="Fetching the crops that can stand in it." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  if (pasted) return <Paste {...load.value} />;
  return <RecipeEditor stored={null} book={load.value.book} all={load.value.all} again={again} />;
}
