/** What stands around every page: running head, the page itself, foot. */
import type { ComponentType } from "preact";
import { useEffect, useErrorBoundary, useRef, useState } from "preact/hooks";
import { sendState, type SendState } from "./api/send-state.ts";
import { clock } from "./format.ts";
import { household } from "./api/calls.ts";
import { misfit } from "./api/client.ts";
import { loadPage, pageAt, WORDS, type PageEntry, type PageProps } from "./pages.ts";
import { Answer } from "./parts/answer.tsx";
import { footNote } from "./parts/foot-note.ts";
import { place } from "./router.ts";
import { chooseTheme, theme, THEMES } from "./theme.ts";

export function Shell() {
  const { path, query, arrival } = place.value;
  const at = pageAt(path);
  const folder = at?.entry.folder ?? null;
  useEffect(() => {
    // every page writes in the household's units; where this fails, those used last on this device stay
    household().catch(() => undefined);
  }, []);
  return (
    <>
      <a class="skip btn" href="#main" onClick={toMain}>
        To the page
      </a>
      <RunningHead folder={folder} arrival={arrival} />
      <Announcement title={at?.entry.title ?? "No such page"} arrival={arrival} />
      {misfit.value !== null && <Misfit words={misfit.value} />}
      <main id="main" class={folder ? `p-${folder}` : ""} tabIndex={-1}>
        {at ? <Page key={`${folder}/${at.id ?? ""}`} entry={at.entry} {...(at.id === undefined ? {} : { id: at.id })} query={query} /> : <NoPage />}
      </main>
      <Foot />
    </>
  );
}

const toMain = (event: Event): void => {
  event.preventDefault();
  document.getElementById("main")?.focus();
};

function RunningHead({ folder, arrival }: { readonly folder: string | null; readonly arrival: number }) {
  const more = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    if (more.current) more.current.open = false;
  }, [arrival]);
  const word = ({ folder: to, word, wide }: (typeof WORDS)[number], inMore = false) => (
    <a href={`/${to}`} class={wide && !inMore ? "wide" : undefined} aria-current={to === folder ? "page" : undefined}>
      <span>{word}</span>
    </a>
  );
  const wide = WORDS.filter((entry) => entry.wide);
  return (
    <header class="masthead">
      <a class="wordmark" href="/">
        Stillroom
      </a>
      <p class="send" role="status">
        {sendWords(sendState.value)}
      </p>
      <nav class="nav" aria-label="Pages">
        {WORDS.map((entry) => word(entry))}
        {wide.length > 0 && (
          <details class="more" ref={more} onKeyDown={closeOnEscape}>
            <summary>
              <span>More</span>
            </summary>
            <ul>
              {wide.map((entry) => (
                <li key={entry.folder}>{word(entry, true)}</li>
              ))}
            </ul>
          </details>
        )}
      </nav>
    </header>
  );
}

const closeOnEscape = (event: KeyboardEvent): void => {
  const details = event.currentTarget;
  if (event.key !== "Escape" || !(details instanceof HTMLDetailsElement)) return;
  details.open = false;
  details.querySelector("summary")?.focus();
};

function sendWords(state: SendState): string {
  if (state.kind === "quiet") return "All saved";
  if (state.kind === "sending") return "Sending";
  if (state.kind === "saved") return `Saved ${clock(state.at.getHours() * 60 + state.at.getMinutes())}`;
  return state.kind === "not-sent" ? "Not sent" : "Not saved";
}

/** Says the page's name when the reader has gone to it; silent on the first page. */
function Announcement({ title, arrival }: { readonly title: string; readonly arrival: number }) {
  useEffect(() => {
    document.title = `${title} · Stillroom`;
  }, [title, arrival]);
  return (
    <p class="vh" role="status">
      {arrival > 0 ? `${title} page` : ""}
    </p>
  );
}

type PageModule = { readonly Component: ComponentType<PageProps> } | "failed" | null;

function Page({ entry, id, query }: PageProps & { readonly entry: PageEntry }) {
  const [module, setModule] = useState<PageModule>(null);
  const [fault] = useErrorBoundary();
  useEffect(() => {
    let left = false;
    const put = (next: PageModule): void => {
      if (!left) setModule(next);
    };
    loadPage(entry).then(
      (Component) => put({ Component }),
      () => put("failed"),
    );
    return () => {
      left = true;
    };
  }, [entry]);
  if (fault !== undefined) return <NotDrawn />;
  if (module === null) return <div class="answer waits" />;
  if (module === "failed") return <NotFetched />;
  return <module.Component {...(id === undefined ? {} : { id })} query={query} />;
}

function NotFetched() {
  return (
    <>
      <Answer>This page could not be fetched.</Answer>
      <p class="under">The service may be down, or newer than the pages in this window.</p>
      <p class="acts">
        <button type="button" class="btn main" onClick={() => location.reload()}>
          Fetch it again
        </button>
      </p>
    </>
  );
}

/** The page met something it cannot draw, most likely an answer of a newer service. */
function NotDrawn() {
  return (
    <>
      <Answer>This page could not be drawn.</Answer>
      <p class="under">The service may be newer than the pages in this window. What was saved is still saved.</p>
      <p class="acts">
        <button type="button" class="btn main" onClick={() => location.reload()}>
          Fetch it again
        </button>
      </p>
    </>
  );
}

function Misfit({ words }: { readonly words: string }) {
  return (
    <div class="misfit">
      <p class="notice" role="alert">
        {words} Figures on it may be wrong.{" "}
        <button type="button" class="btn word" onClick={() => location.reload()}>
          Fetch the page again
        </button>
      </p>
    </div>
  );
}

function NoPage() {
  return (
    <>
      <Answer>No page stands at this address.</Answer>
      <p class="acts">
        <a class="btn main" href="/">
          Go to the calendar
        </a>
      </p>
    </>
  );
}

const THEME_WORDS = { light: "Light", dark: "Dark", sun: "Sun" } as const;

function Foot() {
  return (
    <footer class="foot">
      <div class="headline-row">
        <p>{footNote.value}</p>
        <p class="themes" role="group" aria-label="Theme">
          {THEMES.map((name) => (
            <button key={name} type="button" class="btn word" aria-pressed={theme.value === name ? "true" : "false"} onClick={() => chooseTheme(name)}>
              {THEME_WORDS[name]}
            </button>
          ))}
        </p>
      </div>
    </footer>
  );
}
