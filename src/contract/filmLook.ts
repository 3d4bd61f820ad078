import type { SweepReader, SweepReaderOptions } from './sweep.ts';

/** How a film's pictures are read in one look over them, as options of that look's reader. */
export type FilmLook = Pick<SweepReaderOptions, 'sight' | 'seenLine' | 'mayLeaveOut'>;

export const FIRST_LOOK: FilmLook = { mayLeaveOut: true };

/**
 * The look over the same film that follows one in which `taught` was learnt (`secondLook`); null when
 * the reading stands. At most two follow: one at all pictures, and one with a better view.
 */
export function lookAfter(
  look: FilmLook,
  taught: ReturnType<SweepReader['secondLook']>,
): FilmLook | null {
  if (taught === null || look.sight) return null;
  if (taught !== 'whole') return taught;
  return look.mayLeaveOut ? {} : null;
}
