/** /larder: what to eat first and where it lies. ?view=account: where the season's grams went. ?view=labels: labels to print. ?count=place: recount one place. */
import { crops, gramAccount, larder, recipeBriefs } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { useFootNote } from "../../parts/foot-note.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { useTitle } from "../../parts/title.ts";
import { Waiting } from "../../parts/waiting.tsx";
import type { PageProps } from "../../pages.ts";
import { AccountView } from "./account-view.tsx";
import { Labels } from "./labels.tsx";
import { LarderView } from "./larder-view.tsx";
import { Recount } from "./recount.tsx";
import "./larder.css";

export default function LarderPage({ query }: PageProps) {
  return query.get("view") === "account" ? <Account season={query.get("season")} /> : <Shelves query={query} />;
}

function Shelves({ query }: { readonly query: URLSearchParams }) {
  const { load, again } = useLoad("larder", async (signal) => {
    const [held, all, book] = await Promise.all([larder(signal), recipeBriefs(signal), crops(signal)]);
    return { held, all, book };
  });
  useFootNote("Freezer dates are for quality at −18 °C, not for safety. Jars: tested processes only. Your local food-safety authority comes first.");
  if (load.state === "waiting") return <Waiting name="Larder" doing="Adding up what went in and out of the larder." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const { held, all, book } = load.value;
  if (query.get("view") === "labels") return <Labels held={held} asked={query.get("lot")} />;
  const counted = held.places.find(({ id }) => id === query.get("count"));
  if (counted) return <Recount key={counted.id} place={counted} held={held} again={again} />;
  return <LarderView held={held} all={all} book={book} again={again} />;
}

function Account({ season }: { readonly season: string | null }) {
  const asked = season !== null && /^\d{4}$/.test(season) ? Number(season) : undefined;
  const { load, again } = useLoad(`account ${asked ?? ""}`, (signal) => gramAccount(asked === undefined ? {} : { season: asked }, signal));
  useTitle("Where the grams went");
  if (load.state === "waiting") return <Waiting name="Where the grams went" doing="Adding up what was picked and what became of it." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <AccountView account={load.value} />;
}
