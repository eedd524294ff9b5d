#include "render/check_text.hpp"

#include <gtest/gtest.h>

#include "commands/command_run.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using test::contains;

Judgement judged(Verdict verdict, const std::string& message) {
  Judgement judgement;
  judgement.rule = "chafe";
  judgement.verdict = verdict;
  judgement.route = "static-left";
  judgement.at = Vec3{205, -8.2, 15.1};
  judgement.distance_in = 31.4;
  judgement.value = 0.18;
  judgement.limit = 0.41;
  judgement.unit = Unit::inch;
  judgement.message = message;
  judgement.source = "gap less reach (calculated)";
  judgement.mend = "add a clamp at 31.4 in";
  judgement.location = {"static.yaml", 14, 9};
  return judgement;
}

Report report_of(std::vector<Judgement> judgements) {
  RouteReport route;
  route.cut.name = "static-left";
  route.cut.system = "static";
  route.cut.line = "tube-nylon-1/4";
  route.cut.length_in = 45.25;
  route.from = "port-left";
  route.to = "tee-1";
  Report report;
  report.project_name = "example";
  report.routes = {route};
  report.judgements = std::move(judgements);
  return report;
}

TextStyle by_route() {
  TextStyle style;
  style.by_route = true;
  return style;
}

TEST(CheckText, AFindingHasPlaceMarginSourceAndMend) {
  const std::string text = check_text(report_of({judged(Verdict::fail, "it can reach S3L")}), {});
  EXPECT_TRUE(contains(text,
                       "static.yaml:14:9: fail: chafe: static-left: it can reach S3L\n"
                       "  where:       FS 205.0 BL -8.2 WL 15.1, 31.4 in from port-left\n"
                       "  by how much: value 0.180 in, limit at least 0.410 in: short by 0.230 in\n"
                       "  why:         gap less reach (calculated)\n"
                       "  mend:        add a clamp at 31.4 in\n"))
      << text;
}

TEST(CheckText, MillimetresWhereAskedFor) {
  TextStyle style;
  style.phrasing.unit = LengthUnit::millimetre;
  const std::string text = check_text(report_of({judged(Verdict::fail, "near")}), style);
  EXPECT_TRUE(contains(text, "value 4.6 mm, limit at least 10.4 mm: short by 5.8 mm")) << text;
  EXPECT_TRUE(contains(text, "797.6 mm from port-left")) << text;
}

TEST(CheckText, WorstComesFirstWhateverTheOrder) {
  Judgement waived = judged(Verdict::waived, "m-waived");
  waived.waived = Waived{"spiral wrap fitted", Verdict::fail};
  const std::string text = check_text(
      report_of({judged(Verdict::pass, "m-pass"), waived, judged(Verdict::warn, "m-warn"),
                 judged(Verdict::unknown, "m-unknown"), judged(Verdict::fail, "m-fail")}),
      {});
  const std::size_t fail = text.find("m-fail");
  const std::size_t unknown = text.find("m-unknown");
  const std::size_t warn = text.find("m-warn");
  const std::size_t accepted = text.find("m-waived");
  EXPECT_LT(fail, unknown);
  EXPECT_LT(unknown, warn);
  EXPECT_LT(warn, accepted);
  EXPECT_NE(accepted, std::string::npos);
  EXPECT_TRUE(contains(text, "spiral wrap fitted (was fail)"));
  EXPECT_TRUE(contains(text, "1 route: 1 passed, 1 warning, 1 failed, 1 unknown, 1 waived\n"));
  EXPECT_TRUE(contains(text, "static-left  1 failed, 1 unknown, 1 warning, 1 waived, 1 passed\n"));
}

TEST(CheckText, PassesAreShownOnlyWhenVerbose) {
  const Report report = report_of({judged(Verdict::pass, "clear of everything")});
  EXPECT_FALSE(contains(check_text(report, {}), "clear of everything"));
  TextStyle style;
  style.verbose = true;
  EXPECT_TRUE(contains(check_text(report, style), "clear of everything"));
}

TEST(CheckText, ExactlyAtTheLimitSaysSo) {
  Judgement at_limit = judged(Verdict::pass, "bend");
  at_limit.value = 0.5625 - 1e-9;
  at_limit.limit = 0.5625;
  TextStyle style;
  style.verbose = true;
  EXPECT_TRUE(contains(check_text(report_of({at_limit}), style), "exactly at the limit"));
}

TEST(CheckText, AMarginTooSmallToPrintIsNotShownAsNothing) {
  Judgement close = judged(Verdict::fail, "bend");
  close.value = 0.56215;
  close.limit = 0.5625;
  const std::string text = check_text(report_of({close}), {});
  EXPECT_TRUE(contains(text, "short by 0.00035 in")) << text;
}

TEST(CheckText, NothingJudgedIsNotCalledAPass) {
  const std::string text = check_text(report_of({}), {});
  EXPECT_TRUE(contains(text, "There was nothing to judge: that is not a pass."));
  EXPECT_TRUE(contains(text, "static-left  nothing judged"));
}

TEST(CheckText, AssumptionsAreShownWithEveryResult) {
  Report report = report_of({judged(Verdict::pass, "fine")});
  report.assumptions = {"build_tolerance is not stated: 0.06 in was taken"};
  TextStyle quiet;
  quiet.quiet = true;
  EXPECT_TRUE(contains(check_text(report, quiet),
                       "Taken, because the project does not say:\n"
                       "  - build_tolerance is not stated: 0.06 in was taken\n"));
}

TEST(CheckText, ColourMarksTheVerdictWordOnly) {
  TextStyle style;
  style.colour = true;
  const std::string text = check_text(report_of({judged(Verdict::fail, "near")}), style);
  EXPECT_TRUE(
      contains(text, "static.yaml:14:9: \x1b[1;31mfail\x1b[0m: chafe: static-left: near\n"));
  std::size_t codes = 0;
  for (const char c : text) codes += c == '\x1b';
  EXPECT_EQ(codes, 2u);
}

TEST(CheckText, AJudgementAboutNoRouteIsStillShown) {
  Judgement whole = judged(Verdict::unknown, "closures are not judged");
  whole.route.clear();
  whole.at.reset();
  whole.distance_in.reset();
  const std::string text = check_text(report_of({whole}), {});
  EXPECT_TRUE(contains(text, "static.yaml:14:9: unknown: chafe: closures are not judged\n"));
  EXPECT_FALSE(contains(text, "where:"));
  EXPECT_TRUE(contains(check_text(report_of({whole}), by_route()),
                       "the project as a whole\n\nstatic.yaml:14:9: unknown: chafe: "));
}

TEST(CheckText, FailsOfAllRoutesComeBeforeWhatIsUnknownOfAny) {
  Judgement other = judged(Verdict::fail, "m-fail");
  other.route = "pitot";
  const Report report =
      report_of({judged(Verdict::warn, "m-warn"), judged(Verdict::unknown, "m-unknown"), other});
  const std::string text = check_text(report, {});
  EXPECT_LT(text.find("fail: chafe: pitot: m-fail"),
            text.find("unknown: chafe: static-left: m-un"));
  EXPECT_LT(text.find("m-unknown"), text.find("warn: chafe: static-left: m-warn"));
  EXPECT_FALSE(contains(text, "static-left: static, "));
}

TEST(CheckText, ByRouteEachRouteHasItsHeader) {
  const std::string text =
      check_text(report_of({judged(Verdict::fail, "it can reach S3L")}), by_route());
  EXPECT_TRUE(
      text.starts_with("static-left: static, tube-nylon-1/4, 45.2 in from port-left to tee-1\n\n"
                       "static.yaml:14:9: fail: chafe: it can reach S3L\n"))
      << text;
}

TEST(CheckText, TheTallyIsLast) {
  Report report = report_of({judged(Verdict::warn, "near")});
  report.assumptions = {"something is not stated"};
  report.notes = {"something was found"};
  EXPECT_TRUE(check_text(report, {})
                  .ends_with("\nstatic-left  1 warning\n"
                             "1 route: 0 passed, 1 warning, 0 failed, 0 unknown, 0 waived\n"));
}

TEST(CheckText, FindingsOfOneRuleOnOneRouteAreOneWithTheirPlaces) {
  Judgement second = judged(Verdict::warn, "might reach S4L");
  second.location.line = 20;
  second.at = Vec3{230, -8, 15};
  second.distance_in = 56.5;
  second.mend = "add a clamp at 56 in";
  const std::string text =
      check_text(report_of({judged(Verdict::warn, "might reach S3L"), second}), {});
  EXPECT_TRUE(contains(text,
                       "static.yaml:14:9: warn: chafe: static-left: 2 places\n"
                       "  - static.yaml:14:9: might reach S3L\n"
                       "    where:       FS 205.0 BL -8.2 WL 15.1, 31.4 in from port-left\n"
                       "    mend:        add a clamp at 31.4 in\n"
                       "  - static.yaml:20:9: might reach S4L\n"
                       "    where:       FS 230.0 BL -8.0 WL 15.0, 56.5 in from port-left\n"
                       "    mend:        add a clamp at 56 in\n"
                       "  by how much: value 0.180 in, limit at least 0.410 in: short by 0.230 in\n"
                       "  why:         gap less reach (calculated)\n"))
      << text;
  EXPECT_TRUE(contains(text, "static-left  2 warnings\n"));
}

TEST(CheckText, FindingsWithOneMendAreOneAcrossRoutes) {
  Judgement other = judged(Verdict::unknown, "no travel is stated");
  other.route = "pitot";
  other.mend = "state the travel";
  Judgement first = judged(Verdict::unknown, "no travel is stated");
  first.mend = other.mend;
  const std::string text = check_text(report_of({first, other}), {});
  EXPECT_TRUE(contains(text,
                       "unknown: chafe: no travel is stated, in 2 places on 2 routes\n"
                       "  - static.yaml:14:9: static-left\n"))
      << text;
  EXPECT_TRUE(contains(text, "  - static.yaml:14:9: pitot\n")) << text;
  EXPECT_TRUE(contains(text, "  mend:        state the travel\n")) << text;
}

TEST(CheckText, NothingElseIsFolded) {
  Judgement rule = judged(Verdict::warn, "m");
  rule.rule = "slack";
  Judgement verdict = judged(Verdict::fail, "m");
  Judgement apart = judged(Verdict::warn, "m");
  apart.route = "pitot";
  apart.mend = "another";
  const std::string text =
      check_text(report_of({judged(Verdict::warn, "m"), rule, verdict, apart}), {});
  EXPECT_FALSE(contains(text, "places")) << text;
  TextStyle verbose;
  verbose.verbose = true;
  EXPECT_FALSE(contains(
      check_text(report_of({judged(Verdict::pass, "m"), judged(Verdict::pass, "m")}), verbose),
      "places"));
}

// Routes a and b share a mend, b and c share nothing but the rule.
TEST(CheckText, AFoldIsOfOneRouteOrOfOneMendAllThrough) {
  Judgement a = judged(Verdict::warn, "m");
  Judgement b = a;
  b.route = "b";
  Judgement c = b;
  c.mend = "another";
  const std::string text = check_text(report_of({a, b, c}), {});
  EXPECT_TRUE(contains(text, "m, in 2 places on 2 routes\n")) << text;
  EXPECT_TRUE(contains(text, "warn: chafe: b: m\n")) << text;
}

TEST(CheckText, LongWordsOfAMessageWrapWithinEightyColumns) {
  Judgement long_winded = judged(Verdict::warn, "near");
  for (int i = 0; i < 40; ++i) {
    long_winded.source += " and another clause";
    long_winded.mend += " or something else";
    long_winded.message += " and nearer";
  }
  const auto lines = test::lines_of(check_text(report_of({long_winded}), {}));
  EXPECT_GT(lines.size(), 20u);
  for (const std::string& line : lines) EXPECT_LE(columns_of(line), text_columns) << line;
}

TEST(CheckText, ValueAndLimitLookAlikeOnlyWhereTheyAre) {
  Judgement near = judged(Verdict::fail, "near");
  near.value = 0.82;
  near.limit = 0.82049;
  EXPECT_TRUE(contains(check_text(report_of({near}), {}),
                       "value 0.8200 in, limit at least 0.8205 in: short by 0.00049 in"));
  near.unit = Unit::degree;
  near.sense = LimitSense::at_most;
  near.value = 3.01;
  near.limit = 3;
  EXPECT_TRUE(contains(check_text(report_of({near}), {}),
                       "value 3.01 deg, limit at most 3.00 deg: over by 0.01 deg"));
}

/// Findings of one cause and one mend at places of their own.
std::vector<Judgement> alike(int count) {
  std::vector<Judgement> judgements;
  for (int i = 0; i < count; ++i) {
    Judgement each = judged(Verdict::fail, "it can reach S3L");
    each.location.line = 100 + i;
    judgements.push_back(each);
  }
  return judgements;
}

TEST(CheckText, ListsADozenOfAThousandPlacesAndSaysHowManyMore) {
  const std::string text = check_text(report_of(alike(1000)), {});
  EXPECT_TRUE(contains(text, "in 1000 places")) << text;
  EXPECT_TRUE(contains(text, "  - static.yaml:111:9\n")) << text;
  EXPECT_FALSE(contains(text, "static.yaml:112:9")) << text;
  EXPECT_TRUE(contains(text, "  - and 988 more: --verbose lists them\n")) << text;
  TextStyle verbose;
  verbose.verbose = true;
  EXPECT_TRUE(contains(check_text(report_of(alike(1000)), verbose), "static.yaml:1099:9"));
}

TEST(CheckText, OneMoreThanADozenIsListed) {
  const std::string text = check_text(report_of(alike(13)), {});
  EXPECT_TRUE(contains(text, "static.yaml:112:9")) << text;
  EXPECT_FALSE(contains(text, "more: --verbose")) << text;
}

TEST(CheckText, ShowsADozenOfManyRoutesWithTheSameFindings) {
  std::vector<Judgement> judgements;
  for (int i = 0; i < 50; ++i)
    for (const char* mend : {"join it to a port", "put a drain there"}) {
      judgements.push_back(judged(Verdict::fail, mend));
      judgements.back().route = "line-" + std::to_string(i);
      judgements.back().mend = mend;
    }
  const std::string text = check_text(report_of(judgements), {});
  EXPECT_TRUE(contains(text, "line-11: 2 places")) << text;
  EXPECT_FALSE(contains(text, "line-12: 2 places")) << text;
  EXPECT_TRUE(contains(text, "fail: chafe: 38 more like the 12 before: --verbose shows them\n"))
      << text;
  TextStyle verbose;
  verbose.verbose = true;
  EXPECT_TRUE(contains(check_text(report_of(judgements), verbose), "line-49: 2 places"));
}

}  // namespace
}  // namespace linewright
