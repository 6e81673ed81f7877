/// \file
/// The drawings of answers: the side view of `depth`, the printed sheets of `card`.
#pragma once

#include <cstddef>
#include <string>

#include "answers/drawing/drawing.h"
#include "answers/questions/card.h"
#include "answers/questions/depth.h"
#include "engine/problem.h"

namespace offplumb::answers {

/// \return the side view of all riggers of an answer, with the question in its head. Problems: see
/// MakeSideView.
[[nodiscard]] Expected<Drawing> SideViewOf(const DepthAnswer& answer);

/// \return the sheet of one rigger. \param i its place among the answer's cards. \param date as it
/// is to be printed. Problems: see MakeCardSheet.
[[nodiscard]] Expected<Drawing> CardSheetOf(const CardAnswer& answer, std::size_t i,
                                            const std::string& date);

}  // namespace offplumb::answers
