export const setup = {
  cameraTitle: 'Wheel and stand',
  filmTitle: 'Setup of this film',
  filmLead: (name: string) =>
    `${name} came without a setup file. What was the wheel, and how did the camera look at it?`,
  cameraLead: 'What you know is better than what is assumed. The grams depend on mass and depth.',
  groups: { wheel: 'Wheel', stand: 'Stand', camera: 'Camera', mark: 'Tape and weights' },
  assumed: 'assumed',
  known: 'known',
  assumedHelp: 'Values marked “assumed” are proposals. Press the mark when a value is right.',
  markKnown: (name: string) => `${name}: assumed. Press when it is right`,
  markAssumed: (name: string) => `${name}: known. Press to mark it as assumed`,
  optional: 'may stay empty',
  colour: 'Colour of the tape',
  colourHelp: 'The strip on the tread in line with the valve.',
  colours: {
    white: 'white',
    yellow: 'yellow',
    blue: 'blue',
    red: 'red',
    green: 'green',
    orange: 'orange',
  },
  edge: 'Edge as touched in the film',
  edgeHelp: 'Off: the program looks for the edge itself.',
  sense: 'The wheel is turned',
  senseHelp: 'Seen from above. A mirrored picture is then found out.',
  senses: {
    unsaid: 'either way',
    clockwise: 'clockwise',
    'counter-clockwise': 'counter-clockwise',
  },
  label: 'Name of this wheel',
  labelHelp: 'For the saved reading.',
  device: 'Camera',
  deviceAny: 'The one facing away from you',
  deviceUnnamed: (index: number) => `Camera ${index + 1}`,
  start: 'Start the sweep',
  readFilm: 'Read the film',
  /** Name and help of each number, by its path in the setup file. */
  fields: {
    'wheel.massKg': {
      name: 'Mass',
      help: 'Wheel with tyre, on a bathroom scale.',
    },
    'wheel.edgeRadiusMm': {
      name: 'Centre to tread edge',
      help: 'From the middle of the wheel out to the groove or shoulder edge by the laser line.',
    },
    'wheel.weightRadiusMm': {
      name: 'Centre to weights',
      help: 'From the middle of the wheel to where the weights will sit.',
    },
    'wheel.boreDiameterMm': {
      name: 'Bore, across',
      help: 'The hole that sits on the ball.',
    },
    'stand.ballDiameterMm': {
      name: 'Ball, across',
      help: 'Diameter of the steel ball.',
    },
    'stand.pendulumDepthMm': {
      name: 'Depth of the mass',
      help: 'How far the wheel’s centre of mass hangs below the ball’s centre.',
    },
    'stand.lineAbovePlateMm': {
      name: 'Laser line above the plate',
      help: 'With a ruler, to a millimetre or two.',
    },
    'camera.downTiltDeg': {
      name: 'Camera looks down by',
      help: '0 is level, 90 straight down. A spirit-level app on the tablet shows it.',
    },
    'camera.horizontalFovDeg': {
      name: 'Camera sees, side to side',
      help: 'Angle of view from the camera’s data sheet. Found from the turn when empty.',
    },
    'sight.valveMark.widthMm': {
      name: 'Width of the tape',
      help: 'The strip on the tread in line with the valve, measured along the tread.',
    },
    weightStepG: {
      name: 'One weight',
      help: 'The smallest piece you stick on.',
    },
  },
  after: {
    title: 'Weights since an earlier sweep',
    help: 'What was stuck on or taken off before this film. How far this wheel rises for each gram is then measured.',
    remove: (weight: string) => `Leave out: ${weight}`,
    choose: 'Choose the earlier reading',
    noEarlier: 'The file that the earlier sweep was saved in.',
    earlier: (name: string) => `Earlier sweep: ${name}`,
    needsEarlier: 'Choose the earlier sweep’s reading, or leave the weights out.',
  },
  missing: 'Please enter a value.',
  notANumber: 'Please enter a number, such as 16.5.',
  tooSmall: (limit: string) => `Must be ${limit} or more.`,
  tooLarge: (limit: string) => `Must be ${limit} or less.`,
  cannotBeRight: 'This cannot be right.',
  fixFirst: (count: number) =>
    count === 1 ? 'One value needs a look:' : `${count} values need a look:`,
  laserCaution: 'Laser on only while you sweep. Eyes above the beam, feet clear of the wheel.',
};
