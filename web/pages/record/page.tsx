/** Season record: what was forecast against what came. */
import * as calls from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { RecordView, type RecordData } from "./view.tsx";
import "./record.css";

export default function RecordPage() {
  const { load, again } = useLoad("record", fetchRecord);
  if (load.state === "waiting") return <Waiting name="Season record" doing="Forecasting every finished sowing once more from what was known then." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <RecordView data={load.value} />;
}

async function fetchRecord(signal: AbortSignal): Promise<RecordData> {
  const [record, health] = await Promise.all([calls.trackRecord(signal), calls.health(signal)]);
  return { record, today: health.today };
}
