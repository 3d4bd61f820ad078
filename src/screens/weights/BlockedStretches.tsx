import { useState } from 'react';

import type { WheelArcRecord } from '../../contract/logbook.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { formatClockAndDeg, parseTyped } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface BlockedStretchesProps {
  readonly arcs: readonly WheelArcRecord[];
  readonly drawing: boolean;
  readonly onDrawing: (drawing: boolean) => void;
  readonly onArcs: (arcs: readonly WheelArcRecord[]) => void;
}

/** Stretches of the rim where no weight can go: drawn on the wheel, or typed. */
export function BlockedStretches({ arcs, drawing, onDrawing, onArcs }: BlockedStretchesProps) {
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const typed = typedArc(from, to);
  return (
    <section className="blocked" aria-labelledby="blocked-title">
      <h2 id="blocked-title">{words.weights.blocked}</h2>
      <p>{words.weights.blockedHelp}</p>
      <button
        type="button"
        className={drawing ? 'main' : 'plain'}
        aria-pressed={drawing}
        onClick={() => onDrawing(!drawing)}
      >
        {drawing ? words.weights.blockedDone : words.weights.blockedDraw}
      </button>
      <ul className="blocked-list">
        {arcs.length === 0 && <li>{words.weights.blockedNone}</li>}
        {arcs.map((arc, index) => (
          <li key={`${arc.fromDeg} ${arc.toDeg}`}>
            <span>
              {formatClockAndDeg(arc.fromDeg)} – {formatClockAndDeg(arc.toDeg)}
            </span>
            <button
              type="button"
              className="plain"
              aria-label={words.weights.blockedRemove(
                formatClockAndDeg(arc.fromDeg),
                formatClockAndDeg(arc.toDeg),
              )}
              onClick={() => onArcs(arcs.filter((_, other) => other !== index))}
            >
              <span aria-hidden="true">×</span>
            </button>
          </li>
        ))}
      </ul>
      <form
        className="blocked-typed"
        onSubmit={(event) => {
          event.preventDefault();
          if (typed === null) return;
          onArcs([...arcs, typed]);
          setFrom('');
          setTo('');
        }}
      >
        <label>
          {words.weights.blockedFrom}
          <input inputMode="decimal" value={from} onChange={(e) => setFrom(e.target.value)} />
        </label>
        <label>
          {words.weights.blockedTo}
          <input inputMode="decimal" value={to} onChange={(e) => setTo(e.target.value)} />
        </label>
        <button type="submit" className="plain" disabled={typed === null}>
          {words.weights.blockedAdd}
        </button>
      </form>
    </section>
  );
}

function typedArc(from: string, to: string): WheelArcRecord | null {
  const fromDeg = parseTyped(from);
  const toDeg = parseTyped(to);
  if (fromDeg === null || toDeg === null || fromDeg === toDeg) return null;
  return { fromDeg: wrapTurnDeg(fromDeg), toDeg: wrapTurnDeg(toDeg) };
}
