import { HeavyDrop, LightRing } from '../parts/shapes.tsx';
import { words } from '../words/words.ts';
import './start.css';

/** Lean of the drawn wheel, degrees: some ten times a real one, so that it can be seen. */
const DRAWN_LEAN_DEG = 7;

/** What happens on the stand, at a glance: heavy side below the level line, light side above. */
export function StandFromTheSide() {
  return (
    <figure className="stand-drawing">
      <svg viewBox="0 58 640 300" role="img" aria-label={words.start.drawingText}>
        <path className="drawn-ground" d="M40 352 H600" />
        <path className="drawn-part" d="M180 316 H460 V334 H180 Z" />
        <path className="drawn-line-thin" d="M206 334 V352 M320 334 V352 M434 334 V352" />
        <circle className="drawn-ball" cx={320} cy={283} r={33} />
        <g transform={`rotate(${DRAWN_LEAN_DEG} 320 283)`}>
          <path
            className="drawn-tyre"
            d="M88 176 Q88 150 116 150 H180 V262 H116 Q88 262 88 236 Z M552 176 Q552 150 524 150 H460 V262 H524 Q552 262 552 236 Z"
          />
          <path
            className="drawn-rim"
            d="M180 160 H196 V240 H298 V262 M460 160 H444 V240 H342 V262"
          />
          <path className="drawn-edge" d="M86 202 H180 M460 202 H554" />
        </g>
        <path className="drawn-laser" d="M16 203 H624" />
        <g transform="translate(500 277) rotate(180) scale(1.6)">
          <HeavyDrop />
        </g>
        <g transform="translate(118 122) scale(1.6)">
          <LightRing />
        </g>
        <text className="drawn-word" x={530} y={332}>
          {words.start.drawnHeavy}
        </text>
        <text className="drawn-word" x={160} y={94}>
          {words.start.drawnLight}
        </text>
      </svg>
    </figure>
  );
}
