/// \file
/// What the JSON of all answers is made of.
#pragma once

#include <optional>
#include <string_view>

#include "answers/questions/json_writer.h"
#include "answers/questions/question_list.h"
#include "answers/questions/setting.h"
#include "engine/plan/band.h"

namespace offplumb::answers {

[[nodiscard]] double Degrees(double angle_rad);

/// A value with its band: {"median", "low", "high"}.
void WriteBand(std::string_view key, const plan::Band& band, JsonWriter& json);
void WriteBandInDegrees(std::string_view key, const plan::Band& band_rad, JsonWriter& json);
/// The same in a list.
void WriteBandItem(const plan::Band& band, JsonWriter& json);

/// An uncertain input by its id; null when there is none.
void WriteInput(std::string_view key, const std::optional<learn::Input>& input, JsonWriter& json);

/// What stands first among the inputs of a question about rigs.
void WriteChoice(const RigChoice& choice, JsonWriter& json);
/// What stands last among them.
void WriteConditions(const plan::Conditions& conditions, const Wanted& wanted, JsonWriter& json);
/// The same for rigs that may each have a water of their own. \param water of all; none: null.
void WriteConditions(const plan::Conditions& conditions, const std::optional<water::Water>& water,
                     const Wanted& wanted, JsonWriter& json);

/// What stands at the end of every answer.
void WriteRemarks(const Remarks& remarks, JsonWriter& json);

}  // namespace offplumb::answers
