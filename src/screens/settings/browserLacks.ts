/** What the program would use of a browser and can do without, with a loss that is told. */
export const BROWSER_PARTS = ['decoder', 'encoder', 'wakeLock'] as const;
export type BrowserPart = (typeof BROWSER_PARTS)[number];

const HAS: Readonly<Record<BrowserPart, () => boolean>> = {
  decoder: () => 'VideoDecoder' in globalThis,
  encoder: () => 'VideoEncoder' in globalThis,
  wakeLock: () => 'wakeLock' in navigator,
};

/** Those that this browser lacks. What a camera cannot do is told beside it, once it is open. */
export function browserLacks(): readonly BrowserPart[] {
  return BROWSER_PARTS.filter((part) => !HAS[part]());
}
