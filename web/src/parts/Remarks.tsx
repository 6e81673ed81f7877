// Cautions above everything else, notes below.
export function Cautions({ lines }: { lines: string[] }) {
  if (lines.length === 0) return null;
  return (
    <aside class="caution" aria-label="Cautions">
      {lines.map((line) => <p key={line}>{line}</p>)}
    </aside>
  );
}

/** The same in two lines, where every line counts: the first caution, the rest at a tap. */
export function FoldedCautions({ lines }: { lines: string[] }) {
  const [first, ...rest] = lines;
  if (first === undefined) return null;
  return (
    <details class="caution folded">
      <summary>{first} <span class="more">{`${rest.length} more`}</span></summary>
      {rest.map((line) => <p key={line}>{line}</p>)}
    </details>
  );
}

export function Notes({ lines }: { lines: string[] }) {
  if (lines.length === 0) return null;
  return (
    <section aria-label="About these figures" class="soft">
      {lines.map((line) => <p key={line}>{line}</p>)}
    </section>
  );
}
