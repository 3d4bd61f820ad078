/**
 * The four shapes that mean the same everywhere. Each is drawn about the origin, which lies on the
 * rim, pointing outward (up): turn and move it with a transform. Sizes in drawing units.
 */

/** Heavy spot: a solid drop that hangs from the rim by its tip. */
export function HeavyDrop() {
  return (
    <path
      className="shape-heavy"
      d="M0 -1 C-4 -11 -13 -16 -13 -26 A13 13 0 0 1 13 -26 C13 -16 4 -11 0 -1 Z"
    />
  );
}

/** Light spot: an open ring that stands off the rim. */
export function LightRing() {
  return <circle className="shape-light" cx={0} cy={-24} r={11.5} />;
}

/** Valve: a small stem. */
export function ValveStem() {
  return (
    <g className="shape-valve">
      <rect x={-4} y={-16} width={8} height={16} rx={1.5} />
      <rect x={-6.5} y={-24} width={13} height={8} rx={2} />
    </g>
  );
}

export type LegendShape = 'heavy' | 'light' | 'weight' | 'left';

/** The same shapes beside words. The drop hangs: what is heavy points down. */
export function ShapeSign({ shape }: { readonly shape: LegendShape }) {
  return (
    <svg className="shape-sign" viewBox="-20 -20 40 40" aria-hidden="true" focusable="false">
      {shape === 'heavy' && (
        <g transform="translate(0 -19) rotate(180)">
          <HeavyDrop />
        </g>
      )}
      {shape === 'light' && (
        <g transform="translate(0 24)">
          <LightRing />
          <path className="shape-rim" d="M-18 -8 H18" />
        </g>
      )}
      {shape === 'weight' && (
        <rect className="shape-weight" x={-18} y={-9} width={36} height={18} />
      )}
      {shape === 'left' && (
        <path className="shape-left" d="M-18 12 H18 M-9 12 V-4 M0 12 V2 M9 12 V7" />
      )}
    </svg>
  );
}
