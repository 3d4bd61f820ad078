/**
 * The numbers of the setup form: where each goes in the setup file, its unit, what it is in plain
 * words, and a proposal for a common car wheel on the stand that DESIGN section 1 describes.
 * The limits are not here: `readSetup` alone knows them.
 */
export type FieldGroup = 'wheel' | 'stand' | 'camera' | 'mark';

export interface NumberField {
  /** Path in the setup file: also the input's name. */
  readonly path: string;
  readonly group: FieldGroup;
  readonly name: string;
  readonly help: string;
  readonly unit: string;
  readonly proposal: string;
  /** True when the setup may do without it. */
  readonly optional: boolean;
}

export const NUMBER_FIELDS: readonly NumberField[] = [
  {
    path: 'wheel.massKg',
    group: 'wheel',
    name: 'Mass',
    help: 'Wheel with tyre, on a bathroom scale.',
    unit: 'kg',
    proposal: '16.5',
    optional: false,
  },
  {
    path: 'wheel.edgeRadiusMm',
    group: 'wheel',
    name: 'Centre to tread edge',
    help: 'From the middle of the wheel out to the groove or shoulder edge by the laser line.',
    unit: 'mm',
    proposal: '305',
    optional: false,
  },
  {
    path: 'wheel.weightRadiusMm',
    group: 'wheel',
    name: 'Centre to weights',
    help: 'From the middle of the wheel to where the weights will sit.',
    unit: 'mm',
    proposal: '185',
    optional: false,
  },
  {
    path: 'wheel.boreDiameterMm',
    group: 'wheel',
    name: 'Bore, across',
    help: 'The hole that sits on the ball.',
    unit: 'mm',
    proposal: '',
    optional: true,
  },
  {
    path: 'stand.ballDiameterMm',
    group: 'stand',
    name: 'Ball, across',
    help: 'Diameter of the steel ball.',
    unit: 'mm',
    proposal: '63.5',
    optional: false,
  },
  {
    path: 'stand.pendulumDepthMm',
    group: 'stand',
    name: 'Depth of the mass',
    help: 'How far the wheel’s centre of mass hangs below the ball’s centre.',
    unit: 'mm',
    proposal: '8',
    optional: false,
  },
  {
    path: 'stand.lineAbovePlateMm',
    group: 'stand',
    name: 'Laser line above the plate',
    help: 'With a ruler, to a millimetre or two.',
    unit: 'mm',
    proposal: '',
    optional: true,
  },
  {
    path: 'camera.downTiltDeg',
    group: 'camera',
    name: 'Camera looks down by',
    help: '0 is level, 90 straight down. A spirit-level app on the tablet shows it.',
    unit: '°',
    proposal: '32',
    optional: false,
  },
  {
    path: 'camera.horizontalFovDeg',
    group: 'camera',
    name: 'Camera sees, side to side',
    help: 'Angle of view from the camera’s data sheet. Found from the turn when empty.',
    unit: '°',
    proposal: '',
    optional: true,
  },
  {
    path: 'sight.valveMark.widthMm',
    group: 'mark',
    name: 'Width of the tape',
    help: 'The strip on the tread in line with the valve, measured along the tread.',
    unit: 'mm',
    proposal: '22',
    optional: false,
  },
  {
    path: 'weightStepG',
    group: 'mark',
    name: 'One weight',
    help: 'The smallest piece you stick on. A quarter ounce is 7.09 g.',
    unit: 'g',
    proposal: '5',
    optional: false,
  },
];

/** Fields that the grams rest on directly when the response comes from the model. */
export const AMOUNT_FIELDS: readonly string[] = [
  'wheel.massKg',
  'wheel.edgeRadiusMm',
  'wheel.weightRadiusMm',
  'stand.pendulumDepthMm',
  'camera.downTiltDeg',
];
