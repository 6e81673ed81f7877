#include "ports/files/current_file.h"

#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ports/files/text_file.h"

namespace offplumb::ports {
namespace {

using testing::HasSubstr;

constexpr double kKnot_mps = 1852.0 / 3600;

std::string Steps(const std::string& points) {
  return "shape = \"steps\"\npoints = [\n" + points + "]\n";
}

TEST(CurrentFile, ReadsDepthSpeedAndWay) {
  const auto current = ReadCurrentText(
      "shape = \"linear\"\npoints = [ { depth = \"10 ft\", speed = \"2 kn\", toward = \"90 deg\" "
      "},\n"
      "{ depth = \"20 m\", speed = \"1 m/s\", toward = \"180 deg\" } ]\n",
      "c.toml");
  ASSERT_TRUE(current) << current.error().message;
  EXPECT_EQ(current->shape, water::CurrentShape::kLinear);
  ASSERT_EQ(current->points.size(), 2u);
  EXPECT_DOUBLE_EQ(current->points[0].depth_m, 3.048);
  // Toward 90 degrees is east; toward 180 south.
  EXPECT_NEAR((current->points[0].velocity_mps - water::Vector2d(0, 2 * kKnot_mps)).norm(), 0,
              1e-12);
  EXPECT_NEAR((current->points[1].velocity_mps - water::Vector2d(-1, 0)).norm(), 0, 1e-12);
}

struct Broken {
  std::string_view name;
  std::string text;
  int line;
  std::string_view message;
};

class BrokenCurrentFile : public testing::TestWithParam<Broken> {};

TEST_P(BrokenCurrentFile, IsRefusedWithItsLine) {
  const auto current = ReadCurrentText(GetParam().text, "c.toml");
  ASSERT_FALSE(current);
  EXPECT_EQ(current.error().file, "c.toml");
  EXPECT_EQ(current.error().line, GetParam().line) << current.error().message;
  EXPECT_THAT(current.error().message, HasSubstr(std::string(GetParam().message)));
}

constexpr const char* kSurface = "{ depth = \"0 m\", speed = \"1 kn\", toward = \"0 deg\" },\n";

INSTANTIATE_TEST_SUITE_P(
    All, BrokenCurrentFile,
    testing::Values(
        Broken{"NoShape",
               "points = [ { depth = \"0 m\", speed = \"1 kn\", toward = \"0 deg\" } ]\n", 1,
               "\"shape\" is missing"},
        Broken{"OddShape", "shape = \"curvy\"\n", 1, "\"curvy\" is not a shape"},
        Broken{"NoPoints", "shape = \"steps\"\n", 1, "0 points; a current must have from 1"},
        Broken{"UnknownKey", Steps("{ depth = \"0 m\", speed = \"1 kn\", towards = \"0 deg\" }\n"),
               3, "no key \"towards\""},
        Broken{"FirstLayerBelowTheSurface",
               Steps("{ depth = \"5 m\", speed = \"1 kn\", toward = \"0 deg\" }\n"), 3,
               "starts at 5 m; it must start at the surface"},
        Broken{"Twice", Steps(std::string(kSurface) + kSurface), 4, "0 m follows 0 m"},
        Broken{"Backward",
               Steps(kSurface +
                     std::string("{ depth = \"9 m\", speed = \"1 kn\", toward = \"0 deg\" },\n"
                                 "{ depth = \"8 m\", speed = \"1 kn\", toward = \"0 deg\" },\n")),
               5, "8 m follows 9 m"},
        Broken{"TooFast", Steps("{ depth = \"0 m\", speed = \"20 kn\", toward = \"0 deg\" }\n"), 3,
               "from 0 kn to 9.719 kn"},
        Broken{"NegativeSpeed",
               Steps("{ depth = \"0 m\", speed = \"-1 kn\", toward = \"0 deg\" }\n"), 3,
               "out of range"},
        Broken{"NegativeDepth",
               Steps("{ depth = \"-1 m\", speed = \"1 kn\", toward = \"0 deg\" }\n"), 3,
               "out of range"},
        Broken{"BareDirection", Steps("{ depth = \"0 m\", speed = \"1 kn\", toward = 200 }\n"), 3,
               "200 has no unit"},
        Broken{"PointIsAText", "shape = \"steps\"\npoints = [ \"1 kn\" ]\n", 2, "must be a table"}),
    [](const testing::TestParamInfo<Broken>& tested) { return std::string(tested.param.name); });

TEST(CurrentFile, CountsPointsFromOne) {
  const auto current = ReadCurrentText(
      Steps(kSurface + std::string("{ depth = \"9 m\", speed = \"1 kn\" },\n")), "c.toml");
  ASSERT_FALSE(current);
  EXPECT_EQ(current.error().subject, "point 2: toward");
}

TEST(CurrentPhrase, IsOneCurrentForAllDepths) {
  for (const char* text : {"0.4 kn toward 180", "0.4 kn toward 180 deg", "0.4kn toward 180deg"}) {
    const auto current = ParseCurrent(text);
    ASSERT_TRUE(current) << text << current.error().message;
    ASSERT_EQ(current->points.size(), 1u);
    EXPECT_NEAR((current->points[0].velocity_mps - water::Vector2d(-0.4 * kKnot_mps, 0)).norm(), 0,
                1e-12);
  }
}

TEST(CurrentPhrase, IsRefusedWhenItIsNone) {
  for (const char* text :
       {"", "0.4 kn", "0.4 toward 200", "toward 200", "0.4 kn toward", "0.4 kn toward nan",
        "0.4 kn toward 400", "30 kn toward 20", "0.4 kn toward 20 kn", "nan kn toward 2"}) {
    const auto current = ParseCurrent(text);
    ASSERT_FALSE(current) << text;
    EXPECT_FALSE(current.error().remedy.empty()) << text;
  }
}

TEST(CurrentPhraseOrPath, IsToldApartByItsWord) {
  EXPECT_TRUE(ReadCurrent("0.4 kn toward 200"));
  EXPECT_TRUE(ReadCurrent(std::string(OFFPLUMB_SOURCE_DIR) + "/examples/currents/two-layers.toml"));
  const auto missing = ReadCurrent("none.toml");
  ASSERT_FALSE(missing);
  EXPECT_EQ(missing.error().file, "none.toml");
}

TEST(CurrentExamples, AreRead) {
  const std::string folder = std::string(OFFPLUMB_SOURCE_DIR) + "/examples/currents/";
  for (const char* name : {"two-layers.toml", "spindrift-sound.toml"}) {
    const auto current = ReadCurrentFile(folder + name);
    EXPECT_TRUE(current) << name << ": " << current.error().message;
  }
  const auto layers = ReadCurrentFile(folder + "two-layers.toml");
  EXPECT_EQ(water::CurrentAt(*layers, 19.9), water::Vector2d(0, 0));
  EXPECT_EQ(water::CurrentAt(*layers, 20), water::Vector2d(0.5, 0));
}

TEST(CurrentManual, NamesEveryKey) {
  const auto manual = ReadTextFile(std::string(OFFPLUMB_SOURCE_DIR) + "/docs/current-file.md");
  ASSERT_TRUE(manual);
  for (const char* key : {"`shape`", "`points`", "`depth`", "`speed`", "`toward`"}) {
    EXPECT_THAT(*manual, HasSubstr(key));
  }
}

}  // namespace
}  // namespace offplumb::ports
