/// \file
/// Writes JSON as text, piece by piece: an answer is told many times a second while a finger drags,
/// and a tree of values would be built only to be printed.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace offplumb::answers {

/// One JSON object, from its first key to its last. Keys come in the order in which they are
/// written; every Object, List or Item is ended by End.
class JsonWriter {
 public:
  /// \param indent blanks a level, each value on its own line; 0: all on one line.
  explicit JsonWriter(int indent = 0);

  /// Values of an object, by key. A number that is not finite is written as null; text that is not
  /// UTF-8 is mended.
  void Number(std::string_view key, double value);
  void Whole(std::string_view key, long long value);
  void Flag(std::string_view key, bool value);
  void Text(std::string_view key, std::string_view value);
  void Null(std::string_view key);
  void NumberOrNull(std::string_view key, const std::optional<double>& value);
  /// An empty text is null.
  void TextOrNull(std::string_view key, std::string_view value);
  void Numbers(std::string_view key, const std::vector<double>& values);
  void Texts(std::string_view key, const std::vector<std::string>& values);
  void Object(std::string_view key);
  void List(std::string_view key);

  /// Values of a list.
  void NumberItem(double value);
  void TextItem(std::string_view value);
  void FlagItem(bool value);
  void NullItem();
  void ObjectItem();
  void ListItem();

  /// Ends the object or list begun last.
  void End();

  /// Ends the whole. \return its text, without a line end. To be called once, last.
  [[nodiscard]] std::string Take();

 private:
  void Begin();
  void Key(std::string_view key);
  void Open(char bracket, char closing);
  void NewLine();
  void PutNumber(double value);
  void PutText(std::string_view text);

  std::string text_;
  std::string closings_;  ///< Of what is open, the innermost last.
  bool first_ = true;     ///< Nothing stands yet in what is open.
  int indent_ = 0;
};

}  // namespace offplumb::answers
