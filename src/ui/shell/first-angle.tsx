/**
 * The sign of first-angle projection: a cone lying on its side, and its view from the left at the right, on one centre
 * line (ISO 5456-2; proportions after ISO 128, the larger circle twice the smaller).
 */
export const FirstAngle = () => (
  <svg
    className="first-angle"
    viewBox="0 0 62 22"
    width={62}
    height={22}
    role="img"
    aria-label="First-angle projection"
  >
    <path d="M6 7.5L26 3v16L6 14.5z" />
    <circle cx={46} cy={11} r={8} />
    <circle cx={46} cy={11} r={4} />
    <path className="centre" d="M2 11H60M46 0V22" />
  </svg>
)
