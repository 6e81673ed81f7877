/// \file
/// Answers as text for a person. Units on every figure, a band on every estimate.
#pragma once

#include <string>

#include "answers/questions/card.h"
#include "answers/questions/compare.h"
#include "answers/questions/count.h"
#include "answers/questions/depth.h"
#include "answers/questions/two_way.h"

namespace offplumb::cli {

/// \return the answer with the marks of terminal.h. \param width in letters.
[[nodiscard]] std::string Show(const answers::DepthAnswer& answer, std::size_t width);
[[nodiscard]] std::string Show(const answers::CountAnswer& answer, std::size_t width);
[[nodiscard]] std::string Show(const answers::CardAnswer& answer, std::size_t width);
[[nodiscard]] std::string Show(const answers::CompareAnswer& answer, std::size_t width);
[[nodiscard]] std::string Show(const answers::TwoWayAnswer& answer, std::size_t width);

}  // namespace offplumb::cli
