import type { KeepingAnswer } from "#shared/contracts/keeping.ts";
import type { KeepAnswer } from "#shared/engines/preservation/index.ts";

interface Named {
  readonly id: string;
  readonly text: string;
}

export function toContract(food: string, way: KeepingAnswer["way"], altitudeM: number | null, answer: KeepAnswer): KeepingAnswer {
  const source = ({ id, text }: Named): Named => ({ id, text });
  const { may, answer: sentence, processes, figures, keeps, never, instead, cautions, sources } = answer;
  return {
    food,
    way,
    altitudeM,
    may,
    answer: sentence,
    processes: processes.map((one) => ({ ...one, lines: one.lines.map((line) => ({ ...line })), acid: [...one.acid], more: [...one.more], notes: [...one.notes], sources: one.sources.map(source) })),
    figures: figures.map((figure) => ({ text: figure.text, source: source(figure.source) })),
    keeps: keeps.map((kept) => ({ ...kept, best: kept.best && { ...kept.best }, safe: kept.safe && { ...kept.safe }, source: source(kept.source) })),
    never: never.map((one) => ({ text: one.text, source: source(one.source) })),
    instead: instead.map((one) => ({ ...one })),
    cautions: [...cautions],
    sources: sources.map(source),
  };
}
