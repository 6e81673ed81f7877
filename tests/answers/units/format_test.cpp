// What every sentence is put together with. As WebAssembly a small stand-in does it
// (cmake/small_fmt), natively the library: both must write the same.

#include <string>
#include <string_view>

#include <fmt/format.h>
#include <gtest/gtest.h>

namespace offplumb {
namespace {

TEST(Format, PutsValuesIn) {
  EXPECT_EQ(fmt::format("plain"), "plain");
  EXPECT_EQ(fmt::format("{} and {}", std::string("a"), std::string_view("b")), "a and b");
  EXPECT_EQ(fmt::format("{}{}", "words", 'c'), "wordsc");
  EXPECT_EQ(fmt::format("{} {} {}", -3, 7U, std::size_t{12}), "-3 7 12");
  EXPECT_EQ(fmt::format("{{{}}}", 1), "{1}");
}

TEST(Format, WritesNumbersInTheDigitsAskedFor) {
  EXPECT_EQ(fmt::format("{:.0f} {:.1f} {:.2f}", 2.5, 0.25, 1e3), "2 0.2 1000.00");
  EXPECT_EQ(fmt::format("{:.4g} {:.10g} {:g}", 123456.0, 0.1, 1e-5), "1.235e+05 0.1 1e-05");
  EXPECT_EQ(fmt::format("{:.{}f}|{:.{}g}", 3.14159, 3, 2.0 / 3, 2), "3.142|0.67");
  EXPECT_EQ(fmt::format("{:04X} {:5.1f}", 0x1F, 2.25), "001F   2.2");
  EXPECT_EQ(fmt::format("{:.0f} {:.1f}", -0.4, -0.04), "-0 -0.0");
}

TEST(Format, WritesTheShortestDigitsThatReadBack) {
  EXPECT_EQ(fmt::format("{} {} {}", 0.1, 1.0 / 3, 100.0), "0.1 0.3333333333333333 100");
  EXPECT_EQ(fmt::format("{} {}", 1e300, 5e-324), "1e+300 5e-324");
  EXPECT_EQ(fmt::format("{} {}", 0.1 + 0.2, 1e16), "0.30000000000000004 1e+16");
}

}  // namespace
}  // namespace offplumb
