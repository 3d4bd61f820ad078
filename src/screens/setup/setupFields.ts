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
  readonly unit: string;
  readonly proposal: string;
  /** True when the setup may do without it. */
  readonly optional: boolean;
}

export type SetupPath = keyof typeof words.setup.fields;

/** Name and help are read when they are drawn: they follow the language. */
function numberField(
  path: SetupPath,
  group: FieldGroup,
  unit: string,
  proposal: string,
  optional: boolean,
): NumberField {
  return {
    path,
    group,
    unit,
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
  numberField('wheel.massKg', 'wheel', 'kg', '16.5', false),
  numberField('wheel.edgeRadiusMm', 'wheel', 'mm', '305', false),
  numberField('wheel.weightRadiusMm', 'wheel', 'mm', '185', false),
  numberField('wheel.boreDiameterMm', 'wheel', 'mm', '', true),
  numberField('stand.ballDiameterMm', 'stand', 'mm', '63.5', false),
  numberField('stand.pendulumDepthMm', 'stand', 'mm', '8', false),
  numberField('stand.lineAbovePlateMm', 'stand', 'mm', '', true),
  numberField('camera.downTiltDeg', 'camera', '°', '32', false),
  numberField('camera.horizontalFovDeg', 'camera', '°', '', true),
  numberField('sight.valveMark.widthMm', 'mark', 'mm', '22', false),
  numberField('weightStepG', 'mark', 'g', '5', false),
];

/** Fields that the grams rest on directly when the response comes from the model. */
export const AMOUNT_FIELDS: readonly string[] = [
  'wheel.massKg',
  'wheel.edgeRadiusMm',
  'wheel.weightRadiusMm',
  'stand.pendulumDepthMm',
  'camera.downTiltDeg',
];
