import { useId } from 'react';

export interface OnOffSwitchProps {
  readonly label: string;
  readonly help?: string;
  readonly isOn: boolean;
  readonly onSwitch: (isOn: boolean) => void;
}

/** A row that is touched anywhere; a slide whose knob stands right and filled when it is on. */
export function OnOffSwitch({ label, help, isOn, onSwitch }: OnOffSwitchProps) {
  const id = useId();
  return (
    <button
      type="button"
      role="switch"
      className="on-off"
      aria-checked={isOn}
      aria-labelledby={`${id}-label`}
      aria-describedby={help === undefined ? undefined : `${id}-help`}
      onClick={() => onSwitch(!isOn)}
    >
      <span className="on-off-words">
        <span id={`${id}-label`} className="on-off-label">
          {label}
        </span>
        {help !== undefined && (
          <span id={`${id}-help`} className="on-off-help">
            {help}
          </span>
        )}
      </span>
      <svg className="on-off-slide" viewBox="0 0 72 40" aria-hidden="true" focusable="false">
        <rect x={2} y={2} width={68} height={36} rx={18} />
        <circle cx={isOn ? 52 : 20} cy={20} r={12} />
      </svg>
    </button>
  );
}
