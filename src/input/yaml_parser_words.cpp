#include "input/yaml_parser_words.hpp"

#include <fmt/format.h>
#include <yaml-cpp/exceptions.h>

#include <array>

namespace linewright {
namespace {

struct Rewording {
  std::string_view parser;  ///< how the parser's message starts
  std::string_view message;
  std::string_view suggestion;
};

constexpr std::string_view check_indentation = "check the indentation";

const std::array rewordings = {
    Rewording{YAML::ErrorMsg::END_OF_MAP, "expected 'key: value' in the column of the keys above",
              check_indentation},
    Rewording{YAML::ErrorMsg::END_OF_SEQ,
              "expected an item ('- ') in the column of the items above", check_indentation},
    Rewording{YAML::ErrorMsg::MAP_VALUE, "a ':' that follows no key",
              "check the indentation; put text that holds ': ' in quotes"},
    Rewording{YAML::ErrorMsg::MAP_KEY, "a '? ' where no key can stand", check_indentation},
    Rewording{YAML::ErrorMsg::BLOCK_ENTRY, "an item ('- ') where none can stand",
              check_indentation},
    Rewording{YAML::ErrorMsg::FLOW_END, "a closing bracket that matches no opening one", ""},
    Rewording{YAML::ErrorMsg::EOF_IN_SCALAR, quote_not_closed, ""},
    Rewording{YAML::ErrorMsg::DOC_IN_SCALAR, "a document marker inside quoted text", ""},
    Rewording{YAML::ErrorMsg::UNKNOWN_TOKEN, "a character that cannot start a value",
              "put the text in quotes"},
    Rewording{YAML::ErrorMsg::TAB_IN_INDENTATION, "a tab in the indentation", "indent with spaces"},
    Rewording{YAML::ErrorMsg::INVALID_ESCAPE, "an unknown escape after '\\'",
              "in single quotes a backslash stands for itself"},
    Rewording{YAML::ErrorMsg::UNKNOWN_ANCHOR, alias_refused, alias_help},
    Rewording{YAML::ErrorMsg::ALIAS_NOT_FOUND, alias_refused, alias_help},
    Rewording{YAML::ErrorMsg::CHAR_IN_ALIAS, alias_refused, alias_help},
    Rewording{YAML::ErrorMsg::ALIAS_CONTENT, alias_refused, alias_help},
    Rewording{YAML::ErrorMsg::ANCHOR_NOT_FOUND, anchor_refused, anchor_help},
    Rewording{YAML::ErrorMsg::CHAR_IN_ANCHOR, anchor_refused, anchor_help},
    Rewording{YAML::ErrorMsg::MULTIPLE_ANCHORS, anchor_refused, anchor_help},
    Rewording{YAML::ErrorMsg::MULTIPLE_TAGS, tag_refused, tag_help},
    Rewording{YAML::ErrorMsg::CHAR_IN_TAG_HANDLE, tag_refused, tag_help},
    Rewording{YAML::ErrorMsg::TAG_WITH_NO_SUFFIX, tag_refused, tag_help},
    Rewording{YAML::ErrorMsg::END_OF_VERBATIM_TAG, tag_refused, tag_help},
    Rewording{YAML::ErrorMsg::BAD_FILE, "nested too deeply", ""},
};

bool indented_with_tab(std::string_view source_before) {
  const std::size_t word = source_before.find_first_not_of(" \t");
  return source_before.substr(0, word).find('\t') != std::string_view::npos;
}

}  // namespace

// The longest of the parser's messages that fit decides: one is the start of another.
ParserWords reword_parser_message(std::string_view message, std::string_view source_before,
                                  bool at_end) {
  const bool list_open = message == YAML::ErrorMsg::END_OF_SEQ_FLOW;
  const bool map_open = message == YAML::ErrorMsg::END_OF_MAP_FLOW;
  if (at_end && list_open) return {"a '[' is never closed", "", OpenedEarlier::bracket_to_close};
  if (at_end && map_open) return {"a '{' is never closed", "", OpenedEarlier::bracket_to_close};
  if (list_open) return {"expected ',' or ']'", "", OpenedEarlier::bracket_around};
  if (map_open) return {"expected ',' or '}'", "", OpenedEarlier::bracket_around};
  if (indented_with_tab(source_before)) return {"a tab in the indentation", "indent with spaces"};
  const Rewording* fitting = nullptr;
  for (const Rewording& row : rewordings)
    if (message.starts_with(row.parser) &&
        (fitting == nullptr || row.parser.size() > fitting->parser.size()))
      fitting = &row;
  if (fitting != nullptr) return {std::string(fitting->message), std::string(fitting->suggestion)};
  return {fmt::format("not valid YAML: {}", message), ""};
}

}  // namespace linewright
