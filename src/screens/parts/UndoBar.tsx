import { words } from '../words/words.ts';
import { UndoIcon } from './icons.tsx';

export interface UndoOffer {
  /** What was done: "Minibus rear left was taken out." */
  readonly text: string;
  readonly undo: () => void;
}

/** Takes the place of the offer before; null: there is nothing to undo any more. */
export type OnOffer = (offer: UndoOffer | null) => void;

/** Says what was just taken away, with the way to have it back; stays until the next such step. */
export function UndoBar({ offer }: { readonly offer: UndoOffer | null }) {
  return (
    <div className="undo-place" role="status">
      {offer !== null && (
        <div className="undo-bar">
          <span>{offer.text}</span>
          <button type="button" className="plain" onClick={offer.undo}>
            <UndoIcon />
            {words.common.undo}
          </button>
        </div>
      )}
    </div>
  );
}
