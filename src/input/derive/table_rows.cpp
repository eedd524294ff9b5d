#include "input/derive/table_rows.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "input/project_draft.hpp"
#include "input/suggest_name.hpp"
#include "input/utf8.hpp"

namespace linewright {

namespace {

constexpr std::size_t most_rows = 10'000;
constexpr std::string_view blanks = " \t\r";

struct Cell {
  std::string text;
  SourceLocation where;
};

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(blanks) - first + 1));
}

bool is_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = utf8_length(text, at);
    if (length == 0) return false;
    at += length;
  }
  return true;
}

YamlNode scalar(const Cell& cell) {
  YamlNode node;
  node.kind = YamlNode::Kind::scalar;
  node.text = cell.text;
  node.where = cell.where;
  return node;
}

YamlNode sequence(std::vector<YamlNode> items, const SourceLocation& where) {
  YamlNode node;
  node.kind = YamlNode::Kind::sequence;
  node.items = std::move(items);
  node.where = where;
  return node;
}

YamlNode direction(const Cell& cell) {
  std::vector<YamlNode> items;
  std::size_t at = 0;
  while ((at = cell.text.find_first_not_of(blanks, at)) != std::string::npos) {
    const std::size_t end = std::min(cell.text.find_first_of(blanks, at), cell.text.size());
    items.push_back(scalar({cell.text.substr(at, end - at), cell.where}));
    at = end;
  }
  return sequence(std::move(items), cell.where);
}

class TableReader {
 public:
  TableReader(const std::string& file_name, const MapSpec& map, std::string_view place_key,
              const std::vector<std::string>& axes, ErrorList& errors)
      : file_name_(file_name), map_(map), place_key_(place_key), axes_(axes), errors_(errors) {}

  std::optional<std::vector<YamlNode>> read(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    std::vector<YamlNode> rows;
    const std::size_t errors_before = errors_.list.size();
    int line = 0;
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size());
      ++line;
      if (!take_line(text.substr(0, end), line, rows)) return std::nullopt;
      text.remove_prefix(std::min(end + 1, text.size()));
      if (rows.size() <= most_rows) continue;
      error({file_name_, line, 1}, fmt::format("a table has {} rows at most", most_rows),
            "leave out what lies on a straight line between others");
      return std::nullopt;
    }
    if (columns_.empty()) {
      error({file_name_, 1, 1}, "the table is empty", names_of_columns());
      return std::nullopt;
    }
    if (rows.empty() && errors_.list.size() == errors_before)
      error(columns_where_, "the table has no rows under the names of its columns",
            "add a row for each thing, or leave out the key that names the table");
    return rows;
  }

 private:
  void error(const SourceLocation& where, std::string message, std::string suggestion = {}) {
    errors_.add({where, std::move(message), std::move(suggestion), {}});
  }

  std::string names_of_columns() const {
    return fmt::format("its first line names its columns: {}", fmt::join(needed_columns(), ","));
  }

  /// False where nothing can be made of what follows.
  bool take_line(std::string_view line, int number, std::vector<YamlNode>& rows) {
    const SourceLocation where{file_name_, number, 1};
    const std::string content = trimmed(line);
    if (content.empty() || content.front() == '#') return true;
    if (!is_utf8(line)) {
      error(where, "the line is not UTF-8", "save the table as UTF-8, with commas between cells");
      return !columns_.empty();
    }
    if (const std::size_t end = std::min(line.find('\r'), line.size()); end + 1 < line.size()) {
      error({file_name_, number, static_cast<int>(character_count(line.substr(0, end))) + 1},
            "a carriage return within a line",
            "save the table with the line ends of Unix or Windows");
      return false;
    }
    const auto cells = split(line, number);
    if (!cells) return !columns_.empty();
    if (columns_.empty()) return name_columns(*cells);
    rows.push_back(row(*cells, number));
    return true;
  }

  std::optional<std::vector<Cell>> split(std::string_view line, int number) {
    std::vector<Cell> cells;
    std::size_t at = 0;
    while (true) {
      const SourceLocation where{file_name_, number,
                                 static_cast<int>(character_count(line.substr(0, at))) + 1};
      const std::size_t start = std::min(line.find_first_not_of(" \t", at), line.size());
      std::string text;
      if (start < line.size() && line[start] == '"') {
        std::size_t i = start + 1;
        for (; i < line.size(); ++i) {
          if (line[i] != '"')
            text += line[i];
          else if (i + 1 < line.size() && line[i + 1] == '"')
            text += line[++i];
          else
            break;
        }
        at = std::min(line.find(',', i), line.size());
        if (i >= line.size() || !trimmed(line.substr(i + 1, at - i - 1)).empty()) {
          error(where, "a cell that begins with a double quote must end with one");
          return std::nullopt;
        }
      } else {
        at = std::min(line.find(',', start), line.size());
        text = trimmed(line.substr(start, at - start));
      }
      cells.push_back({text, where});
      if (at >= line.size()) return cells;
      ++at;
    }
  }

  bool is_axis(const std::string& name) const {
    return std::find(axes_.begin(), axes_.end(), name) != axes_.end();
  }

  bool name_columns(const std::vector<Cell>& cells) {
    columns_where_ = cells.front().where;
    if (const std::size_t mark = cells.front().text.find_first_of(";\t");
        cells.size() == 1 && mark != std::string::npos) {
      error(cells.front().where,
            fmt::format("the columns are kept apart by {}",
                        cells.front().text[mark] == ';' ? "semicolons" : "tabs"),
            "save the table with commas between cells");
      return false;
    }
    bool all_known = true;
    std::vector<std::string> known = axes_;
    for (const KeySpec& key : map_.keys) {
      const bool in_a_cell = key.kind != KeyKind::map && key.kind != KeyKind::maps &&
                             key.kind != KeyKind::named_maps && key.kind != KeyKind::places &&
                             key.kind != KeyKind::plane_points && key.kind != KeyKind::names &&
                             key.kind != KeyKind::texts && key.kind != KeyKind::numbers;
      if (in_a_cell && key.name != place_key_ && !is_axis(std::string(key.name)))
        known.emplace_back(key.name);
    }
    for (const Cell& cell : cells) {
      const bool is_known = std::find(known.begin(), known.end(), cell.text) != known.end();
      all_known = all_known && is_known;
      if (!is_known)
        error(cell.where, fmt::format("unknown column {}", quoted_text(cell.text)),
              meant_column(cell.text, known));
      else if (std::find(columns_.begin(), columns_.end(), cell.text) != columns_.end())
        error(cell.where, fmt::format("column {} is there twice", quoted_text(cell.text)));
      columns_.push_back(is_known ? cell.text : std::string());
    }
    const std::vector<std::string> missing = missing_columns();
    // An unknown one may be what is missing, misspelt.
    if (!missing.empty() && all_known)
      error(cells.front().where,
            fmt::format("the table has no column '{}'", fmt::join(missing, "' and no column '")),
            names_of_columns());
    return missing.empty();
  }

  std::vector<std::string> needed_columns() const {
    std::vector<std::string> needed;
    for (const KeySpec& key : map_.keys)
      if (key.need == Need::always && key.name != place_key_) needed.emplace_back(key.name);
    needed.insert(needed.end(), axes_.begin(), axes_.end());
    return needed;
  }

  std::vector<std::string> missing_columns() const {
    std::vector<std::string> missing = needed_columns();
    std::erase_if(missing, [&](const std::string& name) {
      return std::find(columns_.begin(), columns_.end(), name) != columns_.end();
    });
    return missing;
  }

  static std::string meant_column(const std::string& name, const std::vector<std::string>& known) {
    const std::string meant = suggest_name(name, known);
    return fmt::format("{}{}columns: {}", meant, meant.empty() ? "" : " ", fmt::join(known, ", "));
  }

  YamlNode row(const std::vector<Cell>& cells, int number) {
    YamlNode node;
    node.kind = YamlNode::Kind::map;
    node.where = {file_name_, number, 1};
    if (cells.size() > columns_.size())
      error(cells[columns_.size()].where,
            fmt::format("the row has more cells than the table has columns, {}", columns_.size()));
    std::vector<YamlNode> place;
    for (const std::string& axis : axes_) {
      const auto column = static_cast<std::size_t>(
          std::find(columns_.begin(), columns_.end(), axis) - columns_.begin());
      if (column < cells.size()) place.push_back(scalar(cells[column]));
    }
    const std::string place_key(place_key_);
    node.entries.push_back({place_key, node.where, sequence(std::move(place), node.where)});
    for (std::size_t i = 0; i < std::min(cells.size(), columns_.size()); ++i) {
      if (cells[i].text.empty() || columns_[i].empty() || is_axis(columns_[i])) continue;
      const KeySpec* key = map_.find(columns_[i]);
      const bool turns = key != nullptr && key->kind == KeyKind::direction;
      node.entries.push_back(
          {columns_[i], cells[i].where, turns ? direction(cells[i]) : scalar(cells[i])});
    }
    return node;
  }

  const std::string& file_name_;
  const MapSpec& map_;
  std::string_view place_key_;
  const std::vector<std::string>& axes_;
  ErrorList& errors_;
  std::vector<std::string> columns_;
  SourceLocation columns_where_;
};

}  // namespace

std::optional<std::vector<YamlNode>> table_rows(std::string_view text, const std::string& file_name,
                                                const MapSpec& map, std::string_view place_key,
                                                const std::vector<std::string>& axes,
                                                ErrorList& errors) {
  return TableReader(file_name, map, place_key, axes, errors).read(text);
}

}  // namespace linewright
