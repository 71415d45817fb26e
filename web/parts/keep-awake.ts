/** Keeps the screen on while it is asked to, where the browser can. A lock is lost when the page is hidden, so it is taken again on return. */
import { useEffect, useState } from "preact/hooks";

export type Awake = "off" | "on" | "refused" | "cannot";

export function useKeepAwake(wanted: boolean): Awake {
  const [awake, setAwake] = useState<Awake>("off");
  useEffect(() => {
    if (!wanted) return setAwake("off");
    if (!("wakeLock" in navigator)) return setAwake("cannot");
    let lock: WakeLockSentinel | null = null;
    let left = false;
    const take = async (): Promise<void> => {
      if (document.visibilityState !== "visible") return;
      try {
        const taken = await navigator.wakeLock.request("screen");
        if (left) return void taken.release();
        lock = taken;
        setAwake("on");
        taken.addEventListener("release", () => setAwake((before) => (before === "on" ? "off" : before)));
      } catch {
        // low on power, or not allowed by the device's owner
        setAwake("refused");
      }
    };
    const inSight = (): void => void take();
    inSight();
    document.addEventListener("visibilitychange", inSight);
    return () => {
      left = true;
      document.removeEventListener("visibilitychange", inSight);
      void lock?.release();
    };
  }, [wanted]);
  return awake;
}
