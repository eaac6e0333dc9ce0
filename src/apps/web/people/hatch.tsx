/** The pattern of days away, drawn once for all rows. */
export const Hatch = () => (
  <svg className="people-hatch" aria-hidden="true">
    <pattern id="away" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line x1="1" x2="1" y1="0" y2="8" />
    </pattern>
  </svg>
);
