/** Eight directions in the room from azimuth 0 clockwise, as the person at the camera says them. */
export const directions = [
  'toward the camera',
  'toward the camera and to the left',
  'to the left',
  'to the far left',
  'away from the camera',
  'to the far right',
  'to the right',
  'toward the camera and to the right',
];
