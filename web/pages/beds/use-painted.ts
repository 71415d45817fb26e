/** False until the page's first picture has been painted: what is long and lies further down is drawn after the sentence stands. */
import { useEffect, useState } from "preact/hooks";

export function usePainted(): boolean {
  const [painted, setPainted] = useState(false);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    // a frame is painted between the two
    const frame = requestAnimationFrame(() => (timer = setTimeout(() => setPainted(true))));
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, []);
  return painted;
}
