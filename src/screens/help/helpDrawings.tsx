import type { ReactNode } from 'react';

import { clockPoint, sectorPath } from '../parts/polar.ts';
import { HeavyDrop, LightRing, ValveStem } from '../parts/shapes.tsx';
import type { HelpTopic } from './helpTopic.ts';

/** A number in a ring, at the thing that its line is about. */
function Mark({ n, x, y }: { readonly n: number; readonly x: number; readonly y: number }) {
  return (
    <g className="help-mark" transform={`translate(${x} ${y})`}>
      <circle r={17} />
      <text textAnchor="middle" y={8}>
        {n}
      </text>
    </g>
  );
}

/** The wheel from above; what lies on it is drawn about its middle. */
function FromAbove(props: {
  readonly x: number;
  readonly y: number;
  readonly children?: ReactNode;
}) {
  return (
    <g transform={`translate(${props.x} ${props.y})`}>
      <circle className="help-tyre" r={112} />
      <circle className="help-part" r={68} />
      <circle className="help-hole" r={15} />
      <g className="help-valve" transform="translate(0 -66)">
        <ValveStem />
      </g>
      {props.children}
    </g>
  );
}

/** The wheel's section on ball and plate, leaning by so many degrees. */
function FromTheSide({ leanDeg = 0 }: { readonly leanDeg?: number }) {
  return (
    <>
      <path className="help-part" d="M120 210 H280 V222 H120 Z" />
      <path className="help-line" d="M140 222 V244 M200 222 V244 M260 222 V244 M40 246 H360" />
      <circle className="help-ball" cx={200} cy={190} r={20} />
      <g transform={`rotate(${leanDeg} 200 190)`}>
        <path
          className="help-tyre"
          d="M50 128 q0 -14 14 -14 h40 v70 h-40 q-14 0 -14 -14 Z M350 128 q0 -14 -14 -14 h-40 v70 h40 q14 0 14 -14 Z"
        />
        <path className="help-rim" d="M104 120 H114 V166 H186 V178 M296 120 H286 V166 H214 V178" />
        <path className="help-edge" d="M50 146 H104 M296 146 H350" />
      </g>
    </>
  );
}

const shed = (
  <>
    <path className="help-line" d="M20 24 H400 M120 24 V54" />
    <rect className="help-sheet" x={40} y={54} width={330} height={190} rx={4} />
    <g transform="translate(78 62) scale(0.6)">
      <FromAbove x={100} y={112}>
        <g transform="rotate(75) translate(0 -68) scale(1.25)" className="help-chalk">
          <HeavyDrop />
        </g>
        <g transform="rotate(255) translate(0 -72)">
          <LightRing />
        </g>
      </FromAbove>
    </g>
    <path className="help-line" d="M226 96 H330 M226 126 H300" />
    <path className="help-solid" d="M40 204 H370 V240 q0 4 -4 4 H44 q-4 0 -4 -4 Z" />
    <Mark n={1} x={120} y={30} />
    <Mark n={2} x={205} y={224} />
    <Mark n={3} x={356} y={70} />
  </>
);

const wheel = (
  <>
    <path className="help-line" d="M70 30 V236" />
    {[30, 82, 134].map((y) => (
      <g key={y} transform={`translate(70 ${y})`}>
        <circle className="help-solid" r={18} />
        <path className="help-tick" d="M-8 0 L-2 7 L9 -7" />
        <path className="help-line" d="M40 0 H190" />
      </g>
    ))}
    <circle className="help-ball" cx={70} cy={186} r={22} />
    <path className="help-accent" d="M62 174 H78 L76 188 L70 200 L64 188 Z" />
    <path className="help-line" d="M110 186 H260" />
    <circle className="help-ball" cx={70} cy={238} r={9} />
    <rect className="help-solid" x={290} y={164} width={110} height={44} rx={4} />
    <Mark n={1} x={24} y={110} />
    <Mark n={2} x={345} y={186} />
    <Mark n={3} x={300} y={244} />
  </>
);

const bench = (
  <>
    <path className="help-part" d="M90 214 H310 V236 H90 Z" />
    <circle className="help-ball" cx={200} cy={144} r={70} />
    <path className="help-tyre" d="M20 72 H146 V94 H20 Z M254 72 H380 V94 H254 Z" />
    <path className="help-plumb" d="M200 40 V164" />
    <path className="help-line" d="M188 144 H212 M200 132 V156" />
    <circle className="help-ball" cx={200} cy={166} r={11} />
    <path
      className="help-solid"
      d="M200 166 V155 A11 11 0 0 1 211 166 Z M200 166 V177 A11 11 0 0 1 189 166 Z"
    />
    <Mark n={1} x={330} y={50} />
    <Mark n={2} x={240} y={168} />
    <Mark n={3} x={52} y={176} />
    <circle className="help-broken" cx={96} cy={176} r={13} />
  </>
);

const stand = (
  <>
    <FromTheSide />
    <path className="help-laser" d="M20 146 H400" />
    <rect className="help-solid" x={2} y={134} width={26} height={24} />
    <g transform="translate(384 40) rotate(38)">
      <rect className="help-sheet" x={-34} y={-6} width={68} height={12} />
    </g>
    <path className="help-line" d="M398 52 V246" />
    <path className="help-view" d="M374 50 L300 128 M374 50 L352 148" />
    <Mark n={1} x={200} y={232} />
    <Mark n={2} x={34} y={112} />
    <Mark n={3} x={338} y={34} />
  </>
);

const sight = (
  <>
    <rect className="help-sheet" x={30} y={20} width={360} height={224} rx={6} />
    <path
      className="help-tyre"
      d="M40 110 Q210 236 380 110 V200 Q210 300 40 200 Z"
      clipPath="inset(0)"
    />
    <path className="help-edge" d="M40 132 Q210 250 380 132" />
    <path className="help-laser" d="M40 118 Q210 238 380 118" />
    <path className="help-tape" d="M256 176 L286 168 L296 206 L262 216 Z" />
    <path className="help-line" d="M210 160 V204 M188 182 H232" />
    <Mark n={1} x={140} y={146} />
    <Mark n={2} x={310} y={214} />
    <path className="help-line" d="M210 40 V104 M196 88 L210 106 L224 88" />
    <Mark n={3} x={246} y={66} />
  </>
);

const sweep = (
  <>
    <FromAbove x={190} y={136} />
    <path className="help-accent-band" d={sectorTo(190, 136, 200)} />
    <path className="help-line" d="M96 30 A142 142 0 0 1 284 30 M284 30 L262 28 M284 30 L276 8" />
    <path className="help-solid" d="M176 254 h28 v14 h-28 Z" />
    <Mark n={1} x={320} y={40} />
    <Mark n={2} x={296} y={190} />
    <Mark n={3} x={80} y={214} />
  </>
);

function sectorTo(x: number, y: number, degrees: number): string {
  const from = clockPoint(180, 124);
  const to = clockPoint(180 + degrees, 124);
  return `M${x + from.x} ${y + from.y} A124 124 0 1 1 ${x + to.x} ${y + to.y}`;
}

const reading = (
  <FromAbove x={200} y={136}>
    <path className="help-wedge" d={sectorPath(244, 266, 16, 68)} />
    <g transform="rotate(75) translate(0 -68) scale(1.3)" className="help-chalk">
      <HeavyDrop />
    </g>
    <g transform="rotate(255) translate(0 -72) scale(1.2)">
      <LightRing />
    </g>
    <Mark n={1} x={150} y={-38} />
    <Mark n={2} x={-150} y={38} />
    <Mark n={3} x={-36} y={30} />
  </FromAbove>
);

const weights = (
  <FromAbove x={200} y={124}>
    <path className="help-solid" d={sectorPath(164, 196, 44, 66)} />
    <path className="help-barred" d={sectorPath(60, 110, 44, 66)} />
    <path className="help-line" d="M-14 128 h28 v14 h-28 Z M0 112 V84" />
    <Mark n={1} x={60} y={134} />
    <Mark n={2} x={-60} y={60} />
    <Mark n={3} x={130} y={10} />
  </FromAbove>
);

const proof = (
  <>
    <FromTheSide />
    <path className="help-laser" d="M20 146 H400" />
    <path className="help-solid" d="M114 124 h10 v24 h-10 Z" />
    <circle className="help-solid" cx={200} cy={60} r={30} />
    <path className="help-tick" d="M-14 1 L-4 12 L15 -11" transform="translate(200 60)" />
    <Mark n={1} x={150} y={100} />
    <Mark n={2} x={250} y={60} />
    <Mark n={3} x={376} y={196} />
  </>
);

const byEye = (
  <>
    <FromTheSide leanDeg={6} />
    <path className="help-laser" d="M10 146 H410" />
    <g transform="translate(78 96) scale(1.1)">
      <LightRing />
    </g>
    <path className="help-eye" d="M300 40 Q340 8 380 40 Q340 72 300 40 Z" />
    <circle className="help-solid" cx={340} cy={40} r={11} />
    <Mark n={1} x={122} y={66} />
    <Mark n={2} x={276} y={40} />
    <Mark n={3} x={376} y={214} />
  </>
);

/** One drawing a topic, 420 × 270, its numbers those of the topic's lines. */
export const HELP_DRAWINGS: Readonly<Record<HelpTopic, ReactNode>> = {
  shed,
  wheel,
  bench,
  stand,
  sight,
  sweep,
  reading,
  weights,
  proof,
  byEye,
};
