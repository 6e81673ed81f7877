/// \file
/// Painting a drawing into a file: SVG, PNG or PDF.
///
/// The letters are DejaVu Sans (package fonts-dejavu-core); layout is checked against its widths.
/// The same drawing gives the same bytes: no file carries a date.
#pragma once

#include <string>
#include <string_view>

#include "answers/drawing/drawing.h"
#include "engine/problem.h"

namespace offplumb::ports {

/// The colours of the roles.
enum class Palette {
  kDay,    ///< Warm paper, dark ink.
  kNight,  ///< Dim red on black, so that eyes stay used to the dark.
  kPrint,  ///< Black on white.
};

enum class PictureFormat { kSvg, kPng, kPdf };

/// \return the format that a file name's ending asks for; a problem that lists the three for any
/// other.
[[nodiscard]] Expected<PictureFormat> FormatOf(std::string_view path);

/// \return the file's bytes. PNG: 200 dots an inch, fewer on a sheet over 750 mm.
/// A problem when the sheet's size is outside 10 to 3000 mm, a figure in it is not finite, or the
/// letters are not installed.
[[nodiscard]] Expected<std::string> PaintToBytes(const answers::Drawing& drawing,
                                                 PictureFormat format,
                                                 Palette palette = Palette::kDay);

/// Paints into a file, in the format of its ending; an older file of that name is replaced.
/// \return a problem that names the file when it cannot be written.
[[nodiscard]] Expected<void> Paint(const answers::Drawing& drawing, const std::string& path,
                                   Palette palette = Palette::kDay);

/// \return the width of a text as it is painted, mm. \param size_mm the em.
[[nodiscard]] double PaintedWidth_mm(std::string_view text, double size_mm, bool bold);

}  // namespace offplumb::ports
