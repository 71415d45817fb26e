/** The sound of a timer. A browser lets a page sound only after a press on it, so until then the ring is seen and not heard. */
import { useEffect, useRef, useState } from "preact/hooks";

export interface Bell {
  readonly armed: boolean;
  /** Call it within a press. */
  readonly arm: () => void;
}

const EVERY_MS = 1600;
const STROKE_S = 0.35;
/** Two strokes, A5 and E6. */
const STROKES_HZ = [880, 1318.5];
const VIBRATE_MS = [250, 120, 250];

export function useBell(ringing: boolean): Bell {
  const sound = useRef<AudioContext | null>(null);
  const [armed, setArmed] = useState(false);
  useEffect(() => {
    if (!ringing || !armed) return;
    strike(sound.current);
    const every = setInterval(() => strike(sound.current), EVERY_MS);
    return () => clearInterval(every);
  }, [ringing, armed]);
  useEffect(() => () => void sound.current?.close(), []);
  const arm = (): void => {
    if (typeof AudioContext === "undefined") return;
    sound.current ??= new AudioContext();
    void sound.current.resume().then(() => setArmed(true));
  };
  return { armed, arm };
}

function strike(sound: AudioContext | null): void {
  if (!sound) return;
  STROKES_HZ.forEach((hz, i) => {
    const [tone, loud] = [sound.createOscillator(), sound.createGain()];
    const at = sound.currentTime + i * STROKE_S;
    tone.frequency.value = hz;
    loud.gain.setValueAtTime(0.4, at);
    loud.gain.exponentialRampToValueAtTime(0.001, at + STROKE_S);
    tone.connect(loud).connect(sound.destination);
    tone.start(at);
    tone.stop(at + STROKE_S);
  });
  navigator.vibrate?.(VIBRATE_MS);
}
