/**
 * What may be said beside a figure: the reading stands, but on something that nobody confirmed.
 * What was seen, and how to settle it.
 */
export interface WarningWords {
  readonly cause: string;
  readonly remedy: string;
}

export const READING_WARNINGS = {
  'sense-unconfirmed': {
    cause:
      'Read as turned counter-clockwise, which nobody confirmed. Had it been turned clockwise, the picture would be mirrored and the spot on the wrong side of the valve.',
    remedy:
      'Enter in the setup which way it was turned and read the film again; before a camera, make the press test once.',
  },
  'clockwise-unconfirmed': {
    cause:
      'Read as turned clockwise, which nobody confirmed. Had it been turned counter-clockwise, the picture would be mirrored and the spot on the wrong side of the valve.',
    remedy:
      'Enter in the setup which way it was turned and read the film again; before a camera, make the press test once.',
  },
  'edge-assumed': {
    cause:
      'The tread edge showed nowhere beside the laser line, and nobody touched it in the picture. It was taken to lie under the line, and the lean was read by the tread’s other grooves; the ± has grown by what that leaves open.',
    remedy:
      'Touch the edge in the picture before the sweep; or set the line a few millimetres off the edge, or dim the laser, and sweep again.',
  },
  'line-in-groove': {
    cause:
      'All round, the laser line lay down in the groove under the edge and not on the rib. The camera was worked out from the groove’s floor, whose depth had to be found as well; the ± has grown by its doubt.',
    remedy:
      'For a closer reading set the line on the rib beside the edge, so that the edge stands a few millimetres below it, and sweep again.',
  },
  'band-alone': {
    cause:
      'What was followed is a band of light tape round the shoulder, and nothing else on this tread runs all round. Where the band is stuck on off square it looks as an unbalance does; the ± has grown by what a hand may miss.',
    remedy:
      'Measure the band’s distance from a moulded line of the sidewall at four places, stick it on anew where they differ by more than half a millimetre, and sweep again; or sweep on two balls.',
  },
  'outline-alone': {
    cause:
      'Nothing on this tread runs all round, so the outline of the tyre before the ground was followed. How round its shoulder is nobody knows; the ± has grown by that.',
    remedy:
      'For a closer reading stick a band of light tape round the shoulder, half a millimetre true, and sweep again. Leave nothing lying on the ground behind the tyre’s lower border.',
  },
  'picture-sways': {
    cause:
      'The picture swayed to and fro during the sweep, as a tablet on a springy arm does. The sway was told from the wheel’s own rocking and left out; the ± has grown by it.',
    remedy: 'For a closer reading steady the arm, keep hands off the bench, and sweep again.',
  },
  'camera-may-mirror': {
    cause:
      'The camera on the tablet’s face was used. Some of them mirror the picture: the spot would then be on the wrong side of the valve.',
    remedy:
      'Hold a page of print before the camera: when it cannot be read in the picture, use the camera on the back.',
  },
} as const satisfies Record<string, WarningWords>;

export type WarningCode = keyof typeof READING_WARNINGS;
