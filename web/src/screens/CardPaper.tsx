// The card on paper: how it will look, and the ways to have it.
import { useEffect, useRef, useState } from 'preact/hooks';
import { Sheet, sheetFile } from '../drawing/sheet';
import type { CardAnswer, Drawing, Problem } from '../engine/answers';
import { download, fileNameFor } from '../parts/files';

interface Props {
  answer: CardAnswer;
  /** With its bands, and for what is wanted now. */
  ready: boolean;
  /** There will be none. */
  failed: boolean;
  rig: string;
  rigger: string;
  /** No true heading is known; the card says 0 for it. */
  assumedHeading: boolean;
  anyCurrent: boolean;
}

/** A sheet, or why there is none: "sheet" and "sheet_problem" of the answer. */
interface Sheeted {
  sheet?: Drawing | null;
  sheet_problem?: Problem;
}

type Wish = 'print' | 'save' | null;

export function CardPaper({ answer, ready, failed, rig, rigger, assumedHeading, anyCurrent }: Props) {
  const paper = useRef<HTMLDivElement>(null);
  /** What is to be done as soon as the bands are in. */
  const [wish, setWish] = useState<Wish>(null);
  const { sheet, sheet_problem }: Sheeted = answer.riggers[0] ?? {};

  useEffect(() => {
    if (!wish || !(ready || failed)) return;
    setWish(null);
    if (failed) return;
    const svg = paper.current?.querySelector('svg');
    if (!svg) return;
    if (wish === 'print') window.print();
    else download(fileNameFor(`${rig}, ${rigger}`, '.svg'), sheetFile(svg), 'image/svg+xml');
  }, [wish, ready, failed]);

  if (!sheet) {
    return sheet_problem ? (
      <div class="card-work">
        <h2>On paper</h2>
        <p class="wrong">{sheet_problem.message} {sheet_problem.remedy}</p>
      </div>
    ) : null;
  }
  const upright = sheet.height_mm > sheet.width_mm;
  return (
    <>
      <div class="card-work">
        <h2>On paper</h2>
        <p>One page, black on white, to laminate and tape by the rigger.</p>
        {anyCurrent && assumedHeading && (
          <p>The sheet tells the current as if the bow pointed north: 0 runs with you, 90 to starboard.</p>
        )}
        <div class="row">
          <button type="button" class="button first" onClick={() => setWish('print')}>Print</button>
          <button type="button" class="button" onClick={() => setWish('save')}>Save as SVG</button>
          <span role="status">{wish && !ready ? 'As soon as the bands are in …' : ''}</span>
        </div>
      </div>
      <div class={upright ? 'card-paper upright' : 'card-paper aside'} ref={paper}>
        <Sheet drawing={sheet} label={`The card of ${rig}, ${rigger}, as it is printed`} />
      </div>
    </>
  );
}
