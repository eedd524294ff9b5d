#pragma once
// Reading a YAML text in a test, and what to expect of it.

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <utility>

#include "input/yaml_document.hpp"

namespace linewright {

inline YamlDocument read(std::string_view text) {
  return read_yaml(text, "a.yaml");
}

inline SourceLocation at(int line, int column) {
  return {"a.yaml", line, column};
}

inline std::string repeated(std::string_view text, std::size_t times) {
  std::string all;
  all.reserve(text.size() * times);
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

/// The root of a document that must be free of errors.
inline YamlNode root_of(std::string_view text) {
  YamlDocument document = read(text);
  for (const Diagnostic& error : document.errors)
    ADD_FAILURE() << text << "\n"
                  << error.where.line << ":" << error.where.column << " " << error.message;
  return std::move(document.root);
}

/// The only error of a document that must have one.
inline Diagnostic only_error(std::string_view text) {
  const YamlDocument document = read(text);
  EXPECT_EQ(document.errors.size(), 1u) << text;
  return document.errors.empty() ? Diagnostic{} : document.errors.front();
}

/// Expects one error, there, whose message holds `part`, with the source line.
inline void expect_error(std::string_view text, SourceLocation where, std::string_view part) {
  const YamlDocument document = read(text);
  ASSERT_EQ(document.errors.size(), 1u) << text;
  const Diagnostic& error = document.errors.front();
  EXPECT_EQ(error.where.line, where.line) << text << "\n" << error.message;
  EXPECT_EQ(error.where.column, where.column) << text << "\n" << error.message;
  EXPECT_NE(error.message.find(part), std::string::npos) << text << "\n" << error.message;
  if (where.line > 0) {
    EXPECT_EQ(error.source_line, document.lines.at(static_cast<std::size_t>(where.line) - 1));
  }
}

}  // namespace linewright
