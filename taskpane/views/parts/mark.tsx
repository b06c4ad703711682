/** A line that crosses an open bracket. */
export function Mark() {
  return (
    <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" focusable="false">
      <path d="M6 3 H3 V15 H6" fill="none" stroke="var(--wl-ink)" strokeWidth="1.6" />
      <path d="M1 12.5 L16 5.5" fill="none" stroke="var(--wl-accent)" strokeWidth="1.8" />
    </svg>
  );
}
