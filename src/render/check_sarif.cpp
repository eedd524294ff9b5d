#include "render/check_sarif.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "render/amount.hpp"
#include "render/json_values.hpp"
#include "render/layout.hpp"
#include "render/version.hpp"

namespace linewright {

namespace {

constexpr std::string_view schema =
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/// What is said of waivers themselves comes from no rule, and a result has to name one.
constexpr std::string_view waivers = "waivers";

/// A path as a relative reference of RFC 3986. The colon is escaped as well: before the first
/// slash it would end a scheme.
std::string escaped_reference(std::string_view path) {
  constexpr std::string_view plain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-._~/";
  std::string uri;
  for (const char byte : path) {
    if (plain.find(byte) != std::string_view::npos)
      uri += byte;
    else
      uri += fmt::format("%{:02X}", static_cast<unsigned char>(byte));
  }
  return uri;
}

Json text_object(std::string_view text) {
  return {{"text", text}};
}

std::string help_of(const Rule& rule) {
  std::string help = unwrapped(rule.explanation);
  for (const LimitRow& row : rule.limits) {
    const std::string value = row.times.empty() ? amount(row.value, row.unit, {})
                                                : fmt::format("{} times {}", row.value, row.times);
    help += fmt::format("\nLimit: {}: {} {}. Source: {} ({}).", row.subject, sense_words(row.sense),
                        value, row.source, mark_word(row.mark));
  }
  if (!rule.catalogue_limits.empty()) help += fmt::format("\n{}", rule.catalogue_limits);
  return fmt::format("{}\nHow to mend it: {}", help, rule.mend);
}

Json described(std::string_view id, std::string_view purpose, std::string_view help) {
  return {{"id", id}, {"shortDescription", text_object(purpose)}, {"help", text_object(help)}};
}

Json described_rules(const std::vector<const Rule*>& rules) {
  Json list = Json::array();
  for (const Rule* rule : rules)
    list.push_back(described(rule->name, rule->purpose, help_of(*rule)));
  list.push_back(described(waivers, "a waiver accepts a finding that is there",
                           "A waiver that waives nothing hides what it was meant for. Remove it, "
                           "or correct its rule, route, near or within."));
  return list;
}

std::size_t rule_index(const std::string& name, const std::vector<const Rule*>& rules) {
  const auto found = std::find_if(rules.begin(), rules.end(),
                                  [&](const Rule* rule) { return rule->name == name; });
  return static_cast<std::size_t>(found - rules.begin());
}

/// SARIF 2.1.0 section 3.27.10: what is of another kind than "fail" has no level.
std::string_view level_of(const Judgement& judgement) {
  const Verdict verdict = judgement.unwaived();
  if (verdict == Verdict::fail) return "error";
  return verdict == Verdict::warn ? "warning" : "none";
}

std::string message_of(const Judgement& judgement) {
  std::string message = judgement.route.empty() ? "" : judgement.route + ": ";
  message += judgement.message + ".";
  if (!judgement.source.empty()) message += " Why: " + judgement.source + ".";
  if (!judgement.mend.empty()) message += " To mend it: " + judgement.mend + ".";
  return message;
}

Json locations_of(const SourceLocation& location) {
  if (location.file.empty()) return Json::array();
  Json physical = {{"artifactLocation", {{"uri", escaped_reference(location.file)}}}};
  if (location.line > 0) {
    physical["region"] = {{"startLine", location.line}};
    if (location.column > 0) physical["region"]["startColumn"] = location.column;
  }
  Json list = Json::array();
  list.push_back({{"physicalLocation", std::move(physical)}});
  return list;
}

/// Where one result has suppressions all of a run have (section 3.27.23): an empty list says that
/// it is not suppressed. A waiver stands in the files that are judged.
Json suppressions_of(const Judgement& judgement) {
  Json list = Json::array();
  if (judgement.waived)
    list.push_back({{"kind", "inSource"},
                    {"status", "accepted"},
                    {"justification", judgement.waived->reason}});
  return list;
}

/// What stays the same while a line is moved about: neither its place nor its figures.
std::string fingerprint_of(const Judgement& judgement) {
  return fmt::format("{}:{}:{}", escaped_reference(judgement.rule),
                     escaped_reference(judgement.route),
                     escaped_reference(judgement.with.value_or("")));
}

/// What the JSON form says of it beyond what SARIF has a place for.
Json properties_of(const Judgement& judgement) {
  Json properties = json_judgement(judgement);
  for (const auto* key : {"rule", "message", "location", "waived_reason"}) properties.erase(key);
  return properties;
}

Json result_of(const Judgement& judgement, const std::vector<const Rule*>& rules) {
  return {{"ruleId", judgement.rule},
          {"ruleIndex", rule_index(judgement.rule, rules)},
          {"kind", judgement.verdict == Verdict::unknown ? "open" : "fail"},
          {"level", level_of(judgement)},
          {"message", text_object(message_of(judgement))},
          {"locations", locations_of(judgement.location)},
          {"partialFingerprints", {{"ruleRouteNeighbour/v1", fingerprint_of(judgement)}}},
          {"suppressions", suppressions_of(judgement)},
          {"properties", properties_of(judgement)}};
}

Json notification(std::string_view level, const std::string& text) {
  return {{"level", level}, {"message", text_object(text)}};
}

/// What a verdict rests on and is no finding of its own.
Json notifications_of(const Report& report) {
  Json list = Json::array();
  for (const SetValue& each : report.set_values)
    list.push_back(notification(
        "note", fmt::format("judged as if the files said {}: {}", each.path, each.value)));
  for (const std::string& taken : report.assumptions)
    list.push_back(notification("note", "taken, because the project does not say: " + taken));
  for (const std::string& note : report.notes)
    list.push_back(notification(report.nothing_judged ? "error" : "note", note));
  return list;
}

}  // namespace

std::string check_sarif(const Report& report, const std::vector<const Rule*>& rules) {
  Json results = Json::array();
  for (const Judgement& judgement : report.judgements)
    if (judgement.verdict != Verdict::pass) results.push_back(result_of(judgement, rules));
  Json run = {
      {"tool",
       {{"driver",
         {{"name", "linewright"}, {"version", version()}, {"rules", described_rules(rules)}}}}},
      {"columnKind", "unicodeCodePoints"},
      {"results", std::move(results)}};
  Json invocation = {{"executionSuccessful", true},
                     {"toolExecutionNotifications", notifications_of(report)}};
  run["invocations"] = Json::array();
  run["invocations"].push_back(std::move(invocation));
  Json log = {{"$schema", schema}, {"version", "2.1.0"}, {"runs", Json::array()}};
  log["runs"].push_back(std::move(run));
  return json_text(log);
}

}  // namespace linewright
