import type { Units } from '../words/numbers.ts';
import { NumberStepper } from './NumberStepper.tsx';

export interface WheelAngleFieldProps {
  readonly label: string;
  readonly name: string;
  readonly help?: string;
  readonly units: Units;
  /** Clockwise from the valve, degrees; null is an empty field. */
  readonly value: number | null;
  readonly onValue: (angleDeg: number | null) => void;
}

/** Ten minutes on the dial: as well as a hand can place a weight. */
const STEP_DEG = 5;
const ONCE_ROUND_DEG = [0, 359] as const;

/** A place on the wheel by number. */
export function WheelAngleField(props: WheelAngleFieldProps) {
  return (
    <NumberStepper
      {...props}
      quantity="angle"
      range={ONCE_ROUND_DEG}
      proposal={0}
      stepShown={STEP_DEG}
    />
  );
}
