/** Moves the focus to a control that will be there after the next drawing: the row that a press has made, or what is left where one has gone. */
import { useEffect, useRef } from "preact/hooks";

export function useFocusLater(): (...ids: readonly string[]) => void {
  const wanted = useRef<readonly string[]>([]);
  useEffect(() => {
    const control = wanted.current.map((id) => document.getElementById(id)).find((found) => found !== null);
    if (!control) return;
    wanted.current = [];
    control.focus();
  });
  return (...ids) => {
    wanted.current = ids;
  };
}
