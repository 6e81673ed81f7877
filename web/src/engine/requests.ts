// What can be asked of the engine. Everything is SI; keys end in their unit. docs/json.md.
import type {
  AboutAnswer, CardAnswer, CompareAnswer, CountAnswer, DepthAnswer, DocumentTable, QuantityAnswer,
  RigAnswer, TwoWayAnswer, UnitChoice,
} from './answers';

export interface Current {
  shape: 'steps' | 'linear';
  points: { depth_m: number; speed_mps: number; toward_deg: number }[];
}

/** The boat's way, and the water around it. */
export interface Sea {
  speed_mps?: number;
  speed_kind?: 'through_water' | 'over_ground';
  course_deg?: number | null;
  heading_deg?: number | null;
  current?: Current | null;
  water?: { temperature_C: number; salinity_g_per_kg: number } | null;
}

interface Wanted {
  bands: boolean;
  /** Of the band, 1 to 128. Fewer are quicker and rougher. */
  draws?: number;
  units: UnitChoice;
}

interface OfRig extends Sea, Wanted {
  rig_toml: string;
  rigger?: string | null;
  ball_mass_kg?: number | null;
}

export interface DepthRequest extends OfRig {
  question: 'depth';
  count_m: number;
  shape?: boolean;
  sheet?: boolean;
}

export interface CountRequest extends OfRig {
  question: 'count';
  depth_m: number;
  of: 'ball' | 'lure';
  clip?: string | null;
}

export interface CardRequest extends OfRig {
  question: 'card';
  speeds_mps?: number[] | null;
  counts_m?: number[] | null;
  sheet?: boolean;
  date?: string;
}

export interface CompareRequest extends Sea, Wanted {
  question: 'compare';
  rigs_toml: string[];
  counts_m?: number[] | null;
  gains_count_m?: number | null;
}

export interface Leg {
  ground_speed_mps: number;
  course_deg: number;
  heading_deg: number | null;
  log_mps: number | null;
  seconds: number;
  spread_mps: number | null;
}

export interface TwoWayRequest {
  question: 'two_way';
  legs: [Leg, Leg];
  units: UnitChoice;
}

export interface QuantityRequest {
  question: 'quantity';
  text: string;
  dimension: 'length' | 'mass' | 'force' | 'speed' | 'angle' | 'temperature' | 'salinity' | 'time';
  subject: string;
  low?: number;
  high?: number;
}

/** Each question with its answer. */
export interface Questions {
  depth: [DepthRequest, DepthAnswer];
  count: [CountRequest, CountAnswer];
  card: [CardRequest, CardAnswer];
  compare: [CompareRequest, CompareAnswer];
  two_way: [TwoWayRequest, TwoWayAnswer];
  about: [{ question: 'about' }, AboutAnswer];
  quantity: [QuantityRequest, QuantityAnswer];
  rig_read: [{ question: 'rig_read'; rig_toml: string }, RigAnswer];
  rig_write: [{ question: 'rig_write'; document: DocumentTable }, RigAnswer];
}
export type Word = keyof Questions;
export type Request<W extends Word = Word> = Questions[W][0];
export type AnswerTo<R extends Request> = R extends { question: infer W extends Word }
  ? Questions[W][1]
  : never;
