#include "render/schedule_csv.hpp"

#include <fmt/format.h>

#include "render/csv_table.hpp"
#include "render/edge_word.hpp"

namespace linewright {

namespace {

constexpr CsvColumn columns[] = {{"record"},
                                 {"part"},
                                 {"name"},
                                 {"route"},
                                 {"hold"},
                                 {"fs", true},
                                 {"bl", true},
                                 {"wl", true},
                                 {"distance", true},
                                 {"from_previous", true},
                                 {"along_part", true},
                                 {"clamp"},
                                 {"size", true},
                                 {"guards"},
                                 {"hole", true},
                                 {"edge"},
                                 {"edge_distance", true},
                                 {"nearest"},
                                 {"lines"}};

CsvFields place_fields(Vec3 at, const CsvTable& table) {
  return {{"fs", table.length(at.x)}, {"bl", table.length(at.y)}, {"wl", table.length(at.z)}};
}

CsvFields fields_of(const ScheduledSupport& support, const CsvTable& table) {
  CsvFields fields = place_fields(support.at, table);
  fields.insert({{"record", "support"},
                 {"part", support.to},
                 {"name", support.through},
                 {"route", support.route},
                 {"hold", support.hold},
                 {"distance", table.length(support.distance_in)},
                 {"from_previous", table.length(support.from_previous_in)},
                 {"along_part", table.length(support.along_part_in)},
                 {"clamp", support.clamp},
                 {"size", table.length(support.size_in)},
                 {"guards", support.guards ? std::to_string(*support.guards) : std::string()},
                 {"hole", table.length(support.hole_in)}});
  return fields;
}

CsvFields fields_of(const ScheduledHole& hole, const CsvTable& table) {
  CsvFields fields = place_fields(hole.centre, table);
  fields.insert({{"record", "hole"},
                 {"part", hole.frame},
                 {"name", hole.name},
                 {"along_part", table.length(hole.along_part_in)},
                 {"size", table.length(hole.bore_in)},
                 {"hole", table.length(hole.diameter_in)},
                 {"edge", std::string(edge_word(hole.edge))},
                 {"edge_distance", table.length(hole.edge_distance_in)},
                 {"nearest", hole.nearest},
                 {"lines", fmt::format("{}", fmt::join(hole.lines, "; "))}});
  return fields;
}

}  // namespace

std::string schedule_csv(const Schedule& schedule, LengthUnit unit) {
  CsvTable table(columns, unit);
  for (const ScheduledSupport& each : schedule.supports) table.add(fields_of(each, table));
  for (const ScheduledHole& each : schedule.holes) table.add(fields_of(each, table));
  return table.text();
}

}  // namespace linewright
