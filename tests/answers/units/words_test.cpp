#include "answers/units/words.h"

#include <gtest/gtest.h>

namespace offplumb::answers {
namespace {

TEST(Words, AreComparedWithoutCapitals) {
  EXPECT_TRUE(SameWord("Feet", "fEET"));
  EXPECT_FALSE(SameWord("feet", "fee"));
  EXPECT_FALSE(
      SameWord("[", "{"));  // These two differ by the bit that parts capitals from small letters.
}

TEST(Words, AreTrimmed) {
  EXPECT_EQ(Trim(" \t a b \r\n"), "a b");
  EXPECT_EQ(Trim(" \t "), "");
  EXPECT_EQ(Trim(""), "");
}

TEST(Words, AreJoined) {
  EXPECT_EQ(JoinWords({}, "or"), "");
  EXPECT_EQ(JoinWords({"a"}, "or"), "a");
  EXPECT_EQ(JoinWords({"a", "b"}, "or"), "a or b");
  EXPECT_EQ(JoinWords({"a", "b", "c"}, "and"), "a, b and c");
}

TEST(Words, AreQuotedWithoutControlCharactersAndCutAtAWholeLetter) {
  EXPECT_EQ(Quoted("a\nb\x7f"), "\"a?b?\"");
  // 59 plain bytes, then a letter of two bytes that does not fit in 60.
  EXPECT_EQ(Quoted(std::string(59, 'x') + "\xC3\xA9"), "\"" + std::string(59, 'x') + "...\"");
  // Continuation bytes alone, which no text holds: nothing is left, but nothing breaks.
  EXPECT_EQ(Quoted(std::string(100, '\x80')), "\"...\"");
}

}  // namespace
}  // namespace offplumb::answers
