import type { SourcedNumber } from '../../contract/logbook.ts';
import { NumberStepper, type NumberStepperProps } from './NumberStepper.tsx';
import { OriginMark } from './OriginMark.tsx';

export interface SourcedFieldProps extends Omit<
  NumberStepperProps,
  'value' | 'onValue' | 'children'
> {
  readonly value: SourcedNumber | null;
  /** Null is passed on only where the field may stay empty. */
  readonly onValue: (value: SourcedNumber | null) => void;
  readonly mayBeEmpty?: boolean;
}

/** A number with how it came to be known. A value put in by hand counts as entered. */
export function SourcedField({ value, onValue, mayBeEmpty = false, ...field }: SourcedFieldProps) {
  return (
    <NumberStepper
      {...field}
      value={value?.value ?? null}
      onValue={(next) => {
        if (next !== null) onValue({ value: next, origin: 'entered' });
        else if (mayBeEmpty) onValue(null);
      }}
    >
      {value !== null && (
        <OriginMark
          origin={value.origin}
          name={field.label}
          onOrigin={(origin) => onValue({ ...value, origin })}
        />
      )}
    </NumberStepper>
  );
}
