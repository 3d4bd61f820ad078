import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';

/** A fall of luma in the stacked profile of all blocks. */
export interface StackPeak {
  /** Height above the laser plane at lean zero, mm. */
  readonly heightMm: number;
  /** Mean step there, in standard deviations of the profile. */
  readonly strength: number;
}

/**
 * A groove is the plainest thing on a tread: its wall falls by more than a standard deviation of the
 * profile. Of a tread without one the best of all leans makes up 0.6 from dust and slots.
 */
export const PLAIN_STRENGTH = 0.75;
/** A tap on the picture is good to a few pixels, some 3 mm. */
export const TAP_REACH_MM = 4;
/**
 * Of several edges the topmost counts that is at least this plain beside the plainest of the whole
 * tread. Where the line's glow hides the edge near it, what is left there is seams and dust, at a
 * third and less; grooves of one tread are three quarters as plain as each other, and more.
 */
const TOPMOST_SHARE = 0.5;
/** Two edges are alike when the one is so plain beside the other: dust and light make as much between looks. */
const ALIKE_SHARE = 0.85;
/** A tap that is nearer to one of them by more than its own error means that one, mm. */
const TAP_TELLS_MM = 2;
/**
 * Blocks look for their edge within 3 mm of where all together have it: another as plain so near is
 * taken for it here and there. Falls of one rounded edge lie closer together than the lower bound, mm.
 */
const HOP_FROM_MM = 2.4;
const HOP_TO_MM = 4.5;

/**
 * The edge among the falls near the line: the tapped one, else the topmost plain one.
 *
 * @param tapMm height of the tap at lean zero, mm; null without one
 * @param plainest strength of the plainest fall anywhere on the tread
 * @returns the edge; null when there is none, or it does not show beside the line just now; `edge-ambiguous` when two serve equally
 */
export function chooseEdge(
  peaks: readonly StackPeak[],
  tapMm: number | null,
  plainest = strongest(peaks),
): Outcome<StackPeak | null, 'edge-ambiguous'> {
  const twin = twinOfPlainest(peaks);
  if (twin) return failed('edge-ambiguous', { apartMm: round(twin) });
  if (tapMm !== null) return tappedEdge(peaks, tapMm);
  const least = leastPlain(plainest);
  const good = peaks.filter((p) => p.strength >= least);
  return succeeded(
    good.reduce<StackPeak | null>((a, b) => (a && a.heightMm > b.heightMm ? a : b), null),
  );
}

/** What a fall must have to be an edge, beside the plainest of the tread. */
export const leastPlain = (plainest: number): number =>
  Math.max(PLAIN_STRENGTH, TOPMOST_SHARE * plainest);

function tappedEdge(
  peaks: readonly StackPeak[],
  tapMm: number,
): Outcome<StackPeak | null, 'edge-ambiguous'> {
  const away = (p: StackPeak) => Math.abs(p.heightMm - tapMm);
  const near = peaks.filter((p) => away(p) <= TAP_REACH_MM);
  const alike = near
    .filter((p) => p.strength >= ALIKE_SHARE * strongest(near))
    .sort((a, b) => away(a) - away(b));
  const [first, second] = alike;
  if (second && away(second) - away(first) < TAP_TELLS_MM) {
    return failed('edge-ambiguous', { apartMm: round(Math.abs(second.heightMm - first.heightMm)) });
  }
  return succeeded(first ?? null);
}

/** Distance of the plainest edge from another that is as plain and so near that blocks may hop, mm. */
function twinOfPlainest(peaks: readonly StackPeak[]): number | null {
  const most = strongest(peaks);
  const plainest = peaks.find((p) => p.strength === most);
  for (const p of peaks) {
    const apart = Math.abs(p.heightMm - (plainest?.heightMm ?? NaN));
    if (apart >= HOP_FROM_MM && apart <= HOP_TO_MM && p.strength >= ALIKE_SHARE * most)
      return apart;
  }
  return null;
}

function strongest(peaks: readonly StackPeak[]): number {
  return peaks.reduce((most, p) => Math.max(most, p.strength), 0);
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10;
}
