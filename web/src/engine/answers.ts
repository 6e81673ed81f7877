// The answers of the engine, as docs/json.md has them. Everything is SI; keys end in their unit.

/** A figure with its band: the 5 % and the 95 % of the draws. Without bands all three are one. */
export interface Band {
  median: number;
  low: number;
  high: number;
}

/** Instead of an answer: what is wrong, and what to do about it. */
export interface Problem {
  kind: 'bad_input' | 'cannot_be_done' | 'fault';
  subject: string;
  message: string;
  remedy: string;
  line: number;
  /** Of a rig's document: the key at fault, "riggers[0].clips[1].setback". */
  path: string | null;
}

/** A point in the boat's frame: ahead, to starboard, depth (positive down), m. */
export type Point = [x_m: number, y_m: number, depth_m: number];

export interface Place {
  depth_m: Band;
  trail_m: Band;
  side_m: Band;
  water_speed_mps: Band;
}

export interface ClipFigures {
  name: string;
  depth_m: Band;
  trail_m: Band;
  side_m: Band;
  leader_pull_N: Band;
  line_pull_N: Band;
  clip_net_N: Band;
  fishing_line_m: Band;
}

/** Everything of one rigger as lines and points, for drawing. */
export interface Shape {
  boom_tip: Point;
  ball: Point;
  main_line: Point[];
  clips: {
    clip: Point;
    rod_tip: Point;
    flasher: Point | null;
    lure: Point;
    fishing_line: Point[];
    setback: Point[];
    leader: Point[];
  }[];
}

export interface RiggerDepth {
  name: string;
  count_m: number;
  ball: Place;
  clips: ClipFigures[];
  lures: ({ clip: string } & Place)[];
  line: { tension_boom_N: Band; tension_ball_N: Band; angle_boom_deg: Band; length_m: Band };
  dominant_input: string | null;
  draws: number;
  draws_without_shape: number;
  shape?: Shape;
}

interface Answered<Q extends string, R = string> {
  question: Q;
  rig: R;
  inputs: Record<string, unknown>;
  cautions: string[];
  notes: string[];
}

export interface DepthAnswer extends Answered<'depth'> {
  riggers: RiggerDepth[];
  dominant_input: string | null;
  sheet?: Drawing;
}

export interface Remedy {
  what: string;
  value: number | null;
  unit: string | null;
  text: string;
}

export interface RiggerCount {
  name: string;
  wanted_depth_m: number;
  of: 'ball' | 'lure';
  clip: string | null;
  reachable: boolean;
  count_m: Band | null;
  count_high_open: boolean;
  angle_boom_deg: number | null;
  at_count: { ball_depth_m: Band; lures: { clip: string; depth_m: Band }[] } | null;
  reach_depth_m: Band;
  reach_count_m: number;
  reach_ends_by: 'line_on_reel' | 'angle_boom';
  remedies: Remedy[];
  draws: number;
  draws_out_of_reach: number;
}

export interface CountAnswer extends Answered<'count'> {
  riggers: RiggerCount[];
}

/** Depths over speeds (first index) and counts; null where there is no steady shape. */
export type Grid<T> = (T | null)[][];

export interface CardAnswer extends Answered<'card'> {
  speeds_mps: number[];
  counts_m: number[];
  riggers: {
    name: string;
    ball_depth_m: Grid<Band>;
    lures: { clip: string; depth_m: Grid<Band> }[];
    beyond_angle: Grid<boolean>;
    /** Null where no sheet could be set; `sheet_problem` then says why. */
    sheet?: Drawing | null;
    sheet_problem?: Problem;
  }[];
}

export interface ComparedRig {
  name: string;
  reach_depth_m: Band;
  reach_count_m: number;
  reach_ends_by: 'line_on_reel' | 'angle_boom';
  counts_m: number[];
  depth_m: (Band | null)[];
  tension_boom_N: (Band | null)[];
  gains_count_m: number;
  gains: { what: string; depth_m: number; text: string }[];
}

export interface CompareAnswer extends Answered<'compare', string[]> {
  rigs: ComparedRig[];
}

export interface TwoWayAnswer extends Answered<'two_way', string | null> {
  /** `toward_deg`: low and high may run past 0 and 360; half a turn each way: open. */
  current: {
    speed_mps: Band; toward_deg: Band; along_mps: Band; across_mps: Band; differs_from_none: boolean;
  };
  water_speed_mps: Band;
  /** Worked out from the run, not read. */
  first_heading_deg: Band;
  log: { factor: Band; error_mps: Band } | null;
  compass_error_deg: Band | null;
  turn_from: 'headings' | 'reverse';
  turn_deg: number;
}

/** A sheet of paper as plain lines and texts, in millimetres from its top left corner. */
export interface Drawing {
  title: string;
  width_mm: number;
  height_mm: number;
  lines: {
    points: [number, number][];
    width_mm: number;
    role: Role;
    closed: boolean;
    filled: boolean;
    dashed: boolean;
  }[];
  texts: {
    text: string;
    x_mm: number;
    y_mm: number;
    size_mm: number;
    anchor: 'start' | 'middle' | 'end';
    bold: boolean;
    rotation_deg: number;
    role: Role;
    halo: boolean;
  }[];
}
export type Role = 'paper' | 'ink' | 'accent' | 'faint' | 'band' | 'water';

export type UnitChoice = 'feet' | 'knots' | 'metric';
export type Shown =
  | 'depth' | 'length' | 'diameter' | 'speed' | 'force' | 'mass' | 'angle' | 'time';

/** What the engine says of itself: asked once, at the start. */
export interface AboutAnswer {
  question: 'about';
  version: string;
  questions: { word: string; summary: string }[];
  shown: Record<UnitChoice,
    Record<Shown, { unit: string; si: number; digits: number; whole_from: number | null }>>;
  limits: {
    largest_speed_mps: number;
    largest_count_m: number;
    heaviest_ball_kg: number;
  };
  catalogue: {
    lines: { id: string; name: string }[];
    balls: { id: string; name: string; mass_kg: number }[];
    flashers: { id: string; name: string }[];
    lures: { id: string; name: string }[];
  };
  defaults: { line_on_reel_m: number; largest_boom_angle_deg: number; rod_tip_tension_N: number };
  cautions: Record<string, string[]>;
}

export interface QuantityAnswer {
  question: 'quantity';
  value: number;
  dimension: string;
}

export type DocumentValue = string | number | boolean | null | DocumentValue[] | DocumentTable;
export interface DocumentTable {
  [key: string]: DocumentValue;
}

export interface RigFacts {
  name: string;
  invented: boolean;
  riggers: {
    name: string;
    boom_tip: Point;
    ball: { name: string; mass_kg: number; smallest_mass_kg: number; largest_mass_kg: number };
    line: { name: string; diameter_m: number };
    line_on_reel_m: number;
    largest_boom_angle_deg: number;
    clips: {
      name: string;
      above_ball_m: number;
      lure: string;
      flasher: string | null;
      setback_m: number;
      leader_m: number;
    }[];
  }[];
}

export interface RigAnswer {
  question: 'rig_read' | 'rig_write';
  toml: string;
  document: DocumentTable;
  facts: RigFacts;
}
