/** What found no place: neighbours with the same reason are kept together, so that ten thousand lines are not ten thousand entries. */
import type { NotUnderstood } from "./types.ts";

export class LeftOver {
  private readonly found: { lines: string[]; why: string }[] = [];

  add(text: string, why: string): void {
    const last = this.found[this.found.length - 1];
    if (last?.why === why) last.lines.push(text);
    else this.found.push({ lines: [text], why });
  }

  all(): NotUnderstood[] {
    return this.found.map(({ lines, why }) => ({ text: lines.join("\n"), why }));
  }
}
