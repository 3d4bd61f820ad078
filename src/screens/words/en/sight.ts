export const sight = {
  title: 'Sight',
  opening: 'Starting the camera',
  ready: 'All is seen: start the sweep',
  startSweep: 'Start the sweep',
  startCamera: 'Start the camera',
  cameraWhy:
    'The camera looks at laser line and tread edge while you turn the wheel. Its pictures stay on this device.',
  cameraAsk: 'The browser asks whether it may be used: choose “Allow”.',
  mayGoDark:
    'This browser does not keep the screen on, and a dark screen stops the camera: set the tablet so that it stays on.',
  notFound: 'This wheel is not in the shed any more.',
  good: 'good',
  notYet: 'not yet',
  notTried: 'not tried',
  checks: {
    picture: 'Picture',
    light: 'Light',
    line: 'Laser line',
    edge: 'Tread edge',
    up: 'Right way up',
    turn: 'Not mirrored',
  },
  /** What to do when a trial came out the wrong way round. */
  reversed: {
    up: 'The edge went up: turn the tablet half round, or press nearer to the sight',
    turn: 'Seen the other way round: use the camera on the back, or try again clockwise',
  },
  tryMirror: 'This camera may mirror: make the press test first',
  trySigns: 'Press test',
  stopTrial: 'Stop the test',
  signSteps: {
    settle: 'Let the wheel come to rest',
    press: 'Press the rim down at the sight',
    turn: 'Turn it a little clockwise, as seen from above',
  },
  camera: 'Camera',
  noControls: 'This camera sets itself; nothing can be set by hand here.',
  controls: { exposure: 'Brightness', focus: 'Focus', zoom: 'Zoom' },
  controlAuto: (control: string) => `${control}: by itself`,
  doPicture: 'Wait for the camera’s first picture',
  doLine: 'Aim at the tread: the laser line across the middle',
  pickEdge:
    'Choose another edge: touch it in the picture, or move the cross with the arrow keys and press Enter',
  pickHint: 'Another edge? Touch it in the picture.',
};

export const lead = {
  title: 'To the spot',
  opening: 'Starting the camera',
  findTape: 'Turn until the tape has passed the sight',
  looking: 'Hold still until the wheel is seen',
  lost: 'Hold still: the wheel is not seen',
  near: 'Slowly.',
  markIt:
    'Mark the tyre with chalk where the spot stands, then stick the weight on in line with it.',
  turn: (angle: string, isClockwise: boolean) =>
    `Turn ${angle} ${isClockwise ? 'clockwise' : 'counter-clockwise'}`,
  stick: (mass: string) => `Stick ${mass} here, at the sight`,
  takeOff: (mass: string) => `Take ${mass} off here, at the sight`,
  stickAt: (mass: string, where: string) => `Stick ${mass} at ${where}`,
  takeOffAt: (mass: string, where: string) => `Take ${mass} off at ${where}`,
  step: (now: number, all: number) => `Weight ${now} of ${all}`,
  isDone: 'Done',
  nothing: 'There is nothing to stick on for this reading.',
  allOn: 'All weights are on. Sweep again to prove it.',
  notKept: 'The logbook did not take the weights. Note them, then try again.',
  tryAgain: 'Try again',
  prove: 'Prove it',
  toWeights: 'To the weights',
  noReading: 'This reading is not in the logbook any more.',
  noted: 'The weights were noted.',
};
