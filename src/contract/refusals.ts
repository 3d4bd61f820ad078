/**
 * Every reason for which no figure is given, in one place: what was seen, what to do about it,
 * and what to say when the same thing happens a second time.
 */
export interface RefusalWords {
  readonly cause: string;
  readonly remedy: string;
  readonly secondTime: string;
}

export const REFUSALS = {
  'turn-incomplete': {
    cause: 'The wheel was not turned all the way round in view of the camera.',
    remedy: 'Sweep again: turn the wheel slowly through one full turn and a little more.',
    secondTime:
      'Start with the tape just before the sight and go on until it has passed the sight twice.',
  },
  'line-lost': {
    cause: 'The laser line could not be seen on the tread for a good part of the sweep.',
    remedy:
      'Check that the laser is on and level on the shoulder of the tread, shade the tyre, then sweep again.',
    secondTime: 'Change the laser’s battery, move it closer and darken the shed, then sweep again.',
  },
  'edge-lost': {
    cause: 'The edge of the tread could not be followed round the wheel.',
    remedy:
      'Wipe the tread, light it evenly, choose an edge that runs all round, then sweep again.',
    secondTime:
      'Choose another edge: the outer shoulder groove is usually the clearest. On a tread without one, stick a band of light tape squarely round the shoulder.',
  },
  'edge-ambiguous': {
    cause: 'Two edges of the tread look alike and lie too close together to be told apart.',
    remedy:
      'Touch another edge in the picture, one that stands alone: the outer shoulder groove is usually the clearest.',
    secondTime:
      'Stick a band of light tape round the shoulder, touch its lower edge, then sweep again.',
  },
  'mark-missing': {
    cause: 'The tape at the valve was not found on the tread.',
    remedy:
      'Stick the tape across the shoulder in line with the valve and enter its colour and width, then sweep again.',
    secondTime: 'Use a fresh piece of matt white tape, about 22 mm wide, reaching over the edge.',
  },
  'mark-ambiguous': {
    cause: 'More than one tape on the tread could be the one at the valve.',
    remedy:
      'Take the other tape off, or use another colour or width at the valve, then sweep again.',
    secondTime: 'Leave only one tape on the tread.',
  },
  'turn-uncertain': {
    cause: 'The turn of the wheel could not be followed with certainty.',
    remedy: 'Light the tread better and turn more slowly and evenly, then sweep again.',
    secondTime: 'Rub chalk on the tread so that the pattern shows, then sweep again.',
  },
  'camera-moved': {
    cause: 'The camera moved during the sweep.',
    remedy: 'Clamp the tablet so that it does not shake or sag, then sweep again.',
    secondTime: 'Steady the arm against the bench and do not touch the tablet while turning.',
  },
  'picture-mirrored': {
    cause: 'The wheel is seen turning the other way round: the picture is mirrored.',
    remedy:
      'Use the camera on the tablet’s back, or turn mirroring off. If the wheel was turned the other way, enter that.',
    secondTime:
      'Hold a page of print before the camera: it must be readable in the picture. Then sweep again.',
  },
  'picture-upside-down': {
    cause: 'The picture stands on its head: the near side of the wheel is at its top.',
    remedy:
      'Turn the tablet half round, so that the wheel’s near side lies below, then sweep again.',
    secondTime:
      'Lock the tablet’s screen rotation with the wheel’s near side below; turn a film round before reading it.',
  },
  'view-blocked': {
    cause: 'Something stood in front of the tread.',
    remedy:
      'Clear the view of the tread, turn from the far side with the hand away from the camera, and sweep again.',
    secondTime: 'Turn by the top of the tyre opposite the camera.',
  },
  'too-dark': {
    cause: 'The picture is too dark to see the tread.',
    remedy: 'Turn on a lamp beside the camera, then sweep again.',
    secondTime:
      'Move the lamp closer; the tread pattern must be plain to your own eye in the picture.',
  },
  'too-bright': {
    cause: 'The picture is too bright to see the laser line or the tread.',
    remedy: 'Shade the tyre from sun and lamps, then sweep again.',
    secondTime: 'Work with the door closed or at dusk.',
  },
  'too-fast': {
    cause: 'The wheel turned too fast for the camera to follow.',
    remedy: 'Turn more slowly: one turn in about half a minute.',
    secondTime: 'Count slowly to thirty for one turn.',
  },
  'too-few-frames': {
    cause: 'There were too few pictures for a reading.',
    remedy: 'Record the whole turn, about half a minute, then sweep again.',
    secondTime: 'Close other programs on the tablet, then sweep again.',
  },
  'rocking-too-strong': {
    cause: 'The wheel rocked too strongly for a figure to be trusted.',
    remedy: 'Let the wheel settle, turn it with a light touch, then sweep again.',
    secondTime: 'Use a smaller ball: the wheel then rocks less.',
  },
  'wheel-changed': {
    cause: 'The wheel’s heavy side changed during the sweep.',
    remedy:
      'A weight may have come off, or the wheel shifted on the ball: check both, then sweep again.',
    secondTime:
      'Take loose weights off, wipe ball and bore, let the wheel settle, and turn with a light touch.',
  },
  'lean-too-large': {
    cause: 'The wheel leaned further than the camera can follow.',
    remedy: 'Put a trial weight on the high side, or use a smaller ball, then sweep again.',
    secondTime: 'Level the plate first, then use a smaller ball.',
  },
  'setup-invalid': {
    cause: 'The setup has a value that is missing or cannot be right.',
    remedy: 'Correct the value named below, then read the sweep again.',
    secondTime: 'Make a new setup from the form instead of editing the file.',
  },
  'earlier-sweep-missing': {
    cause: 'This is a check sweep, and the sweep before it is not there or has no reading.',
    remedy: 'Open the earlier sweep together with this one.',
    secondTime: 'Read the earlier sweep first and save its reading, then open both.',
  },
  'weight-elsewhere': {
    cause: 'The wheel did not answer on the side where the weights were entered.',
    remedy:
      'Check the clock position of each weight, and that the tape at the valve was not moved, then read again.',
    secondTime:
      'Take the weights off, sweep, stick one weight on, enter its place from the valve, sweep again.',
  },
  'file-unreadable': {
    cause: 'The file is not a video that can be read here.',
    remedy: 'Choose a video made by a camera (MP4 or WebM).',
    secondTime: 'Record the sweep with this program’s own camera screen.',
  },
} as const satisfies Record<string, RefusalWords>;

export type RefusalCode = keyof typeof REFUSALS;
