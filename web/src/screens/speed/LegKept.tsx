// A leg that is kept, and what else was read on it: compass and log, both may stay open.
import { useApp } from '../../state/app';
import { LEAST_S } from './run';
import type { KeptLeg } from './legs';
import { QuantityInput } from './QuantityInput';
import { legBasis, legFigures } from './words';

const DEG = 180 / Math.PI;

export function LegKept({ leg, onChange }: { leg: KeptLeg; onChange(leg: KeptLeg): void }) {
  const { shower } = useApp();
  return (
    <>
      <p class="kept-leg"><strong>{legFigures(leg, shower)}</strong> {legBasis(leg, shower)}
        {leg.seconds < LEAST_S && <span class="wrong"> Too short: at least {LEAST_S} s.</span>}</p>
      <div class="fields">
        <QuantityInput name="Compass heading" hint="if you read it"
          asked={{ dimension: 'angle', subject: 'heading', unit: 'deg', low: 0, high: 360 / DEG }}
          value={leg.heading_deg === null ? '' : `${Math.round(leg.heading_deg)} deg`}
          onInput={(rad) => onChange({ ...leg, heading_deg: rad === null ? null : rad * DEG })} />
        <QuantityInput name="Boat’s log read" hint="to check the log"
          asked={{ dimension: 'speed', subject: 'log', unit: shower.unit('speed') }}
          value={leg.log_mps === null ? '' : shower.quantity(leg.log_mps, 'speed')}
          onInput={(log_mps) => onChange({ ...leg, log_mps })} />
      </div>
    </>
  );
}
