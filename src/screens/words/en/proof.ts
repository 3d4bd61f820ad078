/** Before and after, and the verdict. */
export const proof = {
  verdicts: {
    pass: 'Balanced',
    trim: 'Not there yet: trim it',
    'look-for-another-cause': 'Weights alone will not cure this',
  },
  nextPass: 'Put the wheel back on, and keep this page.',
  nextTrim: 'Choose the weights for what is left, then sweep once more.',
  nextCause: 'Look for the cause named below before sticking on more.',
  close: 'The ± reaches across the limit: one more sweep would tell for certain.',
  causes: {
    dents: 'The plate is soft enough to dent: the wheel sticks in it. Turn or change the plate.',
    seat: 'The wheel rests differently each time: clean bore and ball, look for burrs.',
    'run-out': 'The tread edge is wavy: look at rim and tyre for run-out and at the bead’s seat.',
    'does-not-converge':
      'Two trims did not settle it: check valve mark, weights and radius entered.',
  },
  noVerdict: 'No verdict can be given',
  noVerdictWhy: 'A measure of this wheel or its stand cannot be right. Look at it on the bench.',
  toBench: 'To the bench',
  toReading: 'See the reading',
  left: 'Left',
  before: 'Before',
  after: 'After',
  noBefore: 'There is no earlier sweep of this wheel to hold it against.',
  trim: 'Choose the trim',
  sweepAgain: 'Sweep again',
  toWheel: 'To the wheel',
  traceTitle: 'The edge before and after',
  traceText: (before: string, after: string) =>
    `Once round, the edge rose and fell by ${before} before and does so by ${after} now.`,
  measuresTitle: 'How good is that',
  scaleText: (left: string, step: string, iso: string) =>
    `${left} is left. One weight is ${step}; the standard for car wheels allows ${iso}.`,
  oneStep: (step: string) => `one weight: ${step}`,
  iso: (figure: string) => `standard: ${figure}`,
  practiceNote: 'One weight step is what the trade asks for by common practice.',
  isoNote: (speed: string) =>
    `The standard is ISO 21940-11, grade G 40 for car wheels, at ${speed}.`,
  force: 'Force on the road',
  forceText: (force: string, speed: string) => `${force} at ${speed}, once a turn`,
  response: 'Rise per gram',
  responseMeasured: (measured: string) => `${measured}, measured with these weights`,
  responseModel: (formula: string) =>
    `${formula}, worked out by formula: no weights went on in between`,
  added: 'Put on in between',
  addedNone: 'nothing',
  couple:
    'A static balance does not see couple unbalance. If the wheel still shakes on the road, see a tyre fitter.',
  refitTitle: 'Back on the vehicle',
  refit: [
    'Lift with bent knees or with a second person; feet clear of the wheel.',
    'Wheel nuts crosswise, with a torque wrench, to the maker’s figure.',
    'Tighten again after the distance the handbook names.',
    'Local rules and the vehicle’s handbook come first.',
  ],
};
