/** Names of cameras that tell no facing: "camera2 1, facing front", "Front Camera". */
const FRONT_LABEL = /\bfront\b|\buser.?facing\b/i;

/**
 * Whether a camera may hand its picture on mirrored: the one on the tablet's face is made for faces,
 * and some tablets do. One that tells nothing of itself is taken for a camera on a cable: these do not.
 */
export function mayMirror(stream: MediaStream): boolean {
  return stream.getVideoTracks().some((track) => {
    const { facingMode } = track.getSettings();
    return facingMode === undefined ? FRONT_LABEL.test(track.label) : facingMode === 'user';
  });
}
