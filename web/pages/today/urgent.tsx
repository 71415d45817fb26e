/** What cannot wait, each with its way on; and for a household that has just begun, what is still to be put in, first things first. */
import type { Today } from "#shared/contracts/today.ts";
import { inOurUnits } from "../../format.ts";

export function Urgent({ urgent }: Pick<Today, "urgent">) {
  const setup = urgent.filter(({ kind }) => kind === "setup");
  return (
    <>
      {urgent.map(
        ({ kind, text, href }) =>
          kind !== "setup" && (
            <p class={`notice${kind === "frost" ? " frost" : ""}`} key={text}>
              {inOurUnits(text)}{" "}
              <a class="hitline" href={href}>
                {kind === "frost" ? "See the beds" : "See what to do with it"}
              </a>
            </p>
          ),
      )}
      {setup.length > 0 && (
        <section class="sec" aria-labelledby="begin-h">
          <h2 id="begin-h">To begin with</h2>
          <ul class="rows jobs">
            {setup.map(({ text, href }, i) => (
              <li key={text}>
                <p>{text}</p>
                <a class={`btn ${i === 0 ? "main" : "word"}`} href={href}>
                  Put it in<span class="vh">: {text}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
