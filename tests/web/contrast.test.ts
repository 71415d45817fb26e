/**
 * Contrast of every pair that the pages use, computed from the tokens with the formula of WCAG 2.2
 * (definitions “relative luminance” and “contrast ratio”; success criteria 1.4.3 and 1.4.11). The sun theme has the household's own, higher bar.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const css = readFileSync(new URL("../../web/styles/tokens.css", import.meta.url), "utf8");

function tokensAfter(mark: string): Record<string, string> {
  const at = css.indexOf(mark);
  if (at < 0) throw new Error(`no theme ${mark} in tokens.css`);
  const block = css.slice(at, css.indexOf("}", at));
  const tokens: Record<string, string> = {};
  for (const [, name, colour] of block.matchAll(/--([a-z0-9-]+):\s*(#[0-9a-f]{6})/g)) if (name && colour) tokens[name] = colour;
  return tokens;
}

const THEMES = {
  light: tokensAfter(':root, [data-theme="light"]'),
  dark: tokensAfter('\n[data-theme="dark"]'),
  sun: tokensAfter('[data-theme="sun"]'),
};

/** WCAG 2.2, “relative luminance”. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const value = parseInt(hex.slice(i, i + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

type Use = "text" | "graphic";
const PAIRS: readonly (readonly [front: string, ground: string, use: Use])[] = [
  ["ink", "paper", "text"],
  ["ink", "paper-2", "text"],
  ["ink-2", "paper", "text"],
  ["ink-2", "paper-2", "text"],
  ["leaf", "paper", "text"],
  ["leaf", "paper-2", "text"],
  ["on-leaf", "leaf", "text"],
  ["beet", "paper", "text"],
  ["beet", "paper-2", "text"],
  ["on-beet", "beet", "text"],
  ["cold", "paper", "text"],
  ["cold", "paper-2", "text"],
  // a chosen option: paper words on an ink field
  ["paper", "ink", "text"],
  ["rule-2", "paper", "graphic"],
  ["rule-2", "paper-2", "graphic"],
  ["hill", "paper", "graphic"],
  ["hill", "paper-2", "graphic"],
  ["hill", "hill-edge", "graphic"],
  ["picked", "paper", "graphic"],
  ["picked", "paper-2", "graphic"],
];

/** 1.4.3: text 4.5; 1.4.11: graphics 3. In the sun 7 on paper and on filled fields, 4.5 on the tint. */
function needed(theme: string, ground: string, use: Use): number {
  if (ground === "hill-edge") return 3;
  if (theme === "sun") return ground === "paper-2" ? 4.5 : 7;
  return use === "text" ? 4.5 : 3;
}

describe("the formula", () => {
  it("gives 21 for black on white, as WCAG says, and 4.54 for the lightest grey that passes (value from memory)", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
    expect(contrast("#777777", "#ffffff")).toBeLessThan(4.5);
  });
});

describe.each(Object.entries(THEMES))("the %s theme", (name, theme) => {
  it.each(PAIRS)("%s on %s (%s) is plain to see", (front, ground, use) => {
    const [a, b] = [theme[front], theme[ground]];
    if (a === undefined || b === undefined) throw new Error(`${name} has no ${front} or ${ground}`);
    expect(contrast(a, b)).toBeGreaterThanOrEqual(needed(name, ground, use));
  });
});

it("without a chosen theme the reader's preference for dark gives the dark theme, to the letter", () => {
  expect(tokensAfter(":root:not([data-theme])")).toEqual(THEMES.dark);
});
