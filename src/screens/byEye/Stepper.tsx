import { words } from '../words/words.ts';

export interface StepperProps {
  readonly name: string;
  readonly value: string;
  readonly onLess: () => void;
  readonly onMore: () => void;
}

/** A value between two large buttons: for gloves, and for a switch. */
export function Stepper({ name, value, onLess, onMore }: StepperProps) {
  return (
    <div className="stepper" role="group" aria-label={name}>
      <span className="stepper-name">{name}</span>
      <button type="button" className="plain" aria-label={words.common.less(name)} onClick={onLess}>
        <span aria-hidden="true">−</span>
      </button>
      <output className="stepper-value">{value}</output>
      <button type="button" className="plain" aria-label={words.common.more(name)} onClick={onMore}>
        <span aria-hidden="true">+</span>
      </button>
    </div>
  );
}
