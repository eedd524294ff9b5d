#pragma once
// What a published row says, against the catalogue.

#include <gtest/gtest.h>

#include <optional>
#include <stdexcept>
#include <string>

#include "catalogue/catalogue.hpp"

namespace linewright {

/// The built-in line, or a failure that stops the test.
inline const Line& line_called(const std::string& name) {
  const Line* line = built_in_catalogue().find_line(name);
  if (!line) throw std::runtime_error("the catalogue has no line '" + name + "'");
  return *line;
}

/// A value typed from the published table must be there with its source and mark. The tolerance is
/// rounding in the last bits only.
inline void expect_sourced(const std::optional<SourcedValue>& value, double expected,
                           const std::string& source_part, Mark mark) {
  ASSERT_TRUE(value.has_value());
  EXPECT_NEAR(value->value, expected, 1e-9 * (1 + expected));
  EXPECT_NE(value->source.text.find(source_part), std::string::npos) << value->source.text;
  EXPECT_EQ(value->source.mark, mark) << value->source.text;
}

}  // namespace linewright
