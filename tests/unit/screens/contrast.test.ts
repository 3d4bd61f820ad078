import { readFileSync } from 'node:fs';

import { describe, expect, it } from 'vitest';

/**
 * Contrast as WCAG 2.2 defines it: (L1 + 0.05) / (L2 + 0.05) of relative luminances, sRGB.
 * Source: W3C, Web Content Accessibility Guidelines 2.2, "relative luminance" and "contrast ratio"
 * (formula from memory; black on white must give 21).
 */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].toSorted((x, y) => x - y);
  return (high! + 0.05) / (low! + 0.05);
}

const css = readFileSync(new URL('../../../src/screens/look/tokens.css', import.meta.url), 'utf8');

function colours(block: RegExp): Record<string, string> {
  const text = block.exec(css)?.[1] ?? '';
  return Object.fromEntries(
    [...text.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map((found) => [found[1]!, found[2]!]),
  );
}

const light = colours(/:root,\s*:root\[data-theme='light'\] \{([^}]*)\}/);
const darkChosen = colours(/\n:root\[data-theme='dark'\] \{([^}]*)\}/);
const darkSystem = colours(/prefers-color-scheme: dark\) \{\s*:root[^{]*\{([^}]*)\}/);

const dark = { ...light, ...darkChosen };

it('knows black on white', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
});

it('has the same dark colours whether the system or the person chose them', () => {
  expect(Object.keys(darkChosen).length).toBeGreaterThan(8);
  expect(darkSystem).toEqual(darkChosen);
});

describe.each([
  ['light', light],
  ['dark', dark],
])('contrast on the %s screen', (_name, theme) => {
  it.each([
    ['ink', 'ground', 7],
    ['ink', 'sheet', 7],
    ['ink', 'rim', 7],
    ['ink', 'warning-sheet', 7],
    ['ground', 'ink', 7],
    ['laser-green', 'ground', 7],
    ['laser-red', 'ground', 7],
    ['warning', 'ground', 7],
    ['chalk', 'tyre', 7],
    ['ink-soft', 'ground', 4.5],
    ['ink-soft', 'sheet', 4.5],
    ['warning', 'sheet', 4.5],
    // Shapes and marks that are no letters: 3:1 (WCAG 1.4.11).
    ['laser-green-on-tyre', 'tyre', 3],
    ['laser-red-on-tyre', 'tyre', 3],
    ['laser-green', 'rim', 3],
    ['laser-red', 'rim', 3],
  ])('%s on %s is at least %f', (front, back, least) => {
    expect(contrast(theme[front]!, theme[back]!)).toBeGreaterThanOrEqual(least);
  });
});
