/** What was pasted, as the service reads it: a page's own recipe data where it is that, else plain text. Pure. */
import type { RecipeToRead } from "#shared/contracts/recipe-reading.ts";

export function bodyToRead(text: string): RecipeToRead {
  const trimmed = text.trim();
  if (!/^[[{]/.test(trimmed)) return { text };
  try {
    return { jsonLd: JSON.parse(trimmed) as unknown };
  } catch {
    return { text };
  }
}
