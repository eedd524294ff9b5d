#pragma once
// A YAML text as a plain tree in which every key and value knows its place. Built from parser
// events rather than the library's own tree, which loses places, hides duplicated keys and follows
// aliases.

#include <string>
#include <string_view>
#include <vector>

#include "input/diagnostic.hpp"

namespace linewright {

struct YamlEntry;

/// A scalar, a sequence or a map.
struct YamlNode {
  /// `unread`: stands for what could not be worked out, which was reported where it went wrong.
  enum class Kind { null, scalar, sequence, map, unread };
  Kind kind = Kind::null;
  std::string text;     ///< scalars: as written, without quotes
  bool quoted = false;  ///< scalars: written in quotes or as a block
  SourceLocation where;
  std::vector<YamlNode> items;     ///< sequences
  std::vector<YamlEntry> entries;  ///< maps, in file order, keys distinct
  std::string note;                ///< what a value that was worked out came from

  /// Value of a key, or nullptr.
  const YamlNode* find(std::string_view key) const;
  YamlNode* find(std::string_view key);
};

struct YamlEntry {
  std::string key;
  SourceLocation key_where;
  YamlNode value;
};

struct YamlDocument {
  YamlNode root;  ///< meaningful only when there are no errors
  std::vector<Diagnostic> errors;
  std::vector<std::string> lines;  ///< the text by line, for carets
};

/// Limits on what a hand-written project file can sensibly hold.
inline constexpr std::size_t largest_file_bytes = 16u << 20;
inline constexpr int deepest_nesting = 64;
inline constexpr std::size_t most_nodes = 800'000;

/// Parses one document. Errors, each at its place: bytes that are not UTF-8, control characters, a
/// text that is empty, a second document, text after the document, a duplicated key, a key that is
/// not a scalar or has no colon, a merge key, an alias or anchor, a tag, a quote or bracket that is
/// never closed, nesting deeper than `deepest_nesting`, too many nodes, and whatever the YAML
/// parser refuses. After a hundred errors, or one of the parser's, the rest is not read. An empty
/// value's place is just after its key's colon or its dash. Never throws for bad input.
YamlDocument read_yaml(std::string_view bytes, const std::string& file_name);

}  // namespace linewright
