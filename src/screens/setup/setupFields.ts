import type { Quantity } from '../words/displayUnits.ts';
import { words } from '../words/words.ts';

/**
 * The numbers of the setup form: where each goes in the setup file, its unit, and a proposal for a
 * common car wheel on the stand that DESIGN section 1 describes. Names and help stand with the
 * words. The limits are not here: `readSetup` alone knows them.
 */
export type FieldGroup = 'wheel' | 'stand' | 'camera' | 'mark';

export interface NumberField {
  /** Path in the setup file: also the input's name. */
  readonly path: SetupPath;
  readonly group: FieldGroup;
  readonly name: string;
  readonly help: string;
  /** Of what is kept; the form shows it in the units in use. */
  readonly quantity: Quantity;
  readonly proposal: string;
  /** True when the setup may do without it. */
  readonly optional: boolean;
}

type SetupPath = keyof typeof words.setup.fields;

/** Name and help are read when they are drawn: they follow the language. */
function numberField(
  path: SetupPath,
  group: FieldGroup,
  quantity: Quantity,
  proposal: string,
  optional: boolean,
): NumberField {
  return {
    path,
    group,
    quantity,
    proposal,
    optional,
    get name() {
      return words.setup.fields[path].name;
    },
    get help() {
      return words.setup.fields[path].help;
    },
  };
}

export const NUMBER_FIELDS: readonly NumberField[] = [
  numberField('wheel.massKg', 'wheel', 'wheelMass', '16.5', false),
  numberField('wheel.edgeRadiusMm', 'wheel', 'length', '305', false),
  numberField('wheel.weightRadiusMm', 'wheel', 'length', '185', false),
  numberField('wheel.boreDiameterMm', 'wheel', 'length', '', true),
  numberField('stand.ballDiameterMm', 'stand', 'length', '63.5', false),
  numberField('stand.pendulumDepthMm', 'stand', 'length', '8', false),
  numberField('stand.lineAbovePlateMm', 'stand', 'length', '', true),
  numberField('camera.downTiltDeg', 'camera', 'angle', '32', false),
  numberField('camera.horizontalFovDeg', 'camera', 'angle', '', true),
  numberField('sight.valveMark.widthMm', 'mark', 'length', '22', false),
  numberField('weightStepG', 'mark', 'weight', '5', false),
];

/** Fields that the grams rest on directly when the response comes from the model. */
export const AMOUNT_FIELDS: readonly string[] = [
  'wheel.massKg',
  'wheel.edgeRadiusMm',
  'wheel.weightRadiusMm',
  'stand.pendulumDepthMm',
  'camera.downTiltDeg',
];
