import type { StandRecord } from '../../contract/logbook.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { MinusIcon, PlusIcon } from '../parts/icons.tsx';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { formatKnown, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { StandPartProps } from './BallStock.tsx';
import { STAND_RANGES } from './ranges.ts';

type Piece = StandRecord['stock'][number];

/** As many kinds as the logbook keeps. */
const MOST_KINDS = 60;
const NEW_PIECE: Piece = { label: '10 g', massG: 10, lengthMm: 19, fitting: 'adhesive' };

/** The weights owned, one drawer a kind: mass, length on the rim, how it holds, how many. */
export function WeightStock({ stand, units, edit }: StandPartProps) {
  const { stock } = stand;
  const text = words.stand;
  const remove = (index: number) =>
    edit.keepWithUndo(
      { ...stand, stock: stock.toSpliced(index, 1) },
      stand,
      text.removed(pieceName(stock[index]!, units)),
    );
  return (
    <section className="group">
      <h2>{text.groups.stock}</h2>
      {stock.length === 0 && <p>{text.stockAssumed}</p>}
      {stock.map((piece, index) => (
        <details key={index} className="drawer">
          <summary>
            <PieceSign piece={piece} />
            <span className="stand-row-name">{pieceName(piece, units)}</span>
            <span>{piece.onHand === undefined ? text.enough : piece.onHand}</span>
          </summary>
          <PieceFields
            piece={piece}
            units={units}
            onPiece={(next) => edit.keep({ ...stand, stock: stock.with(index, next) })}
            onRemove={() => remove(index)}
          />
        </details>
      ))}
      {stock.length < MOST_KINDS && (
        <button
          type="button"
          className="plain bench-add"
          onClick={() => edit.keep({ ...stand, stock: [...stock, NEW_PIECE] })}
        >
          <PlusIcon />
          {text.addPiece}
        </button>
      )}
    </section>
  );
}

function pieceName({ massG, fitting }: Piece, units: Units): string {
  return words.stand.pieceName(formatKnownMass(massG, units), words.bench.kinds[fitting]);
}

function PieceFields(props: {
  readonly piece: Piece;
  readonly units: Units;
  readonly onPiece: (piece: Piece) => void;
  readonly onRemove: () => void;
}) {
  const { piece, units, onPiece, onRemove } = props;
  const text = words.stand;
  const withCount = (onHand: number | null): Piece => {
    const { onHand: _before, ...rest } = piece;
    return onHand === null ? rest : { ...rest, onHand: Math.round(onHand) };
  };
  return (
    <div className="fields">
      <NumberStepper
        label={text.pieceMass}
        name="pieceMassG"
        quantity="weight"
        units={units}
        value={piece.massG}
        range={STAND_RANGES.pieceMassG}
        // The label follows the mass, so that files in other hands say the same.
        onValue={(massG) =>
          massG !== null && onPiece({ ...piece, massG, label: formatKnown('weight', massG, units) })
        }
      />
      <NumberStepper
        label={text.pieceLength}
        name="pieceLengthMm"
        quantity="length"
        units={units}
        value={piece.lengthMm}
        range={STAND_RANGES.pieceLengthMm}
        onValue={(lengthMm) => lengthMm !== null && onPiece({ ...piece, lengthMm })}
      />
      <NumberStepper
        label={text.onHand}
        name="onHand"
        help={piece.onHand === undefined ? text.enough : undefined}
        quantity="count"
        units={units}
        value={piece.onHand ?? null}
        proposal={10}
        range={STAND_RANGES.onHand}
        onValue={(onHand) => onPiece(withCount(onHand))}
      />
      <ChoiceTiles
        label={text.kind}
        tiles={(['adhesive', 'clip-on'] as const).map((value) => ({
          value,
          word: words.bench.kinds[value],
        }))}
        chosen={piece.fitting}
        onChoose={(fitting) => onPiece({ ...piece, fitting })}
      />
      <button type="button" className="plain bench-add" onClick={onRemove}>
        <MinusIcon />
        {text.removePiece}
      </button>
    </div>
  );
}

/** The block as long as the piece, to one scale; a clip-on has its hook. */
function PieceSign({ piece }: { readonly piece: Piece }) {
  const length = Math.min(Math.max(piece.lengthMm, 8), 60);
  return (
    <svg className="piece-sign" viewBox="0 0 64 28" aria-hidden="true" focusable="false">
      <rect className="shape-weight" x={1} y={10} width={length} height={16} />
      {piece.fitting === 'clip-on' && (
        <path className="seat-cross" d={`M${length / 2 - 6} 10 V3 H${length / 2 + 6} V10`} />
      )}
    </svg>
  );
}
