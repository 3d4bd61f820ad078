import type { ReactNode } from 'react';

import { words } from '../words/words.ts';
import { MinusIcon, PlusIcon } from './icons.tsx';

export interface StepLineProps {
  /** What is made less or more. */
  readonly label: string;
  readonly isLeast?: boolean;
  readonly isMost?: boolean;
  readonly onStep: (direction: 1 | -1) => void;
  /** The value, between the buttons. */
  readonly children: ReactNode;
  /** What stands behind the plus. */
  readonly beside?: ReactNode;
}

/** A value between a minus and a plus: large enough for gloves, and for a switch. */
export function StepLine(props: StepLineProps) {
  const { label, isLeast = false, isMost = false, onStep, children, beside } = props;
  return (
    <div className="stepper-line">
      <button
        type="button"
        className="stepper-press"
        aria-label={words.common.less(label)}
        disabled={isLeast}
        onClick={() => onStep(-1)}
      >
        <MinusIcon />
      </button>
      {children}
      <button
        type="button"
        className="stepper-press"
        aria-label={words.common.more(label)}
        disabled={isMost}
        onClick={() => onStep(1)}
      >
        <PlusIcon />
      </button>
      {beside}
    </div>
  );
}
