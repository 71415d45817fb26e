/** Where the last entry stands: sending, then saved (the server has committed it) or not sent. Shown beside the wordmark. */
import { signal } from "@preact/signals";

export type SendState =
  | { readonly kind: "quiet" }
  | { readonly kind: "sending" }
  | { readonly kind: "saved"; readonly at: Date }
  | { readonly kind: "not-sent" }
  | { readonly kind: "refused" };

export const sendState = signal<SendState>({ kind: "quiet" });

let underWay = 0;

/** Follows one entry to its end; several at once read as sending until the last is through. */
export async function following<T>(entry: Promise<T>, noAnswer: (problem: unknown) => boolean): Promise<T> {
  underWay++;
  sendState.value = { kind: "sending" };
  try {
    const answer = await entry;
    underWay--;
    if (underWay === 0) sendState.value = { kind: "saved", at: new Date() };
    return answer;
  } catch (problem) {
    underWay--;
    sendState.value = { kind: noAnswer(problem) ? "not-sent" : "refused" };
    throw problem;
  }
}
