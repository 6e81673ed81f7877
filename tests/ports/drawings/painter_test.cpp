#include "ports/drawings/painter.h"

#include <cstdio>
#include <fstream>
#include <iterator>
#include <limits>
#include <string>

#include <gtest/gtest.h>

#include "answers/drawing/text_box.h"

namespace offplumb::ports {
namespace {

using answers::Drawing;

/// An area, a dashed line and two texts on a small sheet.
Drawing SmallSheet() {
  Drawing drawing;
  drawing.title = "Test";
  drawing.width_mm = 50;
  drawing.height_mm = 30;
  drawing.lines.push_back(
      {{{0, 0}, {25, 0}, {25, 30}, {0, 30}}, 0.25, answers::Role::kInk, true, true, false});
  drawing.lines.push_back({{{0, 0}, {50, 30}}, 1, answers::Role::kAccent, false, false, true});
  answers::Text text;
  text.text = "88 ft";
  text.place = {40, 15};
  text.anchor = answers::Anchor::kMiddle;
  drawing.texts.push_back(text);
  text.place.y_mm = 25;
  text.halo = true;
  text.rotation_rad = 0.3;
  drawing.texts.push_back(text);
  return drawing;
}

std::string Bytes(PictureFormat format, Palette palette = Palette::kDay) {
  const auto bytes = PaintToBytes(SmallSheet(), format, palette);
  EXPECT_TRUE(bytes);
  return bytes.value_or("");
}

unsigned BigEndian(const std::string& bytes, std::size_t at) {
  unsigned value = 0;
  for (std::size_t i = at; i < at + 4; ++i) {
    value = value * 256 + static_cast<unsigned char>(bytes.at(i));
  }
  return value;
}

std::string ReadAll(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

TEST(Painter, WidthsOfTheLayoutAreThoseOfTheFont) {
  // Layout runs without the font: its table must agree with what is painted. Pairs of letters may
  // be set closer by up to 2 % of a text.
  for (const bool bold : {false, true}) {
    for (const char* words :
         {"88 ft", "84 to 91", "181 to 195", "0123456789.", "starboard stacked lure",
          "2.5 mph through the water", "ABCDEFGHIJKLMNOPQRSTUVWXYZ", "abcdefghijklmnopqrstuvwxyz",
          "20 ft, scale 1 to 300", "49 ft aft, 43 to 58; 3 ft to port", "count, ft"}) {
      const double laid_out_mm = answers::TextWidth_mm(words, 5, bold);
      const double painted_mm = PaintedWidth_mm(words, 5, bold);
      EXPECT_LE(painted_mm, laid_out_mm * 1.001) << words;
      EXPECT_GE(painted_mm, laid_out_mm * 0.97) << words;
    }
  }
}

TEST(Painter, SignsThatTheTableLacksAreNeverWiderThanItSays) {
  for (const char* words : {"°", "–", "·", "×", "é"}) {
    EXPECT_LE(PaintedWidth_mm(words, 5, true), answers::TextWidth_mm(words, 5, true)) << words;
  }
}

TEST(Painter, EachFormatBeginsAsItShould) {
  EXPECT_EQ(Bytes(PictureFormat::kPdf).substr(0, 5), "%PDF-");
  EXPECT_EQ(Bytes(PictureFormat::kPng).substr(1, 3), "PNG");
  EXPECT_NE(Bytes(PictureFormat::kSvg).find("<svg"), std::string::npos);
}

TEST(Painter, TheSameDrawingGivesTheSameBytes) {
  for (const PictureFormat format :
       {PictureFormat::kSvg, PictureFormat::kPng, PictureFormat::kPdf}) {
    EXPECT_EQ(Bytes(format), Bytes(format));
  }
}

TEST(Painter, APdfCarriesItsTitleButNoDate) {
  // The title shows that the file's particulars can be read as plain text here.
  EXPECT_NE(Bytes(PictureFormat::kPdf).find("/Title (Test)"), std::string::npos);
  EXPECT_EQ(Bytes(PictureFormat::kPdf).find("Date"), std::string::npos);
}

TEST(Painter, APngHas200DotsAnInchAndALargeSheetFewer) {
  const std::string small = Bytes(PictureFormat::kPng);
  EXPECT_EQ(BigEndian(small, 16), 394U);  // 50 mm at 200 dots an inch.
  EXPECT_EQ(BigEndian(small, 20), 236U);
  Drawing large = SmallSheet();
  large.width_mm = 3000;
  const auto bytes = PaintToBytes(large, PictureFormat::kPng);
  ASSERT_TRUE(bytes);
  EXPECT_EQ(BigEndian(*bytes, 16), 6000U);
}

TEST(Painter, PalettesDiffer) {
  const std::string day = Bytes(PictureFormat::kSvg, Palette::kDay);
  const std::string night = Bytes(PictureFormat::kSvg, Palette::kNight);
  const std::string print = Bytes(PictureFormat::kSvg, Palette::kPrint);
  EXPECT_NE(day, night);
  EXPECT_NE(day, print);
  EXPECT_NE(print.find("100%,100%,100%"), std::string::npos);  // White paper,
  EXPECT_NE(print.find("rgb(0%,0%,0%)"), std::string::npos);   // black ink.
}

TEST(Painter, TheEndingOfTheNameDecides) {
  EXPECT_EQ(FormatOf("a.svg").value(), PictureFormat::kSvg);
  EXPECT_EQ(FormatOf("dir.x/a.PNG").value(), PictureFormat::kPng);
  EXPECT_EQ(FormatOf("a.b.pdf").value(), PictureFormat::kPdf);
  for (const char* path : {"a.jpg", "a", "", "dir.svg/a", "svg"}) {
    const auto format = FormatOf(path);
    ASSERT_FALSE(format) << path;
    EXPECT_EQ(format.error().kind, ProblemKind::kBadInput);
    EXPECT_EQ(format.error().remedy, "End it in .svg, .png or .pdf.");
  }
}

TEST(Painter, WritesAndReplacesAFile) {
  const std::string path = testing::TempDir() + "offplumb_painter_test.svg";
  std::ofstream(path) << "older and longer than nothing";
  ASSERT_TRUE(Paint(SmallSheet(), path));
  EXPECT_EQ(ReadAll(path), Bytes(PictureFormat::kSvg));
  std::remove(path.c_str());
}

TEST(Painter, AFileThatCannotBeWrittenIsNamed) {
  const auto painted = Paint(SmallSheet(), "/no/such/folder/a.svg");
  ASSERT_FALSE(painted);
  EXPECT_EQ(painted.error().kind, ProblemKind::kBadInput);
  EXPECT_EQ(painted.error().file, "/no/such/folder/a.svg");
  EXPECT_NE(painted.error().message.find("/no/such/folder/a.svg"), std::string::npos);
}

TEST(Painter, ASheetOfNoSizeOrWithAPointNowhereIsRefused) {
  Drawing drawing = SmallSheet();
  drawing.width_mm = 0;
  EXPECT_FALSE(PaintToBytes(drawing, PictureFormat::kSvg));
  drawing = SmallSheet();
  drawing.lines[0].points[0].x_mm = std::numeric_limits<double>::quiet_NaN();
  const auto bytes = PaintToBytes(drawing, PictureFormat::kSvg);
  ASSERT_FALSE(bytes);
  EXPECT_EQ(bytes.error().kind, ProblemKind::kFault);
}

}  // namespace
}  // namespace offplumb::ports
