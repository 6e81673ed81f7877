#include "ports/drawings/letters.h"

#include <string>

namespace offplumb::ports {
namespace {

/// Places glyphs exactly where the font's widths put them, whatever the scale of the output.
void MakeScaleFree(PangoContext* context) {
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context, FALSE);
}

PangoFontDescription* Describe(double size_mm, bool bold) {
  PangoFontDescription* font = pango_font_description_new();
  pango_font_description_set_family(font, kLetters);
  pango_font_description_set_weight(font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(font, size_mm * PANGO_SCALE);
  return font;
}

}  // namespace

LaidOutText::LaidOutText(cairo_t* canvas, std::string_view text, double size_mm, bool bold)
    : layout_(pango_cairo_create_layout(canvas)) {
  MakeScaleFree(pango_layout_get_context(layout_));
  PangoFontDescription* font = Describe(size_mm, bold);
  pango_layout_set_font_description(layout_, font);
  pango_font_description_free(font);
  pango_layout_set_single_paragraph_mode(layout_, TRUE);
  pango_layout_set_text(layout_, text.data(), static_cast<int>(text.size()));
}

LaidOutText::~LaidOutText() { g_object_unref(layout_); }

double LaidOutText::width_mm() const {
  PangoRectangle logical;
  pango_layout_get_extents(layout_, nullptr, &logical);
  return static_cast<double>(logical.width) / PANGO_SCALE;
}

double LaidOutText::baseline_mm() const {
  return static_cast<double>(pango_layout_get_baseline(layout_)) / PANGO_SCALE;
}

bool LettersInstalled() {
  PangoFontMap* map = pango_cairo_font_map_get_default();
  PangoContext* context = pango_font_map_create_context(map);
  PangoFontDescription* wanted = Describe(10, false);
  PangoFont* font = pango_font_map_load_font(map, context, wanted);
  bool same = false;
  if (font != nullptr) {
    PangoFontDescription* found = pango_font_describe(font);
    const char* family = pango_font_description_get_family(found);
    same = family != nullptr && std::string_view(family) == kLetters;
    pango_font_description_free(found);
    g_object_unref(font);
  }
  pango_font_description_free(wanted);
  g_object_unref(context);
  return same;
}

}  // namespace offplumb::ports
