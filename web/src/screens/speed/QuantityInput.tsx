// A field for one figure that may be left open. The engine reads it and says what is wrong with it.
import { useEffect, useId, useRef } from 'preact/hooks';
import { useQuantity, type Asked } from '../../parts/quantity';

interface Props {
  name: string;
  asked: Asked;
  /** As it stands now, in words; empty: open. */
  value: string;
  hint?: string | undefined;
  /** SI; null when the field was emptied. Not called while it cannot be read. */
  onInput(si: number | null): void;
}

export function QuantityInput({ name, asked, value, hint, onInput }: Props) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const { read, trouble } = useQuantity(asked);
  // A value set from elsewhere is shown, but never under the typing hand.
  useEffect(() => {
    if (input.current && document.activeElement !== input.current) input.current.value = value;
  }, [value]);
  const take = async (text: string): Promise<void> => {
    if (text.trim() === '') {
      onInput(null);
      return;
    }
    const si = await read(text);
    if (si !== undefined) onInput(si);
  };
  return (
    <label class="field">
      <span class="name">{name}</span>
      <input ref={input} defaultValue={value} inputMode="decimal" autocomplete="off"
        placeholder={asked.unit} aria-invalid={trouble !== undefined} aria-describedby={id}
        onInput={(event) => void take(event.currentTarget.value)}
        onBlur={(event) => { if (!trouble) event.currentTarget.value = value; }} />
      <span id={id} class={trouble ? 'hint wrong' : 'hint'} role={trouble ? 'alert' : undefined}>
        {trouble ?? hint}
      </span>
    </label>
  );
}
