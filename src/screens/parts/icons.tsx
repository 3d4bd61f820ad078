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
export const BackIcon = () => <Icon path="M28 16 H5 M14 6 L4 16 L14 26" />;
export const HelpIcon = () => (
  <Icon path="M10 12 A6 6 0 1 1 18 17 Q16 18 16 21 M16 26.5 V27 M16 1.5 A14.5 14.5 0 1 0 16 30.5 A14.5 14.5 0 1 0 16 1.5" />
);
/** Three sliders, as on a mixing desk. */
export const SettingsIcon = () => (
  <Icon path="M4 8 H18 M26 8 H28 M22 4.5 V11.5 M4 16 H7 M15 16 H28 M11 12.5 V19.5 M4 24 H16 M24 24 H28 M20 20.5 V27.5" />
);
export const PlusIcon = () => <Icon path="M16 4 V28 M4 16 H28" />;
export const MinusIcon = () => <Icon path="M4 16 H28" />;
export const UndoIcon = () => <Icon path="M5 11 H20 A7.5 7.5 0 0 1 20 26 H10 M12 4 L5 11 L12 18" />;
export const BookIcon = () => (
  <Icon path="M16 8 Q10 3 3 6 V26 Q10 23 16 28 Q22 23 29 26 V6 Q22 3 16 8 Z M16 8 V28" />
);
/** A plate on its screws, a ball on it. */
export const StandIcon = () => (
  <Icon path="M4 20 H28 V24 H4 Z M8 24 V29 M24 24 V29 M16 6.5 A6.7 6.7 0 1 0 16 20 A6.7 6.7 0 1 0 16 6.5" />
);
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
/** Out through the shed's door. */
export const TakeOutIcon = () => (
  <Icon path="M18 4 H5 V28 H18 M12 16 H28 M22 9.5 L28.5 16 L22 22.5" />
);
export const PlayIcon = () => <Icon path="M4 5 H28 V27 H4 Z M13 11 L21 16 L13 21 Z" />;
