/**
 * What a whole sweep's pictures say of the edge: the input of the fit.
 *
 * F frames, A azimuths. Heights are those of the tread edge above the laser plane, millimetres,
 * positive = high = light side; row-major F × A, NaN where nothing was seen. The azimuth's own
 * unknown constant (how well the edge is known there in absolute terms) is `azimuthBiasSdMm`.
 */
export interface SweepObservations {
  /** Azimuths in the room, clockwise seen from above, 0 at the sight; length A. */
  readonly azimuthsDeg: Float64Array;
  /** Frame times, seconds, increasing, uneven; length F. */
  readonly timeS: Float64Array;
  /** Turn of the wheel, unwrapped, 0 when the valve's mark stood at azimuth 0; length F. */
  readonly turnDeg: Float64Array;
  /** Edge height, mm; length F·A, frame by frame. */
  readonly heightMm: Float32Array;
  /** Standard error of each height from the picture alone, mm, without rocking; length F·A. */
  readonly standardErrorMm: Float32Array;
  /** Radius of the edge, mm: turns a lean in radians into a rise in mm. */
  readonly edgeRadiusMm: number;
  /** A-priori standard deviation of each azimuth's own constant error, mm; 0 = none. */
  readonly azimuthBiasSdMm: number;
}
