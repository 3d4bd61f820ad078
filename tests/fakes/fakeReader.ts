import {
  SECTOR_COUNT,
  type CreateSweepReader,
  type SweepProgress,
} from '../../src/contract/sweep.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';

/**
 * Stands in for the measuring core where a test is about what carries pictures to it. Looks at
 * nothing but counts and times; its reading is always the same and says so in its angle.
 */
export const createSweepReader: CreateSweepReader = () => {
  let framesSeen = 0;
  return {
    addFrame(picture: YuvPicture): SweepProgress {
      framesSeen += 1;
      return {
        stage: 'looking',
        trouble: null,
        framesSeen,
        timeS: picture.timeS,
        coveredDeg: 0,
        coveredSectors: Array.from({ length: SECTOR_COUNT }, () => false),
        turnDeg: null,
        markSeen: false,
        turningDegPerS: 0,
        edgeHeightMm: null,
        enough: false,
        overlay: null,
      };
    },
    finish: () => ({
      reading: {
        format: 'tiltsweep.reading/1',
        status: 'refused',
        refusals: [{ code: 'too-few-frames', message: 'Stand-in reader.', remedy: 'None.' }],
        turn: null,
      },
      trace: null,
    }),
    needs: () => true,
    secondLook: () => null,
    sightNow: () => null,
    takeNotes: () => null,
  };
};
