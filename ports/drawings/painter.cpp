#include "ports/drawings/painter.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cerrno>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <memory>
#include <utility>

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <fmt/format.h>

#include "ports/drawings/letters.h"

namespace offplumb::ports {
namespace {

using answers::Anchor;
using answers::Drawing;
using answers::Polyline;
using answers::Role;
using answers::Text;

constexpr double kPointsPerMm = 72.0 / 25.4;
constexpr double kDotsPerMm = 200.0 / 25.4;
constexpr double kMostDots = 6000;
constexpr double kSmallestSheet_mm = 10;
constexpr double kLargestSheet_mm = 3000;
constexpr double kHalo = 0.35;  // Width of a text's paper edge over its em.

struct Colour {
  double red, green, blue;
};

// In the order of Role: paper, ink, accent, faint, band, water.
constexpr std::array<std::array<Colour, 6>, 3> kColours = {{
    {{{0.969, 0.945, 0.894},
      {0.118, 0.118, 0.141},
      {0.655, 0.165, 0.082},
      {0.545, 0.522, 0.478},
      {0.937, 0.812, 0.729},
      {0.275, 0.396, 0.459}}},
    {{{0, 0, 0},
      {0.71, 0.10, 0.05},
      {0.80, 0.22, 0.06},
      {0.40, 0.07, 0.04},
      {0.25, 0.05, 0.03},
      {0.50, 0.08, 0.05}}},
    {{{1, 1, 1}, {0, 0, 0}, {0, 0, 0}, {0.5, 0.5, 0.5}, {0.89, 0.89, 0.89}, {0.3, 0.3, 0.3}}},
}};

struct SurfaceCloser {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct CanvasCloser {
  void operator()(cairo_t* canvas) const { cairo_destroy(canvas); }
};
using Surface = std::unique_ptr<cairo_surface_t, SurfaceCloser>;
using Canvas = std::unique_ptr<cairo_t, CanvasCloser>;

tl::unexpected<Problem> Fault(std::string message) {
  return tl::unexpected<Problem>(Problem{ProblemKind::kFault,
                                         "drawing",
                                         std::move(message),
                                         "Please report the rig and the question.",
                                         {},
                                         0});
}

void SetColour(Role role, Palette palette, cairo_t* canvas) {
  const Colour& colour =
      kColours[static_cast<std::size_t>(palette)][static_cast<std::size_t>(role)];
  cairo_set_source_rgb(canvas, colour.red, colour.green, colour.blue);
}

void PaintLine(const Polyline& line, Palette palette, cairo_t* canvas) {
  cairo_new_path(canvas);
  for (const answers::Point& point : line.points) cairo_line_to(canvas, point.x_mm, point.y_mm);
  if (line.closed) cairo_close_path(canvas);
  SetColour(line.role, palette, canvas);
  if (line.filled) {
    cairo_fill(canvas);
    return;
  }
  cairo_set_line_width(canvas, line.width_mm);
  const double dashes[] = {1.6, 1.1};
  cairo_set_dash(canvas, dashes, line.dashed ? 2 : 0, 0);
  cairo_stroke(canvas);
}

void PaintText(const Text& text, Palette palette, cairo_t* canvas) {
  cairo_save(canvas);
  cairo_translate(canvas, text.place.x_mm, text.place.y_mm);
  cairo_rotate(canvas, text.rotation_rad);
  const LaidOutText laid_out(canvas, text.text, text.size_mm, text.bold);
  const double width_mm = laid_out.width_mm();
  const double left_mm = text.anchor == Anchor::kStart    ? 0
                         : text.anchor == Anchor::kMiddle ? -width_mm / 2
                                                          : -width_mm;
  cairo_move_to(canvas, left_mm, -laid_out.baseline_mm());
  if (text.halo) {
    pango_cairo_layout_path(canvas, laid_out.layout());
    SetColour(Role::kPaper, palette, canvas);
    cairo_set_line_width(canvas, kHalo * text.size_mm);
    cairo_stroke(canvas);
    cairo_move_to(canvas, left_mm, -laid_out.baseline_mm());
  }
  SetColour(text.role, palette, canvas);
  pango_cairo_show_layout(canvas, laid_out.layout());
  cairo_restore(canvas);
}

void PaintAll(const Drawing& drawing, Palette palette, cairo_t* canvas) {
  cairo_set_line_join(canvas, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap(canvas, CAIRO_LINE_CAP_ROUND);
  SetColour(Role::kPaper, palette, canvas);
  cairo_rectangle(canvas, 0, 0, drawing.width_mm, drawing.height_mm);
  cairo_fill(canvas);
  for (const Polyline& line : drawing.lines) PaintLine(line, palette, canvas);
  for (const Text& text : drawing.texts) PaintText(text, palette, canvas);
}

cairo_status_t Append(void* bytes, const unsigned char* data, unsigned int size) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

double ScaleOf(const Drawing& drawing, PictureFormat format) {
  if (format != PictureFormat::kPng) return kPointsPerMm;
  return std::min(kDotsPerMm, kMostDots / std::max(drawing.width_mm, drawing.height_mm));
}

Surface OpenSurface(const Drawing& drawing, PictureFormat format, double scale,
                    std::string* bytes) {
  const double width = drawing.width_mm * scale;
  const double height = drawing.height_mm * scale;
  switch (format) {
    case PictureFormat::kSvg:
      return Surface(cairo_svg_surface_create_for_stream(Append, bytes, width, height));
    case PictureFormat::kPdf: {
      Surface surface(cairo_pdf_surface_create_for_stream(Append, bytes, width, height));
      cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE,
                                     drawing.title.c_str());
      // Cairo writes today's date unless it is given one; an empty one leaves it out.
      cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "");
      return surface;
    }
    default:
      return Surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24,
                                                static_cast<int>(std::lround(width)),
                                                static_cast<int>(std::lround(height))));
  }
}

/// Cairo numbers the surfaces of a process, and writes the number into the SVG.
void NameGroupsAlike(std::string& svg) {
  const std::string mark = "id=\"surface";
  for (std::size_t at = svg.find(mark); at != std::string::npos; at = svg.find(mark, at + 1)) {
    const std::size_t from = at + mark.size();
    svg.erase(from, svg.find('"', from) - from);
  }
}

bool Finite(const answers::Point& point) {
  return std::isfinite(point.x_mm) && std::isfinite(point.y_mm);
}

bool AllFinite(const Drawing& drawing) {
  return std::all_of(drawing.lines.begin(), drawing.lines.end(),
                     [](const Polyline& line) {
                       return std::isfinite(line.width_mm) &&
                              std::all_of(line.points.begin(), line.points.end(), Finite);
                     }) &&
         std::all_of(drawing.texts.begin(), drawing.texts.end(), [](const Text& text) {
           return Finite(text.place) && std::isfinite(text.size_mm) &&
                  std::isfinite(text.rotation_rad);
         });
}

bool SheetSize(double size_mm) {
  return size_mm >= kSmallestSheet_mm && size_mm <= kLargestSheet_mm;
}

Expected<void> Check(const Drawing& drawing) {
  if (!SheetSize(drawing.width_mm) || !SheetSize(drawing.height_mm)) {
    return BadInput(
        "drawing",
        fmt::format("The sheet is {:.4g} by {:.4g} mm; each side must lie between "
                    "{:.0f} and {:.0f} mm.",
                    drawing.width_mm, drawing.height_mm, kSmallestSheet_mm, kLargestSheet_mm),
        "Ask for another size of sheet.");
  }
  if (!AllFinite(drawing)) return Fault("A point of the drawing is not a number.");
  if (!LettersInstalled()) {
    return BadInput("drawing", fmt::format("The letters \"{}\" are not installed.", kLetters),
                    "Install the package fonts-dejavu-core.");
  }
  return {};
}

tl::unexpected<Problem> CannotWrite(const std::string& path) {
  return tl::unexpected<Problem>(
      Problem{ProblemKind::kBadInput, "file",
              fmt::format("The drawing could not be written to {}: {}.", path,
                          errno != 0 ? std::strerror(errno) : "the file did not take it"),
              "Name a file in a folder that exists and that you may write to.", path, 0});
}

Expected<void> WriteFile(const std::string& path, const std::string& bytes) {
  errno = 0;
  std::ofstream file(path, std::ios::binary | std::ios::trunc);
  if (!file) return CannotWrite(path);
  file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  file.close();
  if (!file) return CannotWrite(path);
  return {};
}

}  // namespace

Expected<PictureFormat> FormatOf(std::string_view path) {
  const std::size_t name =
      path.find_last_of('/') == std::string_view::npos ? 0 : path.find_last_of('/') + 1;
  const std::size_t dot = path.find_last_of('.');
  std::string ending(dot == std::string_view::npos || dot < name ? "" : path.substr(dot));
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
  if (ending == ".svg") return PictureFormat::kSvg;
  if (ending == ".png") return PictureFormat::kPng;
  if (ending == ".pdf") return PictureFormat::kPdf;
  return BadInput(
      "file", fmt::format("The file name \"{}\" does not say what kind of picture to make.", path),
      "End it in .svg, .png or .pdf.");
}

Expected<std::string> PaintToBytes(const Drawing& drawing, PictureFormat format, Palette palette) {
  if (auto checked = Check(drawing); !checked) return tl::unexpected<Problem>(checked.error());
  std::string bytes;
  const double scale = ScaleOf(drawing, format);
  const Surface surface = OpenSurface(drawing, format, scale, &bytes);
  {
    const Canvas canvas(cairo_create(surface.get()));
    cairo_scale(canvas.get(), scale, scale);
    PaintAll(drawing, palette, canvas.get());
    if (cairo_status(canvas.get()) != CAIRO_STATUS_SUCCESS) {
      return Fault(fmt::format("The drawing could not be painted: {}.",
                               cairo_status_to_string(cairo_status(canvas.get()))));
    }
  }
  if (format == PictureFormat::kPng) {
    cairo_surface_write_to_png_stream(surface.get(), Append, &bytes);
  }
  cairo_surface_finish(surface.get());
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) {
    return Fault(fmt::format("The drawing could not be painted: {}.",
                             cairo_status_to_string(cairo_surface_status(surface.get()))));
  }
  if (format == PictureFormat::kSvg) NameGroupsAlike(bytes);
  return bytes;
}

Expected<void> Paint(const Drawing& drawing, const std::string& path, Palette palette) {
  const auto format = FormatOf(path);
  if (!format) return tl::unexpected<Problem>(format.error());
  const auto bytes = PaintToBytes(drawing, *format, palette);
  if (!bytes) return tl::unexpected<Problem>(bytes.error());
  return WriteFile(path, *bytes);
}

double PaintedWidth_mm(std::string_view text, double size_mm, bool bold) {
  const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1));
  const Canvas canvas(cairo_create(surface.get()));
  return LaidOutText(canvas.get(), text, size_mm, bold).width_mm();
}

}  // namespace offplumb::ports
