// Every coefficient and default of water and tackle has a source or a mark, and the list says what
// the code does.
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "engine/constants.h"
#include "engine/tackle/catalogue.h"
#include "engine/tackle/drag_law.h"
#include "engine/water/water.h"

namespace offplumb::tackle {
namespace {

std::map<std::string, double> ByName() {
  std::map<std::string, double> values;
  for (const Coefficient& c : Coefficients()) values[c.name] = c.value;
  return values;
}

/// The values of a list of names, all of which start alike.
class Listed {
 public:
  explicit Listed(std::string prefix) : prefix_(std::move(prefix)) {}
  double operator()(const std::string& name) const {
    const auto found = values_.find(prefix_ + name);
    EXPECT_NE(found, values_.end()) << prefix_ << name << " is not listed";
    return found == values_.end() ? std::nan("") : found->second;
  }

 private:
  std::string prefix_;
  std::map<std::string, double> values_ = ByName();
};

/// The list and the code do the same sums, in another order at most.
constexpr double kRounding = 1e-13;

TEST(Coefficients, EachHasASourceOrAMark) {
  const std::set<std::string_view> known{"published", "worked out", "from memory",
                                         "common practice, no source", "judgement"};
  EXPECT_GT(Coefficients().size(), 150u);
  for (const Coefficient& c : Coefficients()) {
    EXPECT_TRUE(known.count(MarkText(c.mark))) << c.name;
    const bool names_its_source = c.source.size() > 5;
    if (c.mark == Mark::kPublished || c.mark == Mark::kWorkedOut || c.mark == Mark::kJudgement) {
      EXPECT_TRUE(names_its_source)
          << c.name << " is " << MarkText(c.mark) << " but does not say by whom or how";
    }
    EXPECT_FALSE(c.unit.empty()) << c.name;
    EXPECT_TRUE(std::isfinite(c.value)) << c.name;
  }
}

TEST(Coefficients, NoneIsListedTwice) {
  std::set<std::string> names;
  for (const Coefficient& c : Coefficients()) EXPECT_TRUE(names.insert(c.name).second) << c.name;
}

/// A number given a name in a header of these rooms is a coefficient or a default: it must be
/// listed.
TEST(Coefficients, HoldEveryNamedNumberOfTheHeaders) {
  std::string all;
  for (const Coefficient& c : Coefficients()) all += c.name + "\n";
  const std::filesystem::path engine = std::filesystem::path(OFFPLUMB_SOURCE_DIR) / "engine";
  std::vector<std::filesystem::path> headers{engine / "constants.h"};
  for (const char* room : {"water", "tackle"}) {
    for (const auto& entry : std::filesystem::directory_iterator(engine / room)) {
      if (entry.path().extension() == ".h") headers.push_back(entry.path());
    }
  }
  int found = 0;
  const std::regex named(R"(constexpr double (k\w+))");
  for (const auto& header : headers) {
    // The figures of the catalogue go into the list one by one, by their table.
    if (header.filename() == "catalogue_data.h") continue;
    std::stringstream text;
    text << std::ifstream(header).rdbuf();
    const std::string code = text.str();
    for (std::sregex_iterator it(code.begin(), code.end(), named), end; it != end; ++it) {
      const std::string name = (*it)[1];
      if (name == "kPi") continue;  // Mathematics, not a measurement.
      EXPECT_THAT(all, testing::HasSubstr(name)) << header;
      ++found;
    }
  }
  EXPECT_GE(found, 8);
}

TEST(Coefficients, OfWaterDensityAreThoseOfTheCode) {
  const Listed c("water density, ");
  for (const double t : {0.0, 5.0, 18.0, 40.0}) {
    for (const double s : {0.0, 12.0, 35.0}) {
      double density = 0;
      for (int i = 5; i >= 0; --i) density = density * t + c("pure, t^" + std::to_string(i));
      double a = 0;
      for (int i = 4; i >= 0; --i) a = a * t + c("S, t^" + std::to_string(i));
      double b = 0;
      for (int i = 2; i >= 0; --i) b = b * t + c("S^1.5, t^" + std::to_string(i));
      density += a * s + b * std::pow(s, 1.5) + c("S^2") * s * s;
      EXPECT_NEAR(water::Density_kg_per_m3(t, s), density, 1000 * kRounding);
    }
  }
}

TEST(Coefficients, OfWaterViscosityAreThoseOfTheCode) {
  const Listed c("water viscosity, ");
  for (const double t : {0.0, 10.0, 40.0}) {
    for (const double s : {0.0, 35.0}) {
      const double x = t + c("pure, offset");
      const double pure = c("pure, floor") + 1 / (c("pure, factor") * x * x - c("pure, constant"));
      const double a = c("A, t^0") + c("A, t^1") * t + c("A, t^2") * t * t;
      const double b = c("B, t^0") + c("B, t^1") * t + c("B, t^2") * t * t;
      const double kg = s / 1000;
      EXPECT_NEAR(water::DynamicViscosity_Pa_s(t, s), pure * (1 + a * kg + b * kg * kg), kRounding);
    }
  }
}

TEST(Coefficients, OfCylindersAreThoseOfTheCode) {
  const Listed w("White's cylinder, ");
  const Listed s("Sucker and Brauer's cylinder, ");
  for (const double re : {30.0, 700.0, 1e5}) {
    EXPECT_NEAR(WhiteCylinder(re), w("constant") + w("factor") * std::pow(re, w("exponent")),
                kRounding);
    const double law = s("constant") + s("first factor") / std::pow(re, s("first exponent")) +
                       s("second factor") / std::pow(re, s("second exponent")) -
                       s("dip") * re / (1 + s("dip's end") * re * re);
    EXPECT_NEAR(SuckerBrauerCylinder(re), law, kRounding);
  }
}

TEST(Coefficients, OfSpheresAreThoseOfTheCode) {
  const Listed h("Haider and Levenspiel's sphere, ");
  const Listed m("Morrison's sphere, ");
  for (const double re : {200.0, 5e4, 2.5e5}) {
    const double law =
        h("Stokes") / re * (1 + h("A") * std::pow(re, h("B"))) + h("C") / (1 + h("D") / re);
    EXPECT_NEAR(HaiderLevenspielSphere(re), law, kRounding);
    const double x = re / m("second scale");
    const double y = re / m("crisis scale");
    const double morrison = m("Stokes") / re +
                            m("second factor") * x / (1 + std::pow(x, m("second exponent"))) +
                            m("crisis factor") * std::pow(y, m("crisis exponent above")) /
                                (1 + std::pow(y, m("crisis exponent below"))) +
                            std::pow(re, m("last exponent")) / m("last divisor");
    EXPECT_NEAR(MorrisonSphere(re), morrison, kRounding);
  }
}

TEST(Coefficients, OfPlatesAndStrummingAreThoseOfTheCode) {
  const Listed p("plate broadside, ");
  const Listed i("inclined plate, ");
  const Listed d("strumming drag, ");
  const Listed a("strumming amplitude, ");
  const auto broadside = [&](double b) { return p("square") + p("per aspect") * (b + 1 / b); };
  EXPECT_NEAR(PlateBroadside(3), broadside(3), kRounding);
  const double four = i("4 + pi sin");
  const double s = std::sin(0.4);
  const double law = broadside(3) * (s / (four + kPi * s)) / (1 / (four + kPi)) * s;
  EXPECT_NEAR(InclinedPlateDrag(0.4, 3), law, kRounding);
  const auto strumming = [&](double re) {
    return 1 + d("factor") *
                   std::pow(std::log10(a("factor") * std::pow(re, a("exponent"))), d("exponent"));
  };
  EXPECT_NEAR(StrummingFactor(700), strumming(700), kRounding);
  EXPECT_NEAR(StrummingFactor(1), strumming(a("least Reynolds number")), kRounding);
  EXPECT_NEAR(StrummingFactor(1e9), strumming(a("largest Reynolds number")), kRounding);
}

}  // namespace
}  // namespace offplumb::tackle
