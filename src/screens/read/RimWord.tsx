import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { clockPoint } from '../parts/polar.ts';

export interface RimWordProps {
  readonly angleDeg: number;
  readonly word: string;
  /** The word's box stays inside this radius, in drawing units. */
  readonly outerRadius: number;
  readonly textUnits: number;
  readonly className?: string;
}

/** Letters of the bold face are about two thirds of their size wide. */
export const LETTER_WIDTH = 0.66;

/** A level word inside the rim, as far out at its angle as its box allows. */
export function RimWord(props: RimWordProps) {
  const { angleDeg, word, outerRadius, textUnits } = props;
  const halfWidth = (word.length * LETTER_WIDTH * textUnits) / 2;
  const halfHeight = textUnits / 2;
  const angle = angleDeg * RAD_PER_DEG;
  const reach = Math.abs(Math.sin(angle)) * halfWidth + Math.abs(Math.cos(angle)) * halfHeight;
  const at = clockPoint(angleDeg, outerRadius - reach);
  return (
    <text className={props.className ?? 'wheel-word'} x={at.x} y={at.y}>
      {word}
    </text>
  );
}
