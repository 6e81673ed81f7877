/// \file
/// Limits and steps of plan's searches. coefficients.cpp lists each with its source or mark.
#pragma once

namespace offplumb::plan {

/// Counts looked at between nothing and the line on the reel; between two of them depth and angle
/// are taken to be monotone. Judgement.
inline constexpr int kStations = 24;
/// The search for a count ends within this many metres of it. Judgement: far below a counter's
/// mark.
inline constexpr double kCountTolerance_m = 1e-6;

/// Halvings in the search for the mildest remedy: one part in 4000 of its range. Judgement.
inline constexpr int kRemedyHalvings = 12;
/// Slowest speed suggested as a remedy, as part of the present one. Judgement.
inline constexpr double kSlowestPart = 0.3;
/// Most line suggested as a remedy, as a multiple of the present one. Judgement.
inline constexpr double kMostLinePart = 3.0;
/// Part of its weight that lead keeps in sea water: 1 - 1025/11340. Worked out.
inline constexpr double kLeadInWater = 1.0 - 1025.0 / 11340.0;

/// The small changes of a rig that are priced: a pound of ball, a tenth of a millimetre of line, a
/// tenth of a mile an hour. Judgement; pound and mile: NIST SP 811 (2008), appendix B.8, exact.
inline constexpr double kGainBall_kg = 0.45359237;
inline constexpr double kGainLine_m = 0.0001;
inline constexpr double kGainSpeed_mps = 0.044704;

}  // namespace offplumb::plan
