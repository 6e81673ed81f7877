/// \file
/// What to know about an answer's figures: assumptions, limits met, draws left out.
#pragma once

#include <string>
#include <vector>

#include "answers/questions/setting.h"
#include "engine/plan/depth.h"

namespace offplumb::answers {

/// Notes that follow from the request alone.
/// \param riggers those meant. \param conditions as solved for.
[[nodiscard]] std::vector<std::string> NotesOnSetting(const RigChoice& rig, const Sea& sea,
                                                      const Wanted& wanted,
                                                      const std::vector<tackle::Rigger>& riggers,
                                                      const plan::Conditions& conditions);

/// Notes on one rigger's solved shape.
[[nodiscard]] std::vector<std::string> NotesOnShape(const tackle::Rigger& rigger,
                                                    const plan::Conditions& conditions,
                                                    const plan::RiggerDepth& depth,
                                                    DisplayUnits units);

/// A note on each lure that hangs well below its ball.
[[nodiscard]] std::vector<std::string> NotesOnLowLures(const tackle::Rigger& rigger,
                                                       const plan::RiggerDepth& depth,
                                                       DisplayUnits units);

/// Adds to a list what is not yet in it.
void AddNew(std::vector<std::string>& notes, const std::vector<std::string>& added);

/// \return how a clip is called: its name, else "clip", counted from the lowest where there are
/// several.
[[nodiscard]] std::string ClipName(const tackle::Rigger& rigger, std::size_t clip);
/// The same for the lure behind it: "lure", "low lure", "lure 1 (lowest)".
[[nodiscard]] std::string LureName(const tackle::Rigger& rigger, std::size_t clip);
/// The same within a sentence: "the lure", "the low lure", "lure 1 (lowest)".
[[nodiscard]] std::string TheLure(const tackle::Rigger& rigger, std::size_t clip);

}  // namespace offplumb::answers
