/**
 * A block of the hands lane dragged with mouse or pen. It follows the pointer and goes back where it was when let go; what becomes of it is
 * decided by the referee. A finger scrolls the lanes instead: there, and with keys, the list has buttons for the same.
 */
import { MOVE_MIN } from "./moves.ts";

/** Less than this is a press and no drag, in px. */
const HELD_PX = 4;

export function dragBlock(event: PointerEvent, endMin: number, onDrag: (first: number, byMin: number) => void): void {
  const block = event.target instanceof Element ? event.target.closest<SVGGElement>("[data-step]") : null;
  const lane = Number(block?.ownerSVGElement?.dataset["lane"]);
  if (!block || !(lane > 0) || event.pointerType === "touch" || event.button !== 0) return;
  event.preventDefault();
  const minutesOf = (at: PointerEvent): number => Math.round((((at.clientX - event.clientX) / lane) * endMin) / MOVE_MIN) * MOVE_MIN;
  const follow = (at: PointerEvent): void => block.setAttribute("transform", `translate(${(minutesOf(at) * lane) / endMin} 0)`);
  const letGo = (at: PointerEvent): void => {
    stop();
    if (Math.abs(at.clientX - event.clientX) >= HELD_PX) onDrag(Number(block.dataset["step"]), minutesOf(at));
  };
  const stop = (): void => {
    block.removeAttribute("transform");
    removeEventListener("pointermove", follow);
    removeEventListener("pointerup", letGo);
    removeEventListener("pointercancel", stop);
  };
  addEventListener("pointermove", follow);
  addEventListener("pointerup", letGo);
  addEventListener("pointercancel", stop);
}
