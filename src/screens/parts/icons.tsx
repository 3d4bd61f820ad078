/** Small drawings for buttons; each stands beside its words or an aria-label. */

function Icon({ path }: { readonly path: string }) {
  return (
    <svg className="icon" viewBox="0 0 32 32" aria-hidden="true" focusable="false">
      <path d={path} />
    </svg>
  );
}

/** The sign of the product: a bob that hangs from the top of the screen. */
export const PlumbIcon = () => (
  <svg className="icon icon-plumb" viewBox="0 0 32 64" aria-hidden="true" focusable="false">
    <path d="M16 -20 V34" />
    <path className="icon-solid" d="M9 34 H23 L21 44 L16 58 L11 44 Z" />
  </svg>
);

export const SoundOnIcon = () => (
  <Icon path="M4 12 H9 L16 6 V26 L9 20 H4 Z M20 12 Q23 16 20 20 M24 8 Q30 16 24 24" />
);
export const SoundOffIcon = () => (
  <Icon path="M4 12 H9 L16 6 V26 L9 20 H4 Z M21 12 L29 20 M29 12 L21 20" />
);
export const SunIcon = () => (
  <Icon path="M16 10 A6 6 0 1 0 16 22 A6 6 0 1 0 16 10 M16 2 V6 M16 26 V30 M2 16 H6 M26 16 H30 M6 6 L9 9 M23 23 L26 26 M26 6 L23 9 M9 23 L6 26" />
);
export const MoonIcon = () => <Icon path="M20 4 A12.5 12.5 0 1 0 28 20 A10 10 0 0 1 20 4 Z" />;
export const FilmIcon = () => (
  <Icon path="M3 6 H29 V26 H3 Z M9 6 V26 M23 6 V26 M3 12 H9 M3 20 H9 M23 12 H29 M23 20 H29" />
);
export const CameraIcon = () => (
  <Icon path="M3 9 H10 L12 6 H20 L22 9 H29 V26 H3 Z M16 12 A5 5 0 1 0 16 22 A5 5 0 1 0 16 12" />
);
export const WheelIcon = () => (
  <Icon path="M16 3 A13 13 0 1 0 16 29 A13 13 0 1 0 16 3 M16 9 A7 7 0 1 0 16 23 A7 7 0 1 0 16 9 M16 14 A2 2 0 1 0 16 18 A2 2 0 1 0 16 14" />
);
export const CautionIcon = () => <Icon path="M16 4 L29 27 H3 Z M16 12 V19 M16 22 V24" />;
