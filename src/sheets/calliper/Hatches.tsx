// The hatchings of the drawings: brass for what is cut through, ink for pillars seen from above.

export function Hatches() {
  return (
    <defs>
      <pattern id="wheel-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect className="hatch-ground" width="5" height="5" /><line className="hatch-line" x1="0" y1="0" x2="0" y2="5" />
      </pattern>
      <pattern id="pillar-hatch" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect className="hatch-ground" width="4" height="4" /><line className="hatch-ink" x1="0" y1="0" x2="0" y2="4" />
      </pattern>
    </defs>
  );
}
