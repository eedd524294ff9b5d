#pragma once
// Sentences of what was taken, each with the parts that lack a thing.

#include <string>
#include <string_view>
#include <vector>

#include "model/project.hpp"

namespace linewright {

using Names = std::vector<std::string>;

class Sentences {
 public:
  /// `words` with the names for {}, the first of them where there are many; nothing where there
  /// are none.
  void add(const Names& names, std::string_view words);
  void add(std::string sentence) { sentences_.push_back(std::move(sentence)); }
  std::vector<std::string> take() { return std::move(sentences_); }

 private:
  std::vector<std::string> sentences_;
};

/// "rudder-left at its point 3", counted from one.
std::string at_point(const Route& route, std::size_t index);

}  // namespace linewright
