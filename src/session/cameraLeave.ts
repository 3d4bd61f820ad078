/**
 * Whether the browser will ask the person before it opens a camera; true also where it does not tell.
 * A camera that was refused for good is not asked for again: opening it says so.
 *
 * Source: W3C Permissions, section 5.1; Media Capture and Streams, section 10.6.
 */
export async function cameraWillBeAsked(): Promise<boolean> {
  try {
    // The compiler's list of names is shorter than the browsers'.
    const { state } = await navigator.permissions.query({ name: 'camera' as PermissionName });
    return state === 'prompt';
  } catch {
    return true;
  }
}
