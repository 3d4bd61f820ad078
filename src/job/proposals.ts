import type { SourcedNumber, StandRecord, WheelRecord } from '../contract/logbook.ts';
import type { SweepSetup } from '../contract/setup.ts';

/**
 * What stands in a record before the person has said anything: a common car wheel on the stand
 * that DESIGN section 1 describes, each value marked as assumed.
 */
export function proposedStand(): StandRecord {
  return {
    ballDiametersMm: [assumed(63.5)],
    plateMaterial: null,
    screws: null,
    lineAbovePlateMm: null,
    camera: { downTiltDeg: assumed(32), horizontalFovDeg: null, deviceId: null },
    // Pieces of the wheel's own step until something is entered (`kindsOnHand`).
    stock: [],
  };
}

export function proposedWheel(id: string, label: string, now: string): WheelRecord {
  return {
    id,
    label,
    place: '',
    tyre: '',
    createdAt: now,
    changedAt: now,
    removedAt: null,
    massKg: assumed(16.5),
    edgeRadiusMm: assumed(305),
    boreDiameterMm: null,
    ballDiameterMm: assumed(63.5),
    pendulumDepthMm: assumed(8),
    mark: { widthMm: 22, colour: 'white' },
    rings: [{ radiusMm: assumed(185), accepts: ['adhesive'] }],
    forbiddenArcs: [],
    weightStepG: 5,
    stage: 'never-read',
    lastReading: null,
  };
}

/**
 * Another wheel of the same set: lengths that go with the size are taken over as they stand, and a
 * measurement of the other wheel counts here as entered. Mass and depth differ from wheel to wheel
 * even within a set (a worn tyre is a kilogram lighter): only assumed.
 */
export function wheelLike(other: WheelRecord, id: string, label: string, now: string): WheelRecord {
  return {
    ...proposedWheel(id, label, now),
    tyre: other.tyre,
    massKg: assumed(other.massKg.value),
    edgeRadiusMm: takenOver(other.edgeRadiusMm),
    boreDiameterMm: other.boreDiameterMm === null ? null : takenOver(other.boreDiameterMm),
    ballDiameterMm: takenOver(other.ballDiameterMm),
    pendulumDepthMm: assumed(other.pendulumDepthMm.value),
    mark: other.mark,
    rings: other.rings.map((ring) => ({ ...ring, radiusMm: takenOver(ring.radiusMm) })),
    weightStepG: other.weightStepG,
  };
}

function takenOver({ value, origin }: SourcedNumber): SourcedNumber {
  return { value, origin: origin === 'assumed' ? 'assumed' : 'entered' };
}

/** A wheel as a setup file describes it; what stands in a file was entered by someone. */
export function wheelOfSetup(id: string, setup: SweepSetup, now: string): WheelRecord {
  const { wheel, stand } = setup;
  return {
    ...proposedWheel(id, setup.label ?? '', now),
    massKg: entered(wheel.massKg),
    edgeRadiusMm: entered(wheel.edgeRadiusMm),
    boreDiameterMm: wheel.boreDiameterMm === undefined ? null : entered(wheel.boreDiameterMm),
    ballDiameterMm: entered(stand.ballDiameterMm),
    pendulumDepthMm: entered(stand.pendulumDepthMm),
    mark: setup.sight.valveMark,
    rings: [{ radiusMm: entered(wheel.weightRadiusMm), accepts: ['adhesive'] }],
    weightStepG: setup.weightStepG,
  };
}

function assumed(value: number): SourcedNumber {
  return { value, origin: 'assumed' };
}

function entered(value: number): SourcedNumber {
  return { value, origin: 'entered' };
}
