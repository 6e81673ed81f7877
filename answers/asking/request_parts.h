/// \file
/// The parts that the requests of several questions share.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "answers/asking/request_fields.h"
#include "answers/asking/rig_texts.h"
#include "answers/questions/question_list.h"
#include "answers/questions/setting.h"
#include "engine/plan/conditions.h"

namespace offplumb::answers {

inline constexpr NumberRule kCountRule{{0, plan::kLargestCount_m}, "m"};
/// From a tenth of a foot: a depth of nothing is no wish.
inline constexpr NumberRule kWantedDepthRule{{0.03048, plan::kLargestCount_m}, "m"};
inline constexpr NumberRule kSpeedRule{{0, plan::kLargestSpeed_mps}, "m/s"};
// As for a file of currents. Judgement: wide, to keep out slips of the finger.
inline constexpr NumberRule kCurrentSpeedRule{{0, 5}, "m/s"};
inline constexpr std::size_t kMostCurrentPoints = 100;
/// Rigs side by side: more than a page can hold. Judgement.
inline constexpr std::size_t kMostRigs = 12;
/// A whole turn either way.
inline constexpr NumberRule kBearingRule{{-360, 360}, "deg"};

/// A bearing in degrees. \return radians.
[[nodiscard]] std::optional<double> ReadBearing(const RequestFields& fields, std::string_view key);

/// Refuses keys that are not known, or belong to another question only.
void CheckRequestKeys(const RequestFields& fields, Question question);

/// Speed, course, heading, current and water.
[[nodiscard]] Sea ReadSea(const RequestFields& fields);

/// Bands, draws, units, shape, sheet and date.
[[nodiscard]] Wanted ReadWanted(const RequestFields& fields);

/// One rig from its text. \param key of the text, for messages.
[[nodiscard]] std::optional<RigText> ReadRig(const RequestFields& fields, std::string_view key,
                                             std::string_view toml, const RigTexts& texts);

/// A rig, and which rigger and ball are wanted.
[[nodiscard]] RigChoice ChoiceOf(const RequestFields& fields, const RigText& text);

}  // namespace offplumb::answers
