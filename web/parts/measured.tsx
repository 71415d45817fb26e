/** Gives a picture the width it has and the reader's own text size, and draws it again when either changes. */
import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

export interface Room {
  /** CSS pixels. */
  readonly width: number;
  /** CSS pixels in one rem. */
  readonly rem: number;
}

interface MeasuredProps {
  readonly class?: string;
  readonly children: (room: Room) => ComponentChildren;
}

export function Measured({ class: name, children }: MeasuredProps) {
  const box = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState<Room | null>(null);
  useLayoutEffect(() => {
    const measure = (): void => {
      const width = box.current?.clientWidth ?? 0;
      const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
      setRoom((before) => (before?.width === width && before.rem === rem ? before : { width, rem }));
    };
    measure();
    const watch = new ResizeObserver(measure);
    if (box.current) watch.observe(box.current);
    return () => watch.disconnect();
  }, []);
  return (
    <div class={name} ref={box}>
      {room !== null && room.width > 0 ? children(room) : null}
    </div>
  );
}
