/// \file
/// Texts by Pango.
#pragma once

#include <string_view>

#include <pango/pangocairo.h>

#include "answers/drawing/drawing.h"

namespace offplumb::ports {

/// The family every sheet is set in.
inline constexpr const char* kLetters = "DejaVu Sans";

/// A text laid out for a canvas whose unit is a millimetre. Owns its layout.
class LaidOutText {
 public:
  LaidOutText(cairo_t* canvas, std::string_view text, double size_mm, bool bold);
  ~LaidOutText();
  LaidOutText(const LaidOutText&) = delete;
  LaidOutText& operator=(const LaidOutText&) = delete;

  [[nodiscard]] double width_mm() const;
  [[nodiscard]] double baseline_mm() const;  ///< Below the layout's top.
  [[nodiscard]] PangoLayout* layout() const { return layout_; }

 private:
  PangoLayout* layout_ = nullptr;
};

/// \return whether the letters themselves are installed, and not a stand-in.
[[nodiscard]] bool LettersInstalled();

}  // namespace offplumb::ports
