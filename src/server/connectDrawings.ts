/** A tablet's outline with room for what its screen shows: 200 × 128 inside. */
const tablet = (screen: string) =>
  '<rect class="body" x="20" y="16" width="228" height="156" rx="12"/>' +
  '<rect class="screen" x="34" y="30" width="200" height="128" rx="3"/>' +
  screen;

const warning = tablet(
  '<path class="sign" d="M134 50 L176 124 H92 Z"/>' +
    '<path class="mark" d="M134 76 V98"/><circle class="dot" cx="134" cy="110" r="4"/>' +
    '<path class="line" d="M188 142 H222 M212 132 L222 142 L212 152"/>',
);

const trust = tablet(
  '<rect class="sheet" x="52" y="46" width="74" height="96" rx="3"/>' +
    '<path class="line thin" d="M64 64 H114 M64 78 H114 M64 92 H98"/>' +
    '<circle class="seal" cx="102" cy="118" r="12"/><path class="line thin" d="M97 118 l4 4 l7 -8"/>' +
    '<rect class="switch" x="152" y="78" width="64" height="34" rx="17"/>' +
    '<circle class="knob" cx="199" cy="95" r="12"/>',
);

/** The wheel from the side on its ball, light side above the level line: the app's own sign. */
const app = tablet(
  '<path class="line thin" d="M84 144 H184"/><circle class="ball" cx="134" cy="128" r="15"/>' +
    '<g transform="rotate(-7 134 128)"><rect class="tyre" x="62" y="70" width="38" height="48" rx="10"/>' +
    '<rect class="tyre" x="168" y="70" width="38" height="48" rx="10"/>' +
    '<path class="rim" d="M100 84 H168 V96 H146 V118 H122 V96 H100 Z"/></g>' +
    '<path class="laser" d="M40 92 H228"/>',
);

const DRAWINGS = [warning, trust, app] as const;

/** Drawing of one of the three steps; `label` says in words what it shows. */
export function stepDrawing(step: 0 | 1 | 2, label: string): string {
  return `<svg viewBox="0 0 268 188" role="img" aria-label="${label}">${DRAWINGS[step]}</svg>`;
}
