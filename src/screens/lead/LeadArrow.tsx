import { formatDeg } from '../words/numbers.ts';

/** The way round as the wheel lies before the person, and how far: one glance takes in both. */
export function LeadArrow({ byDeg }: { readonly byDeg: number }) {
  return (
    <svg className="lead-arrow" viewBox="-64 -64 128 118" focusable="false">
      <g transform={byDeg > 0 ? undefined : 'scale(-1 1)'}>
        <path d="M-36.8 36.8 A52 52 0 1 1 36.8 36.8" />
        <path d="M37.5 15 L36.8 36.8 L58.5 36" />
      </g>
      <text y={13}>{formatDeg(Math.abs(byDeg))}</text>
    </svg>
  );
}
