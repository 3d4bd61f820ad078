export const readingWords = {
  atMost: 'at most',
  unnamed: 'This wheel',
  stickOn: (where: string) => `Stick on at ${where}`,
  stickOnSeveral: (count: number) => `Stick on at ${count} places`,
  lightAt: (where: string) => `Light at ${where}`,
  noClearSide: 'No side is clearly heavy',
  stickOneNext: (mass: string) =>
    `Stick ${mass} there, then sweep again to prove it.`,
  stickSeveralNext: (list: string) => `Stick on ${list}, then sweep again to prove it.`,
  takeOffNext: (mass: string, clock: string) =>
    `Take ${mass} off at ${clock}, then sweep again to prove it.`,
  placeInList: (mass: string, clock: string) => `${mass} at ${clock}`,
  takeOffInList: (mass: string, clock: string) => `minus ${mass} at ${clock}`,
  nothingNext: (step: string) => `Nothing to stick on: one weight of ${step} would not make it better.`,
  balancedNext: (step: string) => `Nothing to stick on: less than one weight of ${step}.`,
  unsureNext: 'Do not stick on yet: let the wheel settle and sweep again.',
  and: ' and ',
  amountScale: 'How much',
  amountScaleText: (figure: string, weights: string) =>
    `Light by ${figure} at the weight radius. Weights to stick on: ${weights}.`,
  noWeights: 'none',
  heavySpot: 'Heavy spot',
  lightSpot: 'Light spot',
  weights: 'Weights to stick on',
  left: 'Left over then',
  atRadius: (radius: string) => `at ${radius} from the centre`,
  unknown: 'not known',
  plusMinusNote: '± is the range that holds the true value 95 times in 100.',
  wheelTitle: 'The wheel from above, valve at 12',
  unitGrams: 'grams',
  unitOunces: 'ounces',
  unitLabel: 'Unit of weight',
  download: 'Save reading',
  sweepAgain: 'Sweep again',
  readSampleAgain: 'Read again',
  readFilmAgain: 'Change the setup',
  another: 'Another wheel',
  traceTitle: 'Edge against line, round the wheel',
  traceHeight: 'edge above the line, mm',
  traceResidual: 'off the wave, mm',
  traceAngle: 'wheel angle, valve at both ends',
  tracePoints: 'measured',
  traceWave: 'fitted wave, once round',
  traceOwnWave: 'the edge’s own shape',
  traceText: (rise: string, high: string, scatter: string) =>
    `The edge rises ${rise} above its mean at ${high} and sinks as far on the other side. The points lie within ${scatter} of the wave on average.`,
  detailsTitle: 'How it was found',
  standLean: 'Stand lean',
  standLeanText: (lean: string, mm: string, direction: string) =>
    `${lean}, ${mm} at the edge, high side ${direction}`,
  standLeanNote: 'It stays in the room while the wheel turns, so it is taken out of the figures.',
  standLeanDrawing: 'The stand from above, camera below, with the high side marked',
  camera: 'camera',
  high: 'high',
  response: 'Rise at the edge',
  responseText: (rise: string) => `${rise} for each gram at the weight radius`,
  responseModel: 'worked out from the mass and depth in the setup',
  responseTrial: 'measured with the weights stuck on since the earlier sweep',
  turn: 'Turn',
  turnText: (covered: string, sense: string) => `${covered} ${sense}`,
  clockwise: 'clockwise',
  counterClockwise: 'counter-clockwise',
  closure: (off: string) => `two views of the same tread agreed to ${off}`,
  rocking: 'Rocking',
  rockingText: (period: string) => `once in ${period}`,
  contributions: 'Where the ± comes from',
  couple:
    'A static balance does not see couple unbalance: two heavy spots on opposite faces of the wheel. If the wheel still shakes, see a tyre fitter.',
  warningsTitle: 'Keep in mind',
  refusedTitle: 'No reading',
  evidence: 'What was seen',
  refusedAlso: 'Also',
} as const;

export const warningWords = {
  assumed: (list: string) => `Assumed, not measured: ${list}. The grams are only as good as these.`,
  standLean: (mm: string, direction: string) =>
    `The stand leans: ${mm} at the edge, high side ${direction}. Level the plate when you can.`,
  left: (left: string) => `${left} will be left with these weights: more than half of one weight.`,
  wideAngle: (plusMinus: string) => `The place is known only to ${plusMinus}. A second sweep will sharpen it.`,
} as const;

/** The names under which the measuring core tells the parts of the ±; unknown ones are shown as they are. */
export const contributionWords: Readonly<Record<string, string>> = {
  noise: 'picture and rocking',
  picture: 'picture',
  rocking: 'rocking',
  mark: 'tape at the valve',
  scale: 'scale of the picture',
  response: 'mass and depth',
  runOut: 'run-out of the edge',
};

/** What the evidence of a refusal is called, with its unit; unknown names are shown as they are. */
export const evidenceWords: Readonly<Record<string, EvidenceWords>> = {
  coveredDeg: { name: 'turn covered', unit: '°' },
  neededDeg: { name: 'turn needed', unit: '°' },
  largestGapDeg: { name: 'largest gap', unit: '°' },
  lineShare: { name: 'share with the line in sight', unit: '' },
  edgeShare: { name: 'share with the edge in sight', unit: '' },
  frames: { name: 'pictures', unit: '' },
  framesSeen: { name: 'pictures', unit: '' },
  timeS: { name: 'time', unit: ' s' },
  file: { name: 'file', unit: '' },
};

export interface EvidenceWords {
  readonly name: string;
  /** Written behind the number, with its own space where one belongs. */
  readonly unit: string;
}

