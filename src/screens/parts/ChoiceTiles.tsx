import { useId, type ReactNode } from 'react';

interface Tile<T extends string> {
  readonly value: T;
  readonly word: string;
  /** A drawing over the word, or a note below it. */
  readonly drawing?: ReactNode;
  readonly note?: string;
}

export interface ChoiceTilesProps<T extends string> {
  readonly label: string;
  readonly help?: string;
  readonly tiles: readonly Tile<T>[];
  readonly chosen: T | null;
  readonly onChoose: (value: T) => void;
}

/** One of a few, each a tile to touch; the chosen one is filled with ink. */
export function ChoiceTiles<T extends string>(props: ChoiceTilesProps<T>) {
  const id = useId();
  return (
    <fieldset className="tiles" aria-describedby={props.help && `${id}-help`}>
      <legend>{props.label}</legend>
      <div className="tiles-row">
        {props.tiles.map(({ value, word, drawing, note }) => (
          <label key={value} className="tile">
            <input
              type="radio"
              name={id}
              value={value}
              checked={value === props.chosen}
              onChange={() => props.onChoose(value)}
            />
            <span className="tile-face">
              {drawing}
              <span className="tile-word">{word}</span>
              {note !== undefined && <span className="tile-note">{note}</span>}
            </span>
          </label>
        ))}
      </div>
      {props.help !== undefined && (
        <p id={`${id}-help`} className="stepper-help">
          {props.help}
        </p>
      )}
    </fieldset>
  );
}
