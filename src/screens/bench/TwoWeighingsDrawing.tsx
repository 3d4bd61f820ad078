/** A wheel upright on two rails, one on a scale and one on a block, seen along the rails. */
export function TwoWeighingsDrawing() {
  return (
    <svg className="weigh-drawing" viewBox="0 0 360 190" aria-hidden="true" focusable="false">
      <path className="drawn-ground" d="M20 182 H340" />
      <rect className="drawn-tyre" x={112} y={14} width={136} height={128} rx={18} />
      <path className="drawn-edge" d="M150 18 V138 M210 18 V138" />
      <circle className="bench-centre" cx={186} cy={78} r={8} />
      <path className="weigh-plumb" d="M186 78 V160" />
      <rect className="drawn-part" x={126} y={142} width={12} height={14} />
      <rect className="drawn-part" x={222} y={142} width={12} height={14} />
      <path className="drawn-part" d="M84 156 H178 V170 H84 Z M96 170 H166 V182 H96 Z" />
      <circle className="drawn-ball" cx={131} cy={169} r={8} />
      <path className="drawn-part" d="M206 156 H276 V182 H206 Z" />
    </svg>
  );
}
