import type { SolvedGeometry, SolvedSweep } from '../../../src/measure/sweep/solvedSweep.ts';
import { heightScaleMmPerPx } from '../../../src/measure/geometry/heightScale.ts';
import type { StageTruth } from './frameTruth.ts';
import { spreadOf, straightLine, type Spread } from './series.ts';
import { heightScaleRead, type StageShare } from './stageAblation.ts';
import type { StageErrors } from './stageErrors.ts';

/** Everything that is said of one sweep's stages, as numbers: what the JSON file holds. */
export interface StageReport {
  readonly name: string;
  /** Error of the vector with the formula's response, g at the weight radius. */
  readonly errorG: number;
  readonly edgeMm: Spread;
  readonly edgePx: Spread;
  readonly linePx: Spread;
  readonly pooledLinePx: Spread;
  readonly turn: TurnReport;
  /** Azimuth map: error at the sight, and root mean square about it, degrees. */
  readonly azimuthDeg: Spread;
  /** Millimetres per row at the sight, and read over true heights, less 1, per cent. */
  readonly pixelScalePercent: number;
  readonly heightScalePercent: number;
  readonly towardMrad: Spread;
  readonly acrossMrad: Spread;
  readonly residualMm: number;
  readonly shares: readonly StageShare[];
}

interface TurnReport {
  /** Constant part: the tape. */
  readonly meanDeg: number;
  /** Growth over one turn, and what is left about that line. */
  readonly driftDegPerTurn: number;
  readonly rmsDeg: number;
  /** Steps between neighbouring pictures that are wrong by more than {@link JUMP_DEG}. */
  readonly jumps: number;
}

/** A fifth of a tread pitch: no smooth error changes so fast between two pictures. */
const JUMP_DEG = 1;

export function stageReport(
  name: string,
  geometry: SolvedGeometry,
  solved: SolvedSweep,
  truth: StageTruth,
  errors: StageErrors,
  ablation: { readonly errorG: number; readonly shares: readonly StageShare[] },
): StageReport {
  const { camera, sightPx } = geometry.view.sight;
  const radiusMm = geometry.view.setup.wheel.edgeRadiusMm;
  const pixelScale =
    heightScaleMmPerPx(camera, radiusMm, sightPx.xPx, sightPx.yPx) / truth.mmPerPxAtSight.height;
  return {
    name,
    errorG: ablation.errorG,
    edgeMm: spreadOf(errors.edgeMeanMm),
    edgePx: spreadOf(errors.edgePx),
    linePx: spreadOf(errors.linePx),
    pooledLinePx: spreadOf(errors.pooledLinePx),
    turn: turnReport(errors),
    azimuthDeg: spreadOf(errors.azimuthErrorDeg),
    pixelScalePercent: 100 * (pixelScale - 1),
    heightScalePercent: 100 * (heightScaleRead(solved.observations, errors) - 1),
    towardMrad: spreadOf(errors.towardMrad),
    acrossMrad: spreadOf(errors.acrossMrad),
    residualMm: spreadOf(errors.residualMm).rms,
    shares: ablation.shares,
  };
}

function turnReport(errors: StageErrors): TurnReport {
  const { turnDeg, turnErrorDeg } = errors;
  const line = straightLine(turnDeg, turnErrorDeg);
  const about = turnErrorDeg.map((e, i) => e - line.atZero - line.slope * turnDeg[i]);
  let jumps = 0;
  for (let i = 1; i < turnErrorDeg.length; i++) {
    if (Math.abs(turnErrorDeg[i] - turnErrorDeg[i - 1]) > JUMP_DEG) jumps++;
  }
  return {
    meanDeg: spreadOf(turnErrorDeg).mean,
    driftDegPerTurn: 360 * line.slope,
    rmsDeg: spreadOf(about).rms,
    jumps,
  };
}

export function stageTables(reports: readonly StageReport[]): string {
  const pair = (s: Spread, digits: number) => `${s.mean.toFixed(digits)} ± ${s.sd.toFixed(digits)}`;
  const errors = [
    [
      ...['sweep', 'edge mm', 'edge px', 'line px', 'face px', 'tape °', 'drift °', 'rms °'],
      ...['jumps', 'azimuth °', 'px scale %', 'height %', 'toward mrad', 'across mrad', 'fit mm'],
    ],
    ...reports.map((r) => [
      r.name,
      pair(r.edgeMm, 2),
      pair(r.edgePx, 2),
      pair(r.linePx, 2),
      pair(r.pooledLinePx, 2),
      r.turn.meanDeg.toFixed(2),
      r.turn.driftDegPerTurn.toFixed(2),
      r.turn.rmsDeg.toFixed(2),
      String(r.turn.jumps),
      pair(r.azimuthDeg, 2),
      r.pixelScalePercent.toFixed(1),
      r.heightScalePercent.toFixed(1),
      pair(r.towardMrad, 1),
      pair(r.acrossMrad, 1),
      r.residualMm.toFixed(2),
    ]),
  ];
  const stages = reports[0]?.shares.map((s) => s.stage) ?? [];
  const shares = [
    ['sweep', 'whole g', ...stages],
    ...reports.map((r) => [
      r.name,
      r.errorG.toFixed(2),
      ...stages.map((stage) => {
        const share = r.shares.find((s) => s.stage === stage);
        return share ? `${share.contributesG.toFixed(2)} → ${share.leftG.toFixed(2)}` : '–';
      }),
    ]),
  ];
  return [
    'Errors of each stage (mean ± standard deviation over the pictures; read less true)',
    table(errors),
    '',
    'Vector, g at the weight radius: what a stage contributes → what is left with its truth put in',
    table(shares),
  ].join('\n');
}

function table(rows: readonly (readonly string[])[]): string {
  const widths = rows[0].map((_, c) => Math.max(...rows.map((row) => row[c].length)));
  const line = (row: readonly string[]) =>
    row.map((cell, c) => (c === 0 ? cell.padEnd(widths[c]) : cell.padStart(widths[c]))).join('  ');
  return rows.map(line).join('\n');
}
