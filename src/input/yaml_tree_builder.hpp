#pragma once
// The YAML parser's events into a tree that knows its places.

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/mark.h>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "input/diagnostic.hpp"
#include "input/yaml_document.hpp"
#include "input/yaml_text.hpp"

namespace linewright {

/// Ends the parse from within an event. The error is already noted.
struct StopParsing {};

inline constexpr std::string_view too_deep_help =
    "nothing in a project is so deep: look for brackets or indentation gone wrong";
inline constexpr std::string_view too_many_help = "give a detailed shape as a mesh";

/// "nested more than 64 deep", "more than 800000 values".
std::string nested_too_deeply();
std::string too_many_values();

/// Builds the tree and notes in `errors` what is refused. Every event may throw StopParsing.
class YamlTreeBuilder : public YAML::EventHandler {
 public:
  YamlTreeBuilder(const YamlText& text, std::vector<Diagnostic>& errors)
      : text_(text), errors_(errors) {}

  YamlNode take_root() { return std::move(root_); }
  /// Byte of the last event.
  std::size_t last_offset() const { return last_offset_; }
  /// Byte of the innermost bracket that is still open.
  std::optional<std::size_t> open_bracket() const;

  /// Notes an error, one a place. Throws StopParsing after a hundred.
  void report(std::size_t offset, std::string message, std::string_view suggestion = "");

  void OnDocumentStart(const YAML::Mark& mark) override;
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t) override;
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override;
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t,
                const std::string& value) override;
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t,
                       YAML::EmitterStyle::value style) override {
    open(YamlNode::Kind::sequence, mark, tag, style);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t,
                  YAML::EmitterStyle::value style) override {
    open(YamlNode::Kind::map, mark, tag, style);
  }
  void OnMapEnd() override { close(); }
  void OnAnchor(const YAML::Mark& mark, const std::string& name) override;

 private:
  /// A sequence or map whose end has not come yet.
  struct Open {
    YamlNode node;
    std::size_t offset = 0;
    bool bracketed = false;
    bool key_read = false;  ///< the next event is a value
    bool key_refused = false;
    bool begins_anew = false;  ///< its first key came again
    std::string key;
    std::size_t key_offset = 0;
    std::unordered_map<std::string, int> lines_of_keys;
  };

  std::size_t seen(const YAML::Mark& mark);
  void refuse_tag(std::size_t offset, const std::string& tag);
  /// Of the character `at` in a scalar that begins at `offset` of the text.
  void report_invisible(std::size_t offset, const std::string& value, std::size_t at);
  void refuse_missing_colon(std::size_t after_key);
  std::size_t null_offset(std::size_t offset) const;
  void count_node(std::size_t offset);
  void open(YamlNode::Kind kind, const YAML::Mark& mark, const std::string& tag,
            YAML::EmitterStyle::value style);
  void close();
  void add(YamlNode node, std::size_t offset);
  void take_key(Open& in, YamlNode node, std::size_t offset);
  void report_second(Open& in, const std::string& key, int first_line, std::size_t offset);

  const YamlText& text_;
  std::vector<Diagnostic>& errors_;
  YamlNode root_;
  std::vector<Open> open_;
  std::size_t nodes_ = 0;
  std::size_t last_offset_ = 0;
  int documents_ = 0;
};

}  // namespace linewright
