/** The pattern of days away, drawn once for all weeks. */
export const AwayPattern = () => (
  <svg className="away-pattern" aria-hidden="true">
    <pattern
      id="roster-away"
      width="8"
      height="8"
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <line x1="1" x2="1" y1="0" y2="8" />
    </pattern>
  </svg>
);
