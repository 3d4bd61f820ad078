import type { RefusalCode, RefusalWords } from './refusals.ts';

/**
 * What can go wrong around a sweep rather than in it: files, camera, worker. Same form as
 * {@link REFUSALS}. `countsAs` is the refusal written where only a reading can be written, because
 * `tiltsweep.reading/1` knows no camera and no worker.
 */
export interface TroubleWords extends RefusalWords {
  readonly countsAs: RefusalCode;
}

export const TROUBLES = {
  'film-missing': {
    cause: 'There is no video among the files.',
    remedy: 'Choose the video and its setup file together.',
    secondTime:
      'Hold Ctrl (or press long on a tablet) to choose two files at once: the .mp4 and the .setup.json.',
    countsAs: 'file-unreadable',
  },
  'film-several': {
    cause: 'There is more than one video among the files.',
    remedy: 'Choose one video and its setup file.',
    secondTime: 'Read the sweeps one after the other, the earlier one first.',
    countsAs: 'file-unreadable',
  },
  'film-empty': {
    cause: 'The video file is empty.',
    remedy: 'Copy the video from the camera again, then choose the copy.',
    secondTime: 'Record the sweep again: this file holds nothing.',
    countsAs: 'file-unreadable',
  },
  'film-cut-off': {
    cause: 'The video file breaks off before its end.',
    remedy: 'Copy the whole file from the camera again, then read it again.',
    secondTime: 'Record the sweep again and wait until the camera has saved it.',
    countsAs: 'file-unreadable',
  },
  'film-too-long': {
    cause: 'The film is longer than is read at once; only its first part was read.',
    remedy: 'Cut the film to the one slow turn, then read it again.',
    secondTime: 'Record the turn alone: a minute is plenty.',
    countsAs: 'turn-incomplete',
  },
  'film-played': {
    cause: 'This browser cannot take the film apart; it was played and measured as it ran.',
    remedy: 'Nothing needs to be done; pictures that came too fast were left out.',
    secondTime: 'Read it in another browser to have every picture measured.',
    countsAs: 'file-unreadable',
  },
  'film-coding-unknown': {
    cause: 'This browser cannot decode the way this video is coded.',
    remedy: 'Open the file in another browser, or record in H.264 (“most compatible”).',
    secondTime: 'Record the sweep with this program’s own camera screen.',
    countsAs: 'file-unreadable',
  },
  'setup-missing': {
    cause: 'There is no setup file beside the video.',
    remedy: 'Choose the video and its .setup.json together.',
    secondTime: 'Fill in the setup form, save it beside the video, then choose both.',
    countsAs: 'setup-invalid',
  },
  'setup-unreadable': {
    cause: 'A JSON file among these is neither a setup nor a reading of this program.',
    remedy: 'Choose the .setup.json that belongs to the video.',
    secondTime: 'Make a new setup from the form instead of editing the file.',
    countsAs: 'setup-invalid',
  },
  'sample-unreachable': {
    cause: 'The built-in sample could not be loaded.',
    remedy: 'Reload the page, then try again.',
    secondTime: 'Start the program again on the computer that serves it.',
    countsAs: 'file-unreadable',
  },
  'camera-missing': {
    cause: 'No camera was found.',
    remedy: 'Plug a camera in, or read a recorded video.',
    secondTime: 'Reload the page after the camera is plugged in.',
    countsAs: 'too-few-frames',
  },
  'camera-refused': {
    cause: 'The browser was not allowed to use the camera.',
    remedy: 'Allow the camera for this page, then start again.',
    secondTime:
      'Open the page’s settings beside its address, set the camera to “allow”, then reload.',
    countsAs: 'too-few-frames',
  },
  'camera-busy': {
    cause: 'The camera is in use or does not start.',
    remedy: 'Close other programs that use the camera, then start again.',
    secondTime: 'Unplug the camera and plug it in again, or restart the tablet.',
    countsAs: 'too-few-frames',
  },
  'camera-insecure': {
    cause: 'The browser gives the camera only to a secure page.',
    remedy: 'Open the page on the computer itself (localhost) or through HTTPS.',
    secondTime: 'Record the sweep with the camera’s own program and read the file.',
    countsAs: 'too-few-frames',
  },
  'camera-unplugged': {
    cause: 'The camera went away during the sweep. What was recorded until then was read.',
    remedy: 'Plug the camera in again, then sweep again.',
    secondTime: 'Change the cable or the socket of the camera, then sweep again.',
    countsAs: 'too-few-frames',
  },
  'camera-silent': {
    cause: 'The camera sent no picture for some seconds. What was recorded until then was read.',
    remedy: 'Keep this page in front and the tablet awake, then sweep again.',
    secondTime: 'Close other programs, unplug the camera and plug it in again, then sweep again.',
    countsAs: 'too-few-frames',
  },
  'picture-changed': {
    cause: 'The picture changed its size during the sweep. What was recorded until then was read.',
    remedy: 'Do not turn the tablet or change the lens while the wheel turns, then sweep again.',
    secondTime: 'Lock the tablet’s rotation, then sweep again.',
    countsAs: 'camera-moved',
  },
  'lens-changed': {
    cause:
      'The camera changed its lens or zoom during the sweep. What was recorded until then was read.',
    remedy: 'Set lens and zoom before the sweep and leave them, then sweep again.',
    secondTime: 'Choose the camera by name instead of leaving the choice to the tablet.',
    countsAs: 'camera-moved',
  },
  'camera-frozen': {
    cause: 'The camera sent the same picture again and again.',
    remedy: 'Start the camera again.',
    secondTime: 'Close other programs that use the camera, or restart the tablet.',
    countsAs: 'too-few-frames',
  },
  'sight-changed': {
    cause: 'The camera sees otherwise than before: the picture changed its size, lens or zoom.',
    remedy: 'Line and edge are looked for anew; leave the camera as it is now.',
    secondTime: 'Lock the tablet’s rotation and choose the camera by name.',
    countsAs: 'camera-moved',
  },
  'page-was-hidden': {
    cause: 'The page was out of sight for a while; no pictures came in that time.',
    remedy: 'Turn on from where the wheel stands; begin again if it was moved meanwhile.',
    secondTime: 'Keep this page in front until the turn is whole.',
    countsAs: 'too-few-frames',
  },
  'sweep-taken-up': {
    cause: 'This sweep broke off. It was read from what had been measured and recorded until then.',
    remedy: 'Where that is a whole turn, it counts as any other; else sweep again.',
    secondTime: 'Keep this page open and in front until the reading is there.',
    countsAs: 'turn-incomplete',
  },
  'worker-restarted': {
    cause: 'The measuring part stopped and was started again; the sweep begins anew.',
    remedy: 'A film is read again by itself; before a camera, turn on for a full turn from now.',
    secondTime: 'Close other programs, reload the page, then sweep again.',
    countsAs: 'too-few-frames',
  },
  'worker-failed': {
    cause: 'The measuring part stopped twice on this sweep.',
    remedy: 'Reload the page, then read the sweep again.',
    secondTime: 'Keep the video and its setup: they show what this program cannot read.',
    countsAs: 'too-few-frames',
  },
} as const satisfies Record<string, TroubleWords>;

export type TroubleCode = keyof typeof TROUBLES;
