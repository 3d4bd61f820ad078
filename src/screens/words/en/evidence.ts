/**
 * Names of evidence whose own words would not tell enough, and the unit where the name has none of
 * its own. Others are told by the program's name with spaces.
 */
export const evidence: Readonly<Record<string, readonly [name: string, unit?: string]>> = {
  coveredDeg: ['turn seen'],
  neededDeg: ['turn needed'],
  usualShare: ['share of the line usually in sight'],
  inlierShare: ['share of the line on one curve'],
  residualPx: ['line off its curve by'],
  spanDeg: ['line seen round the tread'],
  turnWithoutLineDeg: ['turned without the line in sight'],
  readUntilS: ['read as far as', '\u00a0s'],
  changeAboveOutline: ['change above the outline, steps'],
  changeBelowIt: ['change below it, steps'],
  shareOfTreadCovered: ['share of the tread covered'],
  treadPastEdgeMm: ['tread moved past the edge by'],
  secondsWithoutLine: ['without the line', '\u00a0s'],
  longestSeconds: ['longest stretch of that', '\u00a0s'],
  movedPx: ['line found off its place by'],
  aboutSecond: ['at about', '\u00a0s'],
  degreesBetweenPictures: ['turned from picture to picture', '°'],
  widestGapDeg: ['widest hole'],
  rockingRmsMm: ['rocking at the edge'],
  radius95Mm: ['± of the edge’s rise'],
  changeMm: ['change of the edge’s rise'],
  standLeanMrad: ['lean of the stand'],
};
