/**
 * What a page of the app may load and do (Content Security Policy Level 3): its own files, pictures
 * and films that it made itself, and nothing else. No inline script or style, no `eval`, no request
 * to any other origin.
 */
const POLICY: Readonly<Record<string, string>> = {
  'default-src': "'self'",
  'script-src': "'self'",
  'style-src': "'self'",
  // The film reader starts a worker of its own text where a film carries transparency.
  'worker-src': "'self' blob:",
  'img-src': "'self' blob: data:",
  'media-src': "'self' blob:",
  'connect-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'frame-src': "'none'",
  'object-src': "'none'",
};

/** Only as a header: a browser ignores it in a page's own text, and says so as an error. */
const HEADER_ONLY_POLICY: Readonly<Record<string, string>> = { 'frame-ancestors': "'none'" };

/**
 * What the app uses: the camera; the motion sensors for the camera's down tilt; a screen that stays
 * awake. All else that a page could ask for is off, also for the app itself.
 */
const ALLOWED_FEATURES = ['camera', 'accelerometer', 'gyroscope', 'screen-wake-lock', 'fullscreen'];
const REFUSED_FEATURES = [
  'display-capture',
  'geolocation',
  'hid',
  'idle-detection',
  'local-fonts',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'publickey-credentials-get',
  'serial',
  'usb',
];

/** The policy as a page's own `<meta>`: it holds wherever the built folder is served from. */
export function pagePolicy(): string {
  return policyText(POLICY);
}

/** Headers that go with every answer of the server, also with a refusal. */
export function securityHeaders(): Readonly<Record<string, string>> {
  return {
    'Content-Security-Policy': policyText({ ...POLICY, ...HEADER_ONLY_POLICY }),
    'Permissions-Policy': [
      ...ALLOWED_FEATURES.map((feature) => `${feature}=(self)`),
      ...REFUSED_FEATURES.map((feature) => `${feature}=()`),
    ].join(', '),
    // Isolates the page from every other, so that none can read its memory.
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Embedder-Policy': 'require-corp',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Referrer-Policy': 'no-referrer',
    'X-Content-Type-Options': 'nosniff',
  };
}

function policyText(policy: Readonly<Record<string, string>>): string {
  return Object.entries(policy)
    .map(([directive, sources]) => `${directive} ${sources}`)
    .join('; ');
}
