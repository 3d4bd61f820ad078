import { useRef, useState, type PointerEvent } from 'react';

import type { WheelArcRecord } from '../../contract/logbook.ts';
import { shortWayDeg, wrapTurnDeg } from '../../quantities/angle.ts';
import { wheelAngleAt } from './wheelAngleAt.ts';

/** A stretch shorter than this was a slip of the finger, degrees. */
const SHORTEST_ARC_DEG = 4;

/** Follows one finger along the rim; the stretch runs the way the finger went. */
export function useDrawnArc(onArc: (arc: WheelArcRecord) => void) {
  const [drawn, setDrawn] = useState<WheelArcRecord | null>(null);
  const course = useRef<{ startDeg: number; lastDeg: number; sumDeg: number } | null>(null);
  const arcOf = ({ startDeg, sumDeg }: { startDeg: number; sumDeg: number }): WheelArcRecord => {
    const ends = sumDeg >= 0 ? [startDeg, startDeg + sumDeg] : [startDeg + sumDeg, startDeg];
    return { fromDeg: wrapTurnDeg(ends[0]!), toDeg: wrapTurnDeg(ends[1]!) };
  };
  return {
    drawn,
    onPointerDown(event: PointerEvent<HTMLElement>) {
      event.currentTarget.setPointerCapture(event.pointerId);
      const startDeg = wheelAngleAt(event);
      course.current = { startDeg, lastDeg: startDeg, sumDeg: 0 };
    },
    onPointerMove(event: PointerEvent<HTMLElement>) {
      if (course.current === null) return;
      const nowDeg = wheelAngleAt(event);
      const { startDeg, lastDeg, sumDeg } = course.current;
      const whole = Math.max(-359, Math.min(359, sumDeg + shortWayDeg(lastDeg, nowDeg)));
      course.current = { startDeg, lastDeg: nowDeg, sumDeg: whole };
      setDrawn(arcOf(course.current));
    },
    onPointerUp() {
      const done = course.current;
      course.current = null;
      setDrawn(null);
      if (done !== null && Math.abs(done.sumDeg) >= SHORTEST_ARC_DEG) onArc(arcOf(done));
    },
    onPointerCancel() {
      course.current = null;
      setDrawn(null);
    },
  };
}
