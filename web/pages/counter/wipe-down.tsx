/** Ten seconds in which a wet cloth may go over the glass: touches do nothing. A key, or the marked place pressed twice, ends it sooner. */
import { useEffect, useRef, useState } from "preact/hooks";

const SECONDS = 10;

export function WipeDown({ onEnd }: { readonly onEnd: () => void }) {
  const [left, setLeft] = useState(SECONDS);
  const [once, setOnce] = useState(false);
  const cover = useRef<HTMLDivElement>(null);
  const end = useRef(onEnd);
  end.current = onEnd;
  useEffect(() => {
    cover.current?.querySelector("button")?.focus();
    const until = Date.now() + SECONDS * 1000;
    const every = setInterval(() => {
      const seconds = Math.ceil((until - Date.now()) / 1000);
      if (seconds <= 0) end.current();
      else setLeft(seconds);
    }, 250);
    const onKey = (event: KeyboardEvent): void => {
      event.preventDefault();
      end.current();
    };
    addEventListener("keydown", onKey);
    return () => {
      clearInterval(every);
      removeEventListener("keydown", onKey);
    };
  }, []);
  return (
    <div class="wipe" role="dialog" aria-modal="true" aria-label="Wipe down" ref={cover}>
      <p>
        Wipe now. Touch does nothing for <b class="serif">{left}</b> s.
      </p>
      <button type="button" class="btn" onClick={() => (once ? onEnd() : setOnce(true))}>
        {once ? "Once more to go on" : "Press twice to go on"}
      </button>
    </div>
  );
}
