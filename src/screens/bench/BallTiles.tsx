import type { BallChoice } from '../../balance/ballChoice.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { formatKnown, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface BallTilesProps {
  readonly choice: BallChoice;
  readonly inUseMm: number;
  readonly units: Units;
  readonly onBall: (ballDiameterMm: number) => void;
}

/** The balls on hand, best first, each with what it does to this wheel. */
export function BallTiles({ choice, inUseMm, units, onBall }: BallTilesProps) {
  const { bench } = words;
  const bestMm = choice.recommended?.ballDiameterMm;
  return (
    <ChoiceTiles
      label={bench.ball}
      tiles={choice.ranked.map(({ ballDiameterMm, finding }) => ({
        value: String(ballDiameterMm),
        word: formatKnown('length', ballDiameterMm, units),
        note:
          ballDiameterMm === bestMm && choice.ranked.length > 1
            ? bench.best
            : bench.findings[finding],
      }))}
      chosen={String(inUseMm)}
      onChoose={(value) => onBall(Number(value))}
    />
  );
}
