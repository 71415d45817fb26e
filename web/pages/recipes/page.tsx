/** /recipes: the list. /recipes/{id}: one recipe. /recipes/new: one of our own, ?paste from elsewhere; ?change on a recipe edits it. */
import { crops, recipeBriefs } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import type { PageProps } from "../../pages.ts";
import { RecipeList } from "./recipe-list.tsx";
import "./recipes.css";

export default function RecipesPage({ id, query }: PageProps) {
  return id === undefined ? <List query={query} /> : <Further id={id} query={query} />;
}

/** All but the list comes when it is asked for, so that the list does not wait for what forms need. */
function Further({ id, query }: { readonly id: string; readonly query: URLSearchParams }) {
  const { load, again } = useLoad("further", () => import("./recipe-pages.tsx"));
  if (load.state === "waiting") return <Waiting name="Recipe" doing="Fetching the recipe." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <load.value.RecipePages id={id} query={query} />;
}

function List({ query }: { readonly query: URLSearchParams }) {
  const { load, again } = useLoad("recipes", async (signal) => {
    const [all, book] = await Promise.all([recipeBriefs(signal), crops(signal)]);
    return { all, book };
  });
  const asked = { crop: query.get("crop"), way: query.get("way"), words: query.get("words") ?? "", hand: query.has("hand") };
  if (load.state === "waiting") return <Waiting name="Recipes" doing="Fetching the recipes." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <RecipeList {...load.value} asked={asked} />;
}
