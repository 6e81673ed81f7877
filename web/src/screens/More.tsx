// The ways to what is not needed with a rod in the hand.
import './more.css';

const WAYS: { to: string; name: string; words: string }[] = [
  { to: 'rigs', name: 'Rigs', words: 'Your boat: booms, lines, balls, clips. Edit, copy, import, export.' },
  { to: 'compare', name: 'Compare', words: 'Rigs side by side: how deep, with what load, and what buys more.' },
  { to: 'settings', name: 'Settings', words: 'Units, day and night, what this page can do here, everything in one file.' },
];

export function More() {
  return (
    <section class="screen more" aria-labelledby="more-title">
      <h1 id="more-title">More</h1>
      <ul>
        {WAYS.map((way) => (
          <li key={way.to}>
            <a href={`#${way.to}`}><strong>{way.name}</strong><span>{way.words}</span></a>
          </li>
        ))}
      </ul>
    </section>
  );
}
