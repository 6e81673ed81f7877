// Reading a quantity that a person typed: the engine reads it, and says what is allowed.
import { useRef, useState } from 'preact/hooks';
import { isProblem } from '../engine/desk';
import type { QuantityRequest } from '../engine/requests';
import { useApp } from '../state/app';

export interface Asked {
  dimension: QuantityRequest['dimension'];
  subject: string;
  /** SI. */
  low?: number;
  high?: number;
  /** Taken for a bare number, since the unit stands beside the field. */
  unit: string;
}

const BARE = /^\s*[+-]?(\d+\.?\d*|\.\d+)\s*$/;

export function useQuantity(asked: Asked) {
  const { desk } = useApp();
  const [trouble, setTrouble] = useState<string | undefined>();
  const turn = useRef(0);
  /** The value in SI, or nothing: then `trouble` says why. */
  const read = async (text: string): Promise<number | undefined> => {
    turn.current += 1;
    const mine = turn.current;
    const { unit, ...rest } = asked;
    const outcome = await desk.ask({
      question: 'quantity', ...rest, text: BARE.test(text) ? `${text.trim()} ${unit}` : text,
    });
    if (mine !== turn.current) return undefined;
    if (isProblem(outcome)) {
      setTrouble(`${outcome.problem.message} ${outcome.problem.remedy}`.trim());
      return undefined;
    }
    setTrouble(undefined);
    return outcome.value;
  };
  return { read, trouble };
}
