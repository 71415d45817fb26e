/** The answer: how long it keeps as a picture, tested processes, figures, what must not be done, what to do instead, cautions and sources. */
import type { KeepingAnswer } from "#shared/contracts/keeping.ts";
import { capital } from "../../format.ts";
import { written } from "../../parts/written.ts";
import { CANNER_WORDS, JAR_WORDS } from "./keeping-form.ts";
import { KeepsPlate } from "./keeps-plate.tsx";

export function AnswerView({ answer }: { readonly answer: KeepingAnswer }) {
  return (
    <>
      {answer.never.map(({ text, source }) => (
        <div class="notice" key={text}>
          <p>{written(text)}</p>
          <p class="say">{source.text}</p>
        </div>
      ))}
      {answer.keeps.length > 0 && <KeepsPlate keeps={answer.keeps} />}
      {answer.processes.length > 0 && (
        <section class="sec processes" aria-labelledby="tested-h">
          <h2 id="tested-h">{answer.processes.length === 1 ? "The tested process" : `${answer.processes.length} tested processes: choose one and keep to it`}</h2>
          {answer.processes.map((process) => (
            <details key={process.key} open={answer.processes.length <= MOST_OPEN || undefined}>
              <summary class="word">{process.title}</summary>
              <Process process={process} />
            </details>
          ))}
        </section>
      )}
      {answer.figures.length > 0 && (
        <Section id="figures" title="Figures">
          {answer.figures.map(({ text, source }) => (
            <li key={text}>
              <p>{written(text)}</p>
              <p class="say">{source.text}</p>
            </li>
          ))}
        </Section>
      )}
      {answer.instead.length > 0 && (
        <Section id="instead" title={answer.may ? "Other ways" : "What to do instead"}>
          {answer.instead.map(({ way, text }) => (
            <li key={`${way}${text}`}>
              <i class="what">{way}</i> {written(text)}
            </li>
          ))}
        </Section>
      )}
      {answer.cautions.length > 0 && (
        <Section id="care" title="Take care">
          {answer.cautions.map((text) => (
            <li key={text}>{written(text)}</li>
          ))}
        </Section>
      )}
      {answer.sources.length > 0 && (
        <details class="sec">
          <summary class="word">Where the figures come from</summary>
          <ul class="rows">
            {answer.sources.map(({ id, text }) => (
              <li key={id}>{text}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** More than this many stand closed, by name. */
const MOST_OPEN = 2;

function Section({ id, title, children }: { readonly id: string; readonly title: string; readonly children: preact.ComponentChildren }) {
  return (
    <section class="sec" aria-labelledby={`${id}-h`}>
      <h2 id={`${id}-h`}>{title}</h2>
      <ul class="rows keeping-rows">{children}</ul>
    </section>
  );
}

function Process({ process }: { readonly process: KeepingAnswer["processes"][number] }) {
  const pressed = process.lines.some(({ psi }) => psi !== null);
  return (
    <div class="process">
      {process.acid.map((text) => (
        <p class="notice" key={text}>
          <b>{written(text)}</b>
        </p>
      ))}
      {process.lines.length > 0 && (
        <div class="scroll" tabIndex={0} role="region" aria-label={`Times for ${process.title}`}>
          <table>
            <thead>
              <tr>
                <th scope="col">Jar</th>
                <th scope="col">Pack</th>
                <th scope="col">Canner</th>
                <th scope="col" class="num">
                  Minutes
                </th>
                {pressed && (
                  <th scope="col" class="num">
                    Pressure, psi
                  </th>
                )}
              </tr>
            </thead>
            <tbody>
              {process.lines.map((line) => (
                <tr key={line.text}>
                  <th scope="row">{JAR_WORDS[line.jar]}</th>
                  <td>{line.pack}</td>
                  <td>{CANNER_WORDS[line.canner]}</td>
                  <td class="num">{line.minutes}</td>
                  {pressed && <td class="num">{line.psi ?? "–"}</td>}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {[...process.more, ...process.notes].map((text) => (
        <p class="under" key={text}>
          {capital(written(text))}
        </p>
      ))}
      {process.sources.map(({ id, text }) => (
        <p class="say" key={id}>
          {text}
        </p>
      ))}
    </div>
  );
}
