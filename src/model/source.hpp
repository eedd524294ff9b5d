#pragma once
// Where a value came from: a place in the builder's files, or a published source.

#include <string>

namespace linewright {

/// A place in a project file. Lines and columns count from one; columns count characters, not
/// bytes. `file` is relative to the project's folder, with forward slashes.
struct SourceLocation {
  std::string file;
  int line = 0;
  int column = 0;

  friend bool operator==(const SourceLocation&, const SourceLocation&) = default;
};

/// How far a published value can be trusted.
enum class Mark {
  verified,            ///< read in a copy of the source itself
  verified_secondary,  ///< read in a page that restates the source
  from_memory,         ///< recalled; not checked against the named source
  common_practice,     ///< a fact of the trade without a document
  calculated,          ///< follows from geometry or from other marked values
  builder,             ///< stated by the builder in the project, with a source
};

/// A published source and how it was read.
struct Source {
  std::string text;
  Mark mark = Mark::from_memory;

  friend bool operator==(const Source&, const Source&) = default;
};

/// A number and the source it rests on. The unit is in the name of the member that holds it.
struct SourcedValue {
  double value = 0;
  Source source;

  friend bool operator==(const SourcedValue&, const SourcedValue&) = default;
};

}  // namespace linewright
