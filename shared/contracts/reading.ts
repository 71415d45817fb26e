/** How contracts are read where code may not be made from strings, as under the pages' content policy. */
import { z } from "zod";

/** The parser compiles its checks from strings where it may; after this call it does not try. */
export function readWithoutCompiling(): void {
  z.config({ jitless: true });
}
